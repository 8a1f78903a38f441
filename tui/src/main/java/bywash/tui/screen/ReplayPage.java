package bywash.tui.screen;

import bywash.rules.alarm.AlarmState;
import bywash.tui.view.EventLog.Event;
import bywash.tui.view.Frame;
import bywash.tui.view.LogFilter;
import bywash.tui.view.LogLine;
import bywash.tui.view.Playback;
import bywash.tui.view.Playback.Command;
import bywash.tui.view.Words;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/** Where a replay stands, with the keys that pause, speed, step it and take it to the next alarm. */
final class ReplayPage implements Page {
    private static final String LIVE = "This is no replay; live water cannot be paused.";
    private static final int SIDE = 2;
    private static final DateTimeFormatter SECONDS = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

    /** Those that work on every page. */
    static List<Binding> everywhere() {
        return List.of(
                asks(' ', "", "In a replay: pause, or go on", Command.PAUSE),
                asks('j', "", "In a replay: play on to the next alarm, and pause there", Command.NEXT_ALARM));
    }

    private static Binding asks(char key, String word, String sentence, Command command) {
        return Binding.of(
                key,
                word,
                sentence,
                frame -> frame.playback() == null ? new Effect.Say(LIVE) : new Effect.Play(command));
    }

    @Override
    public String title() {
        return "Replay";
    }

    @Override
    public String purpose() {
        return "Where a replay stands: pause, speed, step";
    }

    @Override
    public Character letter() {
        return 'i';
    }

    @Override
    public String shut(Frame frame) {
        return frame.playback() == null ? LIVE : "";
    }

    @Override
    public List<Binding> keys() {
        return List.of(
                asks('.', "10 s on", "Ten seconds on, then paused", Command.STEP)
                        .or(KeyPress.of(KeyPress.Kind.RIGHT)),
                asks('+', "faster", "Twice as fast", Command.FASTER)
                        .or(KeyPress.of('='), KeyPress.of(KeyPress.Kind.UP)),
                asks('-', "slower", "Half as fast", Command.SLOWER).or(KeyPress.of(KeyPress.Kind.DOWN)));
    }

    @Override
    public void draw(Picture body, Frame frame) {
        body.heading(0, 0, body.width(), "REPLAY");
        Playback playback = frame.playback();
        if (playback == null) {
            body.put(1, 0, body.width(), LIVE, Style.PLAIN);
            return;
        }
        ZoneId zone = frame.snapshot().site().timeZone();
        int cells = Math.max(1, body.width() - 2 * SIDE);
        String state = playback.state().word() + ", " + playback.pace() + "   Space "
                + (playback.state() == Playback.State.PAUSED ? "go on" : "pause") + "   j next alarm";
        body.put(2, 0, body.width(), state, Style.STRONG);
        body.put(3, SIDE - 1, "[" + body.glyphs().bar(playback.share(), cells) + "]", Style.PLAIN);
        body.put(4, SIDE, alarms(frame, playback, cells), Style.PLAIN);
        String from = Words.clock(playback.from(), frame.at(), zone);
        String to = Words.clock(playback.to(), frame.at(), zone);
        body.put(5, SIDE, body.width() / 2, from, Style.PLAIN);
        body.putBefore(5, body.width() - SIDE, to, Style.PLAIN);
        String left = "at " + SECONDS.format(playback.at().atZone(zone)) + ", "
                + Words.span(playback.at(), playback.to()) + " of the recording left";
        body.put(6, SIDE, body.width() - SIDE, left, Style.PLAIN);
        List<LogLine> raised = new LogFilter(LogFilter.Kind.RAISED, "").lines(frame);
        if (body.height() > 10) {
            LogPane.draw(body, 8, body.height() - 9, raised, "ALARMS RAISED so far, newest first");
        }
    }

    /** A mark under the bar where an alarm was raised. */
    private static String alarms(Frame frame, Playback playback, int cells) {
        char[] marks = " ".repeat(cells).toCharArray();
        for (Event event : frame.log().newestFirst()) {
            if (event instanceof Event.Alarm alarm
                    && alarm.transition().state() == AlarmState.UNACKNOWLEDGED
                    && !alarm.transition().again()) {
                marks[cell(playback, event.at(), cells)] = '!';
            }
        }
        return new String(marks);
    }

    private static int cell(Playback playback, Instant at, int cells) {
        double whole =
                Math.max(1, Duration.between(playback.from(), playback.to()).toMillis());
        double share = Duration.between(playback.from(), at).toMillis() / whole;
        return (int) Math.max(0, Math.min(cells - 1.0, share * cells));
    }
}
