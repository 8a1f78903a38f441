package bywash.tui.screen;

import bywash.bench.Budget;
import bywash.tui.view.Frame;
import com.googlecode.lanterna.screen.TerminalScreen;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Bytes that go down the line, and the time to draw a frame, beside the budgets. Run with the other benchmarks. */
class ScreenBenchmark {
    private static final int ROUNDS = 400;
    private static final double FRAME_MS = 250;

    private final CountingOutput out = new CountingOutput(new ByteArrayOutputStream());

    @Test
    void bytesOfARefresh() throws IOException {
        for (int[] size : new int[][] {{80, 24}, {120, 40}}) {
            String at = size[0] + "x" + size[1];
            Painter painter = painter(size);
            double whole = sent(painter, Frames.quiet(), size);
            double same = sent(painter, Frames.quiet(), size);
            Budget.note("first picture, " + at, whole, "bytes");
            Budget.most("nothing changed, " + at, same, 0, "bytes");
            Budget.most(
                    "one value and its age changed, " + at, sent(painter, Frames.oneTickLater(), size), 400, "bytes");
            Budget.note("an incident begins, " + at, sent(painter, Frames.valveOpen(), size), "bytes");
        }
    }

    @Test
    void timeOfAFrame() throws IOException {
        for (int[] size : new int[][] {{80, 24}, {120, 40}, {200, 60}}) {
            for (String keys : new String[] {"", "g2", "g4", "l"}) {
                Painter painter = painter(size);
                ScreenModel model = new ScreenModel();
                Keys.press(model, Frames.valveOpen(), keys);
                double[] ms = new double[ROUNDS];
                for (int i = 0; i < ROUNDS; i++) {
                    Frame frame = i % 2 == 0 ? Frames.quiet() : Frames.valveOpen();
                    long begin = System.nanoTime();
                    painter.paint(Screens.draw(frame, model, true, size[0], size[1]));
                    ms[i] = (System.nanoTime() - begin) / 1e6;
                }
                Arrays.sort(ms);
                String what = "frame of " + model.page().title() + keys.replaceAll("[a-z]", " ") + ", " + size[0] + "x"
                        + size[1];
                Budget.most(what + ", 99th of 100", ms[ROUNDS * 99 / 100], FRAME_MS, "ms");
                Budget.note("the same, median", ms[ROUNDS / 2], "ms");
            }
        }
    }

    private Painter painter(int[] size) throws IOException {
        TerminalScreen screen = new TerminalScreen(new FixedTerminal(out, size[0], size[1]));
        screen.setCursorPosition(null);
        screen.startScreen();
        return new Painter(screen, new DisplaySettings(true, true, false, true));
    }

    private double sent(Painter painter, Frame frame, int[] size) throws IOException {
        long before = out.count();
        painter.paint(Screens.draw(frame, new ScreenModel(), true, size[0], size[1]));
        return out.count() - before;
    }
}
