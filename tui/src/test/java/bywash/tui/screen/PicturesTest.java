package bywash.tui.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;

import bywash.rules.site.Units;
import bywash.tui.view.Frame;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
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
                        ascii("quiet", Frames.quiet(), ""),
                        both("valve-open", Frames.valveOpen(), ""),
                        ascii("valve-open", Frames.valveOpen(), ""),
                        both("valve-open-us", Frames.valveOpen(Units.US), ""),
                        both("alarm-us", Frames.valveOpen(Units.US), "\n"),
                        both("chlorine-us", Frames.valveOpen(Units.US), "x"),
                        both("two-incidents", Frames.twoIncidents(), ""),
                        ascii("two-incidents", Frames.twoIncidents(), ""),
                        both("alarm-followed", Frames.twoIncidents(), "v\n"),
                        ascii("alarm-followed", Frames.twoIncidents(), "v\n"),
                        both("oxygen-low", Frames.oxygenLowNoAlarmYet(), ""),
                        ascii("oxygen-low", Frames.oxygenLowNoAlarmYet(), ""),
                        both("waiting", Frames.waiting(), ""),
                        ascii("waiting", Frames.waiting(), ""),
                        both("feed-lost", Frames.feedLost(), ""),
                        both("feed-back", Frames.feedBack(), ""),
                        both("probe-silent", Frames.probeSilent(), ""),
                        ascii("probe-silent", Frames.probeSilent(), ""),
                        both("top-up-running", Frames.topUpRunning(), ""),
                        ascii("top-up-running", Frames.topUpRunning(), ""),
                        both("top-up-ran-over", Frames.topUpRanOver(), ""),
                        both("top-up-ran-over-alarm", Frames.topUpRanOver(), "\n"),
                        both("balance-ran-over", BalanceFrames.ranOver(), "u"),
                        both("alarm", Frames.valveOpen(), "\n"),
                        ascii("alarm", Frames.valveOpen(), "\n"),
                        both("top-up-form", Frames.quiet(), "t160\t40"),
                        ascii("top-up-form", Frames.quiet(), "t160\t40"),
                        both("top-up-mains", Frames.quiet(), "t900<>^>"),
                        ascii("top-up-mains", Frames.quiet(), "t900<>^>"),
                        both("end-top-up", Frames.topUpRunning(), "e"),
                        ascii("end-top-up", Frames.topUpRunning(), "e"),
                        both("sheet", CareFrames.valveOpen(), "r"),
                        ascii("sheet", CareFrames.valveOpen(), "r"),
                        both("sheet-chosen", CareFrames.valveOpen(), "r4"),
                        ascii("sheet-chosen", CareFrames.valveOpen(), "r4"),
                        both("chlorine", Frames.valveOpen(), "x"),
                        ascii("chlorine", Frames.valveOpen(), "x"),
                        both("top-up-shut", Frames.topUpShut(), "e"),
                        ascii("top-up-shut", Frames.topUpShut(), "e"),
                        both("batches", CareFrames.valveOpen(), "b"),
                        ascii("batches", CareFrames.valveOpen(), "b"),
                        both("way-back", CareFrames.wayBack(), "w"),
                        both("way-back-standing", CareFrames.valveOpen(), "w"),
                        ascii("way-back", CareFrames.wayBack(), "w"),
                        both("stock", SeasonFrames.stocked(), "s"),
                        both("nitrogen", SeasonFrames.stocked(), "f"),
                        both("fishless", SeasonFrames.fishless(), "f"),
                        both("probe-care", SeasonFrames.stocked(), "c"),
                        ascii("stock", SeasonFrames.stocked(), "s"),
                        ascii("nitrogen", SeasonFrames.stocked(), "f"),
                        ascii("fishless", SeasonFrames.fishless(), "f"),
                        ascii("probe-care", SeasonFrames.stocked(), "c"),
                        both("balance", BalanceFrames.quiet(), "u"),
                        ascii("balance", BalanceFrames.quiet(), "u"),
                        both("balance-valve-open", BalanceFrames.valveOpen(), "u"),
                        ascii("balance-valve-open", BalanceFrames.valveOpen(), "u"),
                        both("balance-valve-shut", BalanceFrames.valveShut(), "u"),
                        both("balance-topping-up", BalanceFrames.toppingUp(), "u"),
                        both("end-top-up-none", Frames.quiet(), "e"),
                        both("top-up-checked", Frames.topUpChecked(), ""),
                        both("end-top-up-checked", Frames.topUpChecked(), "e"),
                        both("end-top-up-ended", BalanceFrames.toppedUp(true), "e"),
                        both("balance-learning", BalanceFrames.learning(), "u"),
                        both("balance-line-shut", BalanceFrames.toppedUp(true), "u"),
                        both("balance-line-not-shut", BalanceFrames.toppedUp(false), "u"),
                        both("line-shut", BalanceFrames.toppedUp(true), ""),
                        both("alarm-balance", BalanceFrames.valveOpen(), "\n"),
                        ascii("alarm-balance", BalanceFrames.valveOpen(), "\n"),
                        both("suspect", SeasonFrames.stocked(), ""),
                        ascii("suspect", SeasonFrames.stocked(), ""),
                        both("help", Frames.quiet(), "h"),
                        ascii("help", Frames.quiet(), "h"),
                        both("leave", Frames.quiet(), "q"),
                        ascii("leave", Frames.quiet(), "q"),
                        both("acknowledge", Frames.valveOpen(), "a"),
                        ascii("acknowledge", Frames.valveOpen(), "a"),
                        both("pages", Frames.quiet(), "p"),
                        ascii("pages", Frames.quiet(), "p"),
                        both("entries", Frames.quiet(), "n"),
                        ascii("entries", Frames.quiet(), "n"),
                        both("tests", Frames.tested(), "mv0.02vv1.4"),
                        ascii("tests", Frames.tested(), "mv0.02vv1.4"),
                        both("tests-reserve", Frames.quiet(), "m>>>"),
                        ascii("tests-reserve", Frames.quiet(), "m>>>"),
                        both("feed", Frames.quiet(), "nv\n120v42"),
                        ascii("feed", Frames.quiet(), "nv\n120v42"),
                        both("batch-fill", Frames.quiet(), "nvv\n600"),
                        ascii("batch-fill", Frames.quiet(), "nvv\n600"),
                        both("batch-treat", Frames.quiet(), "nvvv\n>>>>v"),
                        ascii("batch-treat", Frames.quiet(), "nvvv\n>>>>v"),
                        both("note", Frames.quiet(), "nvvvv\nA leaf in the pump; cleaned"),
                        ascii("note", Frames.quiet(), "nvvvv\nA leaf in the pump; cleaned"),
                        both("shelve", Frames.valveOpen(), "nvvvvv\n"),
                        ascii("shelve", Frames.valveOpen(), "nvvvvv\n"),
                        both("fish-in", SeasonFrames.stocked(), form(6) + "autumnvv40v12.5"),
                        ascii("fish-in", SeasonFrames.stocked(), form(6) + "autumnvv40v12.5"),
                        both("fish-back", SeasonFrames.fishless(), form(6) + "autumnvv40v12.5v"),
                        ascii("fish-back", SeasonFrames.fishless(), form(6) + "autumnvv40v12.5v"),
                        both("weigh", SeasonFrames.stocked(), form(7) + "vv168, 176, 184, 1180"),
                        ascii("weigh", SeasonFrames.stocked(), form(7) + "vv168, 176, 184, 1180"),
                        both("harvest", SeasonFrames.stocked(), form(8) + "v168, 176, 184, 202"),
                        ascii("harvest", SeasonFrames.stocked(), form(8) + "v168, 176, 184, 202"),
                        both("fish-lost", SeasonFrames.stocked(), form(9) + "v20vheat"),
                        ascii("fish-lost", SeasonFrames.stocked(), form(9) + "v20vheat"),
                        both("fish-moved", SeasonFrames.stocked(), form(10) + "v20v"),
                        ascii("fish-moved", SeasonFrames.stocked(), form(10) + "v20v"),
                        both("stocking", SeasonFrames.fishless(), form(11) + "v>>>>"),
                        ascii("stocking", SeasonFrames.fishless(), form(11) + "v>>>>"),
                        both("plant", SeasonFrames.stocked(), form(12) + "v>v0.6vyesterday 9:30"),
                        ascii("plant", SeasonFrames.stocked(), form(12) + "v>v0.6vyesterday 9:30"),
                        both("crop-harvest", SeasonFrames.stocked(), form(13) + "vv900v1.5"),
                        ascii("crop-harvest", SeasonFrames.stocked(), form(13) + "vv900v1.5"),
                        both("bed-off", SeasonFrames.stocked(), form(14)),
                        ascii("bed-off", SeasonFrames.stocked(), form(14)),
                        both("dose", SeasonFrames.stocked(), form(15) + "v>>v50"),
                        ascii("dose", SeasonFrames.stocked(), form(15) + "v>>v50"),
                        both("ph-plan", SeasonFrames.stocked(), form(16) + "6.8v>"),
                        ascii("ph-plan", SeasonFrames.stocked(), form(16) + "6.8v>"),
                        both("ph-plan-wait", SeasonFrames.stocked(), form(16) + "6.0v<"),
                        ascii("ph-plan-wait", SeasonFrames.stocked(), form(16) + "6.0v<"),
                        both("calibrate", SeasonFrames.stocked(), form(17) + "v>v4.01v171v6.86v2"),
                        ascii("calibrate", SeasonFrames.stocked(), form(17) + "v>v4.01v171v6.86v2"),
                        both("probe-cared", SeasonFrames.stocked(), form(18) + "v<"),
                        ascii("probe-cared", SeasonFrames.stocked(), form(18) + "v<"),
                        both("take-back", Frames.valveOpen(), form(19) + "vtyped twice"),
                        ascii("take-back", Frames.valveOpen(), form(19) + "vtyped twice"),
                        both("log", Frames.valveOpen(), "l"),
                        ascii("log", Frames.valveOpen(), "l"),
                        both("log-entries", Frames.valveOpen(), "l\t\t\t\nfed"),
                        ascii("log-entries", Frames.valveOpen(), "l\t\t\t\nfed"),
                        both("log-date", LogFrames.recorded(new ArrayList<>()), "ld01-05\n"),
                        ascii("log-date", LogFrames.recorded(new ArrayList<>()), "ld01-05\n"),
                        both("alarm-performance", PerformanceFrames.aMonth(), "z"),
                        ascii("alarm-performance", PerformanceFrames.aMonth(), "z"),
                        both("replay", Frames.replay(), "i"),
                        ascii("replay", Frames.replay(), "i"),
                        both("trends-hour", Frames.valveOpen(), "g"),
                        ascii("trends-hour", Frames.valveOpen(), "g"),
                        both("trends-day-two", Frames.valveOpen(), "gvvvv\nv2<<<<<<"),
                        ascii("trends-day-two", Frames.valveOpen(), "gvvvv\nv2<<<<<<"),
                        both("trends-two", Frames.valveOpen(), "g\nvvv<<<"),
                        ascii("trends-two", Frames.valveOpen(), "g\nvvv<<<"),
                        both("trends-season", Frames.valveOpen(), "g4vvvv"),
                        ascii("trends-season", Frames.valveOpen(), "g4vvvv"),
                        Stream.of(
                                Arguments.of("trends-day-ascii", Frames.valveOpen(), "gvvvv\nv2", false, 80, 24),
                                Arguments.of("trends-day-ascii", Frames.valveOpen(), "gvvvv\nv2", false, 120, 40),
                                Arguments.of("stock-us", SeasonFrames.stockedUs(), "s", true, 80, 24),
                                Arguments.of("nitrogen-us", SeasonFrames.stockedUs(), "f", true, 80, 24),
                                Arguments.of(
                                        "harvest-us",
                                        SeasonFrames.stockedUs(),
                                        form(8) + "v5.9, 6.2, 7.1",
                                        true,
                                        80,
                                        24),
                                Arguments.of("quiet-us", Frames.quietUs(), "", true, 80, 24),
                                Arguments.of("valve-open", Frames.valveOpen(), "", true, 60, 18),
                                Arguments.of("valve-open-ascii", Frames.valveOpen(), "a", false, 40, 12),
                                Arguments.of("quiet", Frames.quiet(), "", true, 40, 12),
                                Arguments.of("tests", Frames.tested(), "mv0.02vv1.4", true, 60, 24),
                                Arguments.of("tests", Frames.tested(), "mvvvvvvvv", true, 60, 10),
                                Arguments.of("losing-much", Frames.losingWithMuchToSay(), "", true, 80, 24),
                                Arguments.of("losing-much", Frames.losingWithMuchToSay(), "", true, 60, 24),
                                Arguments.of("losing-much", Frames.losingWithMuchToSay(), "", true, 40, 12)))
                .flatMap(s -> s);
    }

    /** Keys that open a form by its place under n. */
    private static String form(int place) {
        return "n" + "v".repeat(place) + "\n";
    }

    private static Stream<Arguments> both(String name, Frame frame, String keys) {
        return Stream.of(Arguments.of(name, frame, keys, true, 80, 24), Arguments.of(name, frame, keys, true, 120, 40));
    }

    private static Stream<Arguments> ascii(String name, Frame frame, String keys) {
        return Stream.of(
                Arguments.of(name + "-ascii", frame, keys, false, 80, 24),
                Arguments.of(name + "-ascii", frame, keys, false, 120, 40));
    }

    @Test
    void drawsAtAnySizeWithoutFailing() {
        for (int width = 1; width < 130; width += 7) {
            for (int height = 1; height < 50; height += 3) {
                for (String keys : new String[] {
                    "", "\n", "t", "e", "h", "q", "p", "g", "g\nv2", "n", "m", "l", "l\nab", "nvvvv\nabc"
                }) {
                    ScreenModel model = new ScreenModel();
                    Keys.press(model, Frames.valveOpen(), keys);
                    Picture picture = Screens.draw(Frames.valveOpen(), model, true, width, height);
                    assertEquals(width * height, picture.width() * picture.height());
                }
            }
        }
    }
}
