package bywash.tui.view;

import bywash.rules.engine.Snapshot;

/** The top line: where, when, whether the feed lives, what was lost, how many alarms. */
public record HeadView(
        String site,
        String time,
        String feed,
        String counts,
        String alarms,
        Tone feedTone,
        Tone alarmTone,
        boolean feedUp,
        boolean lost) {

    public static HeadView from(Frame frame) {
        Snapshot s = frame.snapshot();
        long fresh = s.alarms().stream().filter(AlarmLine::fresh).count();
        String detail = s.feedDetail().isEmpty() ? "" : ": " + s.feedDetail();
        String feed = (s.feedUp() ? "feed up" : "FEED LOST" + detail)
                + (frame.replay().isEmpty() ? "" : ", " + frame.replay());
        return new HeadView(
                s.site().name(),
                Words.clock(frame.at(), frame.at(), s.site().timeZone()),
                feed,
                frame.losses().words(),
                alarms(s, fresh),
                s.feedUp() ? Tone.PLAIN : Tone.WARNING,
                fresh > 0 ? Tone.CRITICAL : Tone.PLAIN,
                s.feedUp(),
                !frame.losses().equals(Losses.NONE));
    }

    /** Those that are shelved, suppressed by design or out of service ask for nothing, and are counted apart (ISA-18.2). */
    private static String alarms(Snapshot s, long fresh) {
        long aside = s.alarms().stream().filter(a -> a.state().setAside()).count();
        long here = s.alarms().size() - aside;
        return (here == 0 ? "no alarms" : here + (here == 1 ? " alarm, " : " alarms, ") + fresh + " to ack")
                + (aside == 0 ? "" : ", " + aside + " set aside");
    }
}
