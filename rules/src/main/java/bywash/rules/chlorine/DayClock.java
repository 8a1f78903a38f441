package bywash.rules.chlorine;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;

/** Tells the local time of day, for many times that lie near each other: the zone's rules are asked at changes of its clocks only. */
final class DayClock {
    private static final int DAY_S = 86_400;

    private final ZoneId zone;
    private long fromS = Long.MAX_VALUE;
    private long untilS = Long.MIN_VALUE;
    private int offsetS;

    DayClock(ZoneId zone) {
        this.zone = zone;
    }

    /** Seconds since local midnight by the clock, 0 to 86,399. */
    int secondOfDay(Instant at) {
        long second = at.getEpochSecond();
        if (second < fromS || second >= untilS) {
            ask(at);
        }
        return (int) Math.floorMod(second + offsetS, (long) DAY_S);
    }

    /** The offset now holds from now until the next change. */
    private void ask(Instant at) {
        ZoneOffset offset = zone.getRules().getOffset(at);
        ZoneOffsetTransition next = zone.getRules().nextTransition(at);
        offsetS = offset.getTotalSeconds();
        fromS = at.getEpochSecond();
        untilS = next == null ? Long.MAX_VALUE : next.toEpochSecond();
    }
}
