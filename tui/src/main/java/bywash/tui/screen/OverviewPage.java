package bywash.tui.screen;

import bywash.tui.view.Frame;
import bywash.tui.view.NormalLevels;
import java.util.List;

/** The overview, with the alarms to choose from; below 80x24 a reduced view. */
final class OverviewPage implements Page {
    /** Rows of the top and the bottom line, which are no part of the body. */
    private static final int BARS = 2;

    private final AlarmChoice choice;
    private final NormalLevels normal = new NormalLevels();

    OverviewPage(AlarmChoice choice) {
        this.choice = choice;
    }

    @Override
    public String title() {
        return "Overview";
    }

    @Override
    public String purpose() {
        return "Everything at a glance";
    }

    @Override
    public Character letter() {
        return 'o';
    }

    @Override
    public List<Binding> keys() {
        List<Binding> keys = new java.util.ArrayList<>();
        keys.add(Binding.of(KeyPress.Kind.ENTER, "open", "Open the chosen alarm: why, how long, what to do", f -> {
                    choice.pin(f);
                    return choice.key() == null
                            ? new Effect.Say("No alarm to open.")
                            : new Effect.Open(DetailPage.class);
                })
                .or(KeyPress.of(KeyPress.Kind.RIGHT)));
        keys.addAll(choice.keys());
        return keys;
    }

    @Override
    public void draw(Picture body, Frame frame) {
        int chosen = choice.index(frame);
        if (body.width() < OverviewScreen.LEAST_WIDTH || body.height() + BARS < OverviewScreen.LEAST_HEIGHT) {
            SmallScreen.draw(body, frame, normal, chosen);
        } else {
            OverviewScreen.draw(body, frame, normal, chosen);
        }
    }
}
