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
        int all = s.alarms().size();
        String alarms = all == 0 ? "no alarms" : all + (all == 1 ? " alarm, " : " alarms, ") + fresh + " to ack";
        String detail = s.feedDetail().isEmpty() ? "" : ": " + s.feedDetail();
        String feed = (s.feedUp() ? "feed up" : "FEED LOST" + detail)
                + (frame.replay().isEmpty() ? "" : ", " + frame.replay());
        return new HeadView(
                s.site().name(),
                Words.clock(frame.at(), frame.at(), s.site().timeZone()),
                feed,
                frame.losses().words(),
                alarms,
                s.feedUp() ? Tone.PLAIN : Tone.WARNING,
                fresh > 0 ? Tone.CRITICAL : Tone.PLAIN,
                s.feedUp(),
                !frame.losses().equals(Losses.NONE));
    }
}
