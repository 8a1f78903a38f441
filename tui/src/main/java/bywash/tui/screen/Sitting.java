package bywash.tui.screen;

import bywash.tui.view.Frame;
import bywash.tui.view.Playback;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * What one sitting at a terminal works on.
 *
 * @param frames gives the latest frame; asked at most 4 times a second
 * @param entries takes what the grower enters; must not block
 * @param controls takes what a replay is to do; must not block
 * @param shown is run once the first screen is out; must not block
 */
record Sitting(
        ScreenModel model,
        Supplier<Frame> frames,
        Entries entries,
        Consumer<Playback.Command> controls,
        Runnable shown) {}
