package bywash.tui.screen;

import bywash.rules.alarm.AlarmView;
import bywash.tui.view.AlarmDetail;
import bywash.tui.view.BalanceView;
import bywash.tui.view.Frame;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One alarm in full: cause, consequence, time left, action, evidence, cautions. */
final class DetailPage extends ScrollPage {
    private static final int INDENT = 13;

    private final AlarmChoice choice;

    DetailPage(AlarmChoice choice) {
        this.choice = choice;
    }

    @Override
    public String title() {
        return "Alarm in full";
    }

    @Override
    public String purpose() {
        return "One alarm: why, what follows, time left, what to do";
    }

    @Override
    public @Nullable Character letter() {
        return null;
    }

    @Override
    protected List<Binding> ownKeys() {
        return List.of(
                Binding.of(KeyPress.Kind.RIGHT, "next alarm", "The next alarm", f -> turn(f, 1)),
                Binding.of(KeyPress.Kind.LEFT, "", "The alarm before", f -> turn(f, -1)),
                Binding.of(KeyPress.Kind.TAB, "", "The next alarm that is not acknowledged", f -> {
                    choice.nextNew(f);
                    opened(f);
                    return new Effect.Redraw();
                }));
    }

    private Effect turn(Frame frame, int by) {
        choice.move(frame, by);
        opened(frame);
        return new Effect.Redraw();
    }

    @Override
    protected String heading(Frame frame) {
        AlarmView alarm = choice.alarm(frame);
        if (alarm == null) {
            return "ALARM";
        }
        return "ALARM " + alarm.kind().word() + " " + alarm.subject() + " (" + (choice.index(frame) + 1) + " of "
                + frame.snapshot().alarms().size() + ")";
    }

    @Override
    protected Lines lines(Frame frame, int width) {
        AlarmView alarm = choice.alarm(frame);
        if (alarm == null) {
            return new Lines(width).gap().add("This alarm has returned to normal.", Style.PLAIN);
        }
        return lines(AlarmDetail.from(alarm, frame), BalanceView.words(alarm.subject(), frame), width);
    }

    private static Lines lines(AlarmDetail detail, String balance, int width) {
        Style style = Style.of(detail.line().tone());
        Lines lines = new Lines(width);
        lines.add("State", INDENT, (detail.line().mark() + " " + detail.title()).strip(), style);
        lines.add("What", INDENT, detail.what(), style);
        lines.add("Since", INDENT, detail.since(), Style.PLAIN);
        lines.add("Left", INDENT, detail.left(), Style.PLAIN);
        int step = 1;
        for (String action : detail.action()) {
            lines.add(step == 1 ? "DO NOW" : "", INDENT, step + ". " + action, Style.PLAIN);
            step++;
        }
        lines.add("Why", INDENT, detail.why(), Style.PLAIN);
        if (!balance.isEmpty()) {
            lines.add("Balance", INDENT, balance, Style.PLAIN);
        }
        lines.add("Cause", INDENT, detail.cause(), Style.PLAIN);
        lines.add("Consequence", INDENT, detail.consequence(), Style.PLAIN);
        String label = "Followed by";
        for (String alarm : detail.follows()) {
            lines.add(label, INDENT, alarm, Style.PLAIN);
            label = "";
        }
        boolean start = true;
        for (String evidence : detail.evidence()) {
            lines.add(start ? "Evidence" : "", INDENT, evidence, Style.PLAIN);
            start = false;
        }
        return lines.add("Cautions", INDENT, String.join(" ", detail.cautions()), Style.PLAIN);
    }
}
