package bywash.tui.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;

import bywash.tui.view.Frame;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Each screen against its picture in {@code src/test/resources/pictures}, whole. Run with {@code -Dpictures.write=true}
 * to write them anew, and read the difference before committing it.
 */
final class PicturesTest {
    private static final Path PICTURES = Path.of("src/test/resources/pictures");

    @ParameterizedTest(name = "{0} {4}x{5}")
    @MethodSource("screens")
    void looksAsItsPicture(String name, Frame frame, String keys, boolean unicode, int width, int height)
            throws IOException {
        ScreenModel model = new ScreenModel();
        Keys.press(model, frame, keys);
        String text = Screens.draw(frame, model, unicode, width, height).text();
        Path file = PICTURES.resolve(name + "-" + width + "x" + height + ".txt");
        if (Boolean.getBoolean("pictures.write")) {
            Files.writeString(file, text);
        }
        assertEquals(Files.readString(file), text);
    }

    static Stream<Arguments> screens() {
        return Stream.of(
                        both("quiet", Frames.quiet(), ""),
                        both("valve-open", Frames.valveOpen(), ""),
                        both("oxygen-low", Frames.oxygenLowNoAlarmYet(), ""),
                        both("waiting", Frames.waiting(), ""),
                        both("probe-silent", Frames.probeSilent(), ""),
                        both("top-up-running", Frames.topUpRunning(), ""),
                        both("alarm", Frames.valveOpen(), "\n"),
                        both("top-up-form", Frames.quiet(), "t160\t40"),
                        both("top-up-mains", Frames.quiet(), "t900<>^>"),
                        both("end-top-up", Frames.topUpRunning(), "e"),
                        both("sheet", CareFrames.valveOpen(), "r"),
                        both("sheet-chosen", CareFrames.valveOpen(), "r4"),
                        both("batches", CareFrames.valveOpen(), "b"),
                        both("way-back", CareFrames.valveOpen(), "w"),
                        both("help", Frames.quiet(), "h"),
                        both("leave", Frames.quiet(), "q"),
                        both("acknowledge", Frames.valveOpen(), "a"),
                        Stream.of(
                                Arguments.of("quiet-us", Frames.quietUs(), "", true, 80, 24),
                                Arguments.of("valve-open-ascii", Frames.valveOpen(), "", false, 80, 24),
                                Arguments.of("valve-open-ascii", Frames.valveOpen(), "", false, 120, 40),
                                Arguments.of("alarm-ascii", Frames.valveOpen(), "\n", false, 80, 24),
                                Arguments.of("valve-open", Frames.valveOpen(), "", true, 60, 18),
                                Arguments.of("valve-open-ascii", Frames.valveOpen(), "a", false, 40, 12),
                                Arguments.of("quiet", Frames.quiet(), "", true, 40, 12)))
                .flatMap(s -> s);
    }

    private static Stream<Arguments> both(String name, Frame frame, String keys) {
        return Stream.of(Arguments.of(name, frame, keys, true, 80, 24), Arguments.of(name, frame, keys, true, 120, 40));
    }

    @Test
    void drawsAtAnySizeWithoutFailing() {
        for (int width = 1; width < 130; width += 7) {
            for (int height = 1; height < 50; height += 3) {
                for (String keys : new String[] {"", "\n", "t", "e", "h", "q"}) {
                    ScreenModel model = new ScreenModel();
                    Keys.press(model, Frames.valveOpen(), keys);
                    Picture picture = Screens.draw(Frames.valveOpen(), model, true, width, height);
                    assertEquals(width * height, picture.width() * picture.height());
                }
            }
        }
    }
}
