package bywash.tui.screen;

import bywash.tui.view.Frame;
import java.util.List;

/** Asks before leaving. */
final class LeavePage extends ScrollPage {
    private final boolean goesOn;

    /** @param goesOn whether the watch goes on without this screen */
    LeavePage(boolean goesOn) {
        this.goesOn = goesOn;
    }

    @Override
    public String title() {
        return "Leave?";
    }

    @Override
    public String purpose() {
        return "Leave the screen; asks first";
    }

    @Override
    public Character letter() {
        return 'q';
    }

    @Override
    public String barWord() {
        return "leave";
    }

    @Override
    protected List<Binding> ownKeys() {
        return List.of(
                Binding.of('y', "yes, leave", "Leave: the terminal is put back as it was", f -> new Effect.Quit()));
    }

    @Override
    protected Lines lines(Frame frame, int width) {
        return new Lines(width)
                .gap()
                .add(
                        frame.playback() != null
                                ? "The replay ends; the recording stays as it is."
                                : goesOn
                                        ? "The watch goes on without this screen."
                                        : "Without this watch nobody is told of alarms.",
                        Style.PLAIN)
                .add("Press y to leave, Esc to stay.", Style.PLAIN);
    }
}
