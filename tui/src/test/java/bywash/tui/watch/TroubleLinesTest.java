package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class TroubleLinesTest {
    private static final Instant T0 = Instant.parse("2026-05-04T06:00:00Z");

    @Test
    void tellsWhatIsNewAndThatItIsOverButNotEachFigure() {
        List<String> told = new ArrayList<>();
        TroubleLines lines = new TroubleLines();
        lines.to(told::add);
        lines.tell("", T0);
        lines.tell("NOT ON DISK: disk full (3 messages wait)", T0.plusSeconds(10));
        lines.tell("NOT ON DISK: disk full (1 entry, 4 messages wait)", T0.plusSeconds(30));
        lines.tell("NOT ON DISK: disk fault", T0.plusSeconds(45));
        lines.tell("", T0.plusSeconds(47));
        assertEquals(2, told.size(), "not sooner than 10 s");
        lines.tell("", T0.plusSeconds(57));
        assertEquals(
                List.of(
                        "NOT ON DISK: disk full (3 messages wait)",
                        "NOT ON DISK: disk fault",
                        "the watch itself is in order again"),
                told);
    }
}
