package bywash.tui.report;

import bywash.ingest.recording.IsoTime;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmSpell;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.BatchFill;
import bywash.rules.event.OperatorEntry.TopUpEnd;
import bywash.rules.event.OperatorEntry.TopUpStart;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Water that moved in a season: what the grower entered, and what alarms said of water that nobody had declared. Alarms keep their
 * litres for good, where the readings that they came of are kept for some weeks.
 */
final class SeasonFlows {
    /** A release may be seen to begin a little before it was declared. */
    private static final Duration AROUND = Duration.ofMinutes(30);

    private static final Duration CLOSE = Duration.ofMinutes(1);

    private static final String VOLUME = "volume_l";
    private static final String DECLARED = "declared_l";

    /** How water moved; the order of tables. */
    enum Which {
        DECLARED("declared top-up"),
        LEFT_OPEN("line not shut after a top-up"),
        UNDECLARED("in, not declared"),
        LOST("lost"),
        FILLED("reserve filled");

        private final String words;

        Which(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    /** @param litres as entered, or as the alarm last said; @param source empty where not known */
    record Move(Instant at, String vessel, Which which, double litres, String source) {}

    private SeasonFlows() {}

    /** All moves, oldest first. */
    static List<Move> of(SeasonData data) {
        List<Move> all = new ArrayList<>();
        for (OperatorEntry entry : data.entries()) {
            if (entry instanceof TopUpStart e) {
                all.add(new Move(e.at(), e.vessel(), Which.DECLARED, e.volumeL(), e.source()));
            } else if (entry instanceof BatchFill e) {
                all.add(new Move(e.at(), e.vessel(), Which.FILLED, e.volumeL(), ""));
            }
        }
        for (AlarmSpell spell : AlarmSpell.of(data.transitions())) {
            Which which = which(spell.kind());
            if (which != null) {
                double litres = litres(spell);
                double declared = which == Which.LEFT_OPEN ? declared(data, spell) : 0;
                all.add(new Move(
                        spell.raised().at(),
                        spell.subject(),
                        which,
                        Math.max(0, litres - declared),
                        word(spell.last().values(), "source")));
            }
        }
        all.sort(Comparator.comparing(Move::at).thenComparing(Move::vessel));
        return all;
    }

    private static @Nullable Which which(AlarmKind kind) {
        if (kind == AlarmKind.UNPLANNED_INFLOW) {
            return Which.UNDECLARED;
        }
        if (kind == AlarmKind.LINE_NOT_SHUT) {
            return Which.LEFT_OPEN;
        }
        return kind == AlarmKind.UNPLANNED_LOSS ? Which.LOST : null;
    }

    /** What the alarm last said; a line that ends it without a figure keeps the one before. */
    private static double litres(AlarmSpell spell) {
        double last = number(spell.last().values());
        return Double.isNaN(last) ? Math.max(0, number(spell.raised().values())) : last;
    }

    private static double number(Map<String, Object> values) {
        return values.get(VOLUME) instanceof Number n ? n.doubleValue() : Double.NaN;
    }

    private static String word(Map<String, Object> values, String key) {
        return values.get(key) instanceof String s ? s : "";
    }

    /**
     * Of a release that went past its volume the alarm's litres run from its beginning, and what was declared of them is no
     * fault; of a line that ran on after the end they run from there.
     */
    private static double declared(SeasonData data, AlarmSpell spell) {
        if (spell.last().values().get(DECLARED) instanceof Number n) {
            return n.doubleValue();
        }
        Instant since = since(spell).minus(AROUND);
        Instant begins = since(spell).plus(CLOSE);
        boolean ended = data.entries().stream()
                .filter(TopUpEnd.class::isInstance)
                .map(TopUpEnd.class::cast)
                .anyMatch(e -> e.vessel().equals(spell.subject())
                        && e.at().isAfter(begins.minus(CLOSE).minus(CLOSE))
                        && !e.at().isAfter(begins));
        if (ended) {
            return 0;
        }
        return data.entries().stream()
                .filter(TopUpStart.class::isInstance)
                .map(TopUpStart.class::cast)
                .filter(e -> e.vessel().equals(spell.subject()) && e.at().isAfter(since))
                .filter(e -> !e.at().isAfter(spell.raised().at()))
                .mapToDouble(TopUpStart::volumeL)
                .sum();
    }

    private static Instant since(AlarmSpell spell) {
        Object last = spell.last().values().get("since");
        Object since = last == null ? spell.raised().values().get("since") : last;
        Instant read = since == null ? null : IsoTime.parse(since.toString());
        return read == null ? spell.raised().at() : read;
    }
}
