package bywash.rules.husbandry.season;

import bywash.rules.event.EntryKind;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Withdraw;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Entries that can be taken back, in order of their own time, with what the probes showed when each was made. Those taken back
 * stay here and are marked.
 */
final class EntryBook {
    private static final int MOST = 50_000;

    /** @param value of the probe in the last whole minute before */
    record Shown(String probe, Instant at, double value) {}

    /** @param temperatureC of the water then (Cel); NaN where not known; @param shown what tests are held against */
    record Booked(OperatorEntry entry, double temperatureC, List<Shown> shown) {
        Booked {
            shown = List.copyOf(shown);
        }
    }

    private static final class Line {
        private final Booked booked;
        private boolean withdrawn;

        Line(Booked booked) {
            this.booked = booked;
        }
    }

    /** An entry with an opposite of its own (a top-up, a shelving) is undone by that. */
    static boolean withdrawable(EntryKind kind) {
        return switch (kind) {
            case BATCH_FILL, BATCH_TREAT, TEST, NOTE -> true;
            case STOCKING, FEED, FISH_IN, HARVEST, WEIGH, FISH_LOSS, FISH_MOVE -> true;
            case PLANT, CROP_HARVEST, BED, DOSE, PH_PLAN, CALIBRATE, PROBE_CARE -> true;
            case TOP_UP_START, TOP_UP_END, ACKNOWLEDGE, STEP_DONE, WITHDRAW -> false;
            case SHELVE, UNSHELVE, OUT_OF_SERVICE, RETURN_TO_SERVICE, MAINTENANCE_START, MAINTENANCE_END -> false;
        };
    }

    private final List<Line> lines = new ArrayList<>();
    private final List<Withdraw> withdrawals = new ArrayList<>();

    /** Adds it at its time; whether that is the end. */
    boolean add(Booked booked) {
        if (lines.size() >= MOST) {
            lines.remove(0);
        }
        int at = lines.size();
        while (at > 0
                && lines.get(at - 1).booked.entry().at().isAfter(booked.entry().at())) {
            at--;
        }
        lines.add(at, new Line(booked));
        return at == lines.size() - 1;
    }

    private @Nullable Line find(Withdraw withdraw) {
        int nth = 0;
        for (Line line : lines) {
            OperatorEntry entry = line.booked.entry();
            if (entry.word().equals(withdraw.of()) && entry.at().equals(withdraw.entered())) {
                nth++;
                if (nth == withdraw.which()) {
                    return line;
                }
            }
        }
        return null;
    }

    /** What it takes back; null where there is no such entry, or it was taken back before. */
    @Nullable
    OperatorEntry named(Withdraw withdraw) {
        Line line = find(withdraw);
        return line == null || line.withdrawn ? null : line.booked.entry();
    }

    void withdraw(Withdraw withdraw) {
        Line line = find(withdraw);
        if (line != null) {
            line.withdrawn = true;
            withdrawals.add(withdraw);
        }
    }

    /** Those that count, oldest first. */
    List<Booked> standing() {
        return lines.stream().filter(l -> !l.withdrawn).map(l -> l.booked).toList();
    }

    /** What was taken back, in that order. */
    List<Withdraw> withdrawals() {
        return List.copyOf(withdrawals);
    }
}
