package bywash.rules.husbandry.probes;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Calibrate;
import bywash.rules.event.OperatorEntry.ProbeCare;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.site.Probe;
import bywash.rules.site.Site;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Keeps the book of all probes that are calibrated. */
public final class ProbeBook {
    private final Site site;
    private final Map<String, ProbeCard> cards = new LinkedHashMap<>();
    private final Consumer<String> remarks;

    public ProbeBook(Site site, Consumer<String> remarks) {
        this.site = site;
        this.remarks = remarks;
        for (Probe probe : site.probes()) {
            CarePlan plan = CarePlan.of(probe.quantity());
            if (plan != null) {
                cards.put(probe.id(), new ProbeCard(probe, plan));
            }
        }
    }

    /** How far a reading and a test of the same water may lie apart. */
    public static Duration sameWater(Probe probe) {
        return ProbeCard.sameWater(probe);
    }

    /** What the probe showed when the test that is booked next was made. */
    public void reading(String probe, Instant at, double value) {
        ProbeCard card = cards.get(probe);
        if (card != null) {
            card.reading(at, value);
        }
    }

    /** A probe was calibrated. */
    public void book(Calibrate calibrate) {
        ProbeCard card = card(calibrate, calibrate.probe());
        if (card != null) {
            try {
                card.calibrated(calibrate);
            } catch (IllegalArgumentException e) {
                remarks.accept(calibrate.at() + " calibrate " + calibrate.probe() + ": " + e.getMessage());
            }
        }
    }

    /** A probe was cleaned, or had a part changed. */
    public void book(ProbeCare care) {
        ProbeCard card = card(care, care.probe());
        if (card != null) {
            card.cared(care);
        }
    }

    /** A test by hand: each probe of that water and quantity is held against it. */
    public void book(WaterTest test) {
        for (Probe probe : site.probes()) {
            ProbeCard card = cards.get(probe.id());
            if (card != null
                    && probe.vessel().equals(test.vessel())
                    && probe.quantity().word().equals(test.quantity())) {
                card.tested(test);
            }
        }
    }

    /**
     * What the points of a calibration come to.
     *
     * @throws IllegalArgumentException where they make none; says what would be right
     */
    public static CalibrationResult result(Site site, Calibrate entry) {
        Probe probe = site.probe(entry.probe())
                .orElseThrow(() -> new IllegalArgumentException("probe " + entry.probe() + " is not in the site file"));
        return Calibrations.of(probe.quantity(), entry, null);
    }

    /** Why the points of a calibration make none, with what would be right; empty where they do, or where there are none. */
    public static String fault(Site site, Calibrate entry) {
        try {
            if (!entry.points().isEmpty()) {
                result(site, entry);
            }
            return "";
        } catch (IllegalArgumentException e) {
            return String.valueOf(e.getMessage());
        }
    }

    private @Nullable ProbeCard card(OperatorEntry entry, String probe) {
        ProbeCard card = cards.get(probe);
        if (card == null) {
            remarks.accept(entry.at() + " " + entry.word() + ": probe " + probe
                    + " is not one that is calibrated; one of " + String.join(", ", cards.keySet()));
        }
        return card;
    }

    /** All probes that are calibrated, in the order of the site file. */
    public List<ProbeCareStatus> status(Instant now) {
        return cards.values().stream().map(card -> card.status(now)).toList();
    }

    /** Why a probe's readings are not to be believed as they are; empty where they may be. */
    public String suspect(String probe, Instant now) {
        ProbeCard card = cards.get(probe);
        return card == null ? "" : card.status(now).suspect();
    }
}
