package bywash.rules.detect;

import java.util.ArrayDeque;
import java.util.Iterator;
import org.jspecify.annotations.Nullable;

/** The last few flows of a vessel that were found and are over, or were left for something declared; oldest first. */
final class PastFlows implements Iterable<PastFlows.Past> {
    private static final int KEPT = 6;

    private final ArrayDeque<Past> kept = new ArrayDeque<>();

    /** One of them; signed litres. */
    record Past(double fromMin, double untilMin, double litres, double seL, double rateLMin) {}

    void add(Past past) {
        kept.addLast(past);
        if (kept.size() > KEPT) {
            kept.removeFirst();
        }
    }

    /** The last; null where there was none. */
    @Nullable
    Past last() {
        return kept.peekLast();
    }

    @Override
    public Iterator<Past> iterator() {
        return kept.iterator();
    }
}
