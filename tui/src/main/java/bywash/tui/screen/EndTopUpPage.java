package bywash.tui.screen;

import bywash.rules.detect.TopUp;
import bywash.rules.event.OperatorEntry.TopUpEnd;
import bywash.tui.view.Frame;
import bywash.tui.view.TopUpProgress;
import java.util.List;

/** Ending a top-up, with the question whether the line is shut. */
final class EndTopUpPage extends ScrollPage {
    private boolean running;

    @Override
    public String title() {
        return "End top-up";
    }

    @Override
    public String purpose() {
        return "How far the top-up is; end it and have the line checked";
    }

    @Override
    public Character letter() {
        return 'e';
    }

    @Override
    public void opened(Frame frame) {
        super.opened(frame);
        running = TopUpProgress.from(frame).running();
    }

    @Override
    protected String heading(Frame frame) {
        TopUp topUp = frame.snapshot().topUp();
        return topUp == null ? "NO TOP-UP" : topUp.endedAt() == null ? "END THE TOP-UP" : "TOP-UP ENDED";
    }

    @Override
    protected List<Binding> ownKeys() {
        return running
                ? List.of(Binding.of(
                        KeyPress.Kind.ENTER, "valve is shut", "The valve is shut: the top-up ends", this::end))
                : List.of();
    }

    private Effect end(Frame frame) {
        TopUp topUp = frame.snapshot().topUp();
        if (topUp == null || topUp.endedAt() != null) {
            return new Effect.Say("No top-up is running.");
        }
        return new Effect.Enter(
                List.of(new TopUpEnd(frame.now(), topUp.vessel())),
                "Top-up ended; the balance now checks the line.",
                false);
    }

    @Override
    protected Lines lines(Frame frame, int width) {
        TopUpProgress progress = TopUpProgress.from(frame);
        running = progress.running();
        Lines lines = new Lines(width).gap();
        for (String line : progress.lines()) {
            lines.add(line, Style.PLAIN);
        }
        if (!progress.volume().isEmpty()) {
            lines.gap();
            lines.bar("Volume", progress.volumeShare(), progress.volume());
            lines.bar("Time", progress.timeShare(), progress.time());
        }
        if (progress.running()) {
            lines.gap();
            lines.add("To end it:", Style.PLAIN);
            lines.add("1.", 3, "Shut the valve. Look at the hose end: it must not drip.", Style.STRONG);
            lines.add("2.", 3, "Then press Enter. From there on any more water counts as not meant.", Style.STRONG);
            lines.add("3.", 3, "Stay here: it then says in words whether the line is shut.", Style.STRONG);
        }
        if (!progress.running()) {
            lines.gap();
            lines.add("No top-up runs now, so there is none to end. Declare the next one with t.", Style.PLAIN);
        }
        return lines;
    }
}
