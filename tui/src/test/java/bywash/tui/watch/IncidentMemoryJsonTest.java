package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import bywash.rules.chlorine.Litres;
import bywash.rules.engine.IncidentMemory;
import bywash.rules.recovery.FeedStage;
import bywash.rules.recovery.RecoveryMemory;
import bywash.rules.response.IncidentFigures;
import bywash.rules.response.IncidentFigures.Peak;
import bywash.rules.response.IncidentFigures.Written;
import bywash.rules.response.SheetStep;
import bywash.rules.response.WaterRun;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.NullSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is kept of an incident comes back as it was, or not at all. */
class IncidentMemoryJsonTest {
    private static final Instant T = Instant.parse("2026-05-04T06:00:00.123Z");

    private static IncidentMemory memory(FeedStage stage) {
        IncidentFigures figures = new IncidentFigures(
                "20260504T060000Z-unplanned-inflow-sump",
                new Peak(T, 0.1, 24.7, 1e3 / 3, 0.123456789, 19),
                List.of(
                        new WaterRun("sump", T.plusMillis(1), true, new Litres(1, 2.5, 3), "reserve", false),
                        new WaterRun("sump", T.plusMillis(9), true, new Litres(170, 180, 190), "reserve", false, 160),
                        new WaterRun("reserve", T, false, new Litres(0, 0, 7), "", true)),
                new Written(
                        T,
                        List.of("sump: 3 L"),
                        List.of("At …: \"0\" ug/L", "x"),
                        List.of(),
                        List.of(new SheetStep("air", "Air on full; stop feeding.", "", null, ""))));
        return new IncidentMemory(
                figures, new RecoveryMemory(figures.incident(), T.minusSeconds(9), stage, T.plusSeconds(5)));
    }

    @ParameterizedTest
    @EnumSource
    void comesBackAsItWas(FeedStage stage) {
        IncidentMemory memory = memory(stage);
        assertEquals(Optional.of(memory), IncidentMemoryJson.read(IncidentMemoryJson.of(memory)));
    }

    @Test
    void oneWithoutFiguresComesBackToo() {
        IncidentMemory memory = new IncidentMemory(new IncidentFigures("i", null, List.of(), null), null);
        assertEquals(Optional.of(memory), IncidentMemoryJson.read(IncidentMemoryJson.of(memory)));
    }

    @ParameterizedTest
    @NullSource
    @ValueSource(
            strings = {
                "",
                "{",
                "7",
                "[]",
                "{\"water\":[]}",
                "{\"incident\":\"i\",\"water\":[{}]}",
                "{\"incident\":\"i\",\"peak\":{\"at\":\"never\"}}",
                "{\"incident\":\"i\",\"recovery\":{\"began\":\"2026-05-04T06:00:00Z\",\"feed\":\"all\"}}"
            })
    void whatIsNoneIsNotTaken(String text) {
        assertEquals(Optional.empty(), IncidentMemoryJson.read(text));
    }

    /** A byte spoilt anywhere is taken for what it says or passed over; it never ends the start of a watch. */
    @Test
    void aSpoiltByteNeverEndsAStart() {
        String whole = IncidentMemoryJson.of(memory(FeedStage.HALF));
        SplittableRandom random = new SplittableRandom(5);
        int refused = 0;
        for (int i = 0; i < whole.length(); i++) {
            char other = (char) random.nextInt(32, 127);
            refused += IncidentMemoryJson.read(whole.substring(0, i) + other + whole.substring(i + 1))
                            .isEmpty()
                    ? 1
                    : 0;
        }
        assertEquals(true, refused > whole.length() / 10, refused + " refused");
    }
}
