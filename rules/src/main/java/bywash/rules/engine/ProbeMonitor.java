package bywash.rules.engine;

import bywash.rules.engine.ProbeStatus.Health;
import bywash.rules.event.Reading;
import bywash.rules.site.Band;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Vessel;
import bywash.rules.text.Names;
import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** Follows one probe: its latest value, its trend, and whether it can be believed. */
final class ProbeMonitor {
    /** Refused payloads in a row that make a probe implausible. */
    static final int REFUSALS = 3;

    private final Probe probe;
    private final @Nullable Vessel vessel;
    private final Duration silence;
    private final Duration stuckAfter;
    private final Trend trend = new Trend();
    private double value = Double.NaN;
    private @Nullable Instant at;
    private @Nullable Instant sameSince;
    /** After this moment it is silent, and stuck: many ask between two readings. */
    private @Nullable Instant silentAfter;

    private @Nullable Instant stuckAt;
    private @Nullable Instant watchedSince;
    private @Nullable Instant resumedAt;
    private int refusedInARow;
    private boolean handled;
    private String refusal = "";
    private @Nullable Band band;

    /** @param vessel that it reads; null where the site has none of that name */
    ProbeMonitor(Probe probe, @Nullable Vessel vessel) {
        this.probe = probe;
        this.vessel = vessel;
        this.silence = probe.silence();
        this.stuckAfter = stuckAfter(probe);
    }

    Probe probe() {
        return probe;
    }

    double value() {
        return value;
    }

    @Nullable
    Instant at() {
        return at;
    }

    String refusal() {
        return refusal;
    }

    /** The good band from here on; null for none. */
    void band(@Nullable Band good) {
        band = good;
    }

    @Nullable
    Band band() {
        return band;
    }

    /** Takes a reading; false when it is not possible and was refused. */
    boolean accept(Reading reading) {
        String impossible = impossible(reading.value());
        if (!impossible.isEmpty()) {
            refuse(impossible);
            return false;
        }
        if (sameSince == null || reading.value() != value) {
            sameSince = reading.at();
            stuckAt = sameSince.plus(stuckAfter);
        }
        refusedInARow = 0;
        value = reading.value();
        at = reading.at();
        listen();
        trend.add(reading.at(), value);
        return true;
    }

    /** Why a value cannot be, and what could be; empty where it can. */
    private String impossible(double v) {
        Quantity quantity = probe.quantity();
        String unit = Names.unit(quantity.unit());
        if (!quantity.possible(v)) {
            return "value " + Text.round(v, 2) + (unit.isEmpty() ? "" : " " + unit) + " is outside " + quantity.lowest()
                    + " to " + quantity.highest();
        }
        return quantity == Quantity.LEVEL && vessel != null ? vessel.impossible(v) : "";
    }

    /** Sets whether the last reading was taken while somebody was at the probe: it says nothing of the water. */
    void handled(boolean inCare) {
        handled = inCare;
    }

    boolean handled() {
        return handled;
    }

    void refuse(String reason) {
        refusedInARow++;
        refusal = reason;
    }

    void tick(Instant now) {
        if (watchedSince == null) {
            watchedSince = now;
            listen();
        }
    }

    /** A watch began: silence counts from here, and what was read before is not taken for the present. */
    void resume(Instant now) {
        resumedAt = now;
        listen();
    }

    /** Silence counts from the last reading of this watch, else from the watch's own begin. */
    private void listen() {
        Instant last = heard() ? at : resumedAt != null ? resumedAt : watchedSince;
        silentAfter = last == null ? null : last.plus(silence);
    }

    private boolean heard() {
        return at != null && (resumedAt == null || !at.isBefore(resumedAt));
    }

    Health health(Instant now) {
        if (refusedInARow >= REFUSALS) {
            return Health.IMPLAUSIBLE;
        }
        if (silentAfter != null && now.isAfter(silentAfter)) {
            return Health.SILENT;
        }
        if (!heard()) {
            return Health.WAITING;
        }
        if (stuckAt != null && now.isAfter(stuckAt)) {
            return Health.STUCK;
        }
        return Health.GOOD;
    }

    /** How long the very same value makes it stuck; at least 40 intervals. Common practice, no source. */
    Duration stuckAfter() {
        return stuckAfter;
    }

    private static Duration stuckAfter(Probe probe) {
        Duration byQuantity = switch (probe.quantity()) {
            case LEVEL, DISSOLVED_OXYGEN, ORP -> Duration.ofHours(2);
            case PH, TEMPERATURE, CONDUCTIVITY -> Duration.ofHours(12);
            case FLOW, STATE -> Duration.ofDays(36_500);
        };
        Duration forty = probe.every().multipliedBy(40);
        return forty.compareTo(byQuantity) > 0 ? forty : byQuantity;
    }

    ProbeStatus status(@Nullable Instant now, String suspect) {
        Health health = now == null ? Health.WAITING : health(now);
        double perHour = probe.quantity() == Quantity.STATE ? Double.NaN : trend.perHour();
        return new ProbeStatus(probe, value, at, health, band, perHour, suspect);
    }

    double perHour() {
        return trend.perHour();
    }
}
