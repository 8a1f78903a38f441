package bywash.tui.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.response.ResponseSheet;
import bywash.rules.response.SheetEvent;
import bywash.rules.response.SheetStep;
import bywash.rules.site.Units;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;

class SheetFormatTest {
    private static final ZoneId DUBLIN = ZoneId.of("Europe/Dublin");
    private static final Instant AT = Instant.parse("2026-05-04T05:10:00Z");

    @Test
    void textIsWhole() {
        assertEquals("""
                RESPONSE SHEET: LARKFIELD
                =========================

                Incident  i-1
                Began     2026-05-04 06:10
                Ended     not yet
                As of     2026-05-04 06:10 (Europe/Dublin)

                WATER
                - sump: 33 L in

                CHLORINE, ESTIMATED
                - Nothing is known.

                WHAT THE READINGS RULE OUT
                - Nothing.

                WHAT TO DO, IN ORDER
                [x] 1. Shut the valve.
                       Done 2026-05-04 06:10: it *was* stiff
                [ ] 2. Test total chlorine with a DPD kit: fish tank first, then the source;
                       enter the results.
                       Mind: Gloves.

                WHAT HAPPENED
                - 2026-05-04 06:10 unplanned-inflow sump

                CAUTIONS
                - Follow the label.
                """, SheetFormat.TEXT.write(sheet("it *was* stiff"), DUBLIN));
    }

    @Test
    void markdownHasTicksAndEscapesWhatTheGrowerTyped() {
        String text = SheetFormat.MARKDOWN.write(sheet("it *was* <b>stiff</b> | [x](y)"), DUBLIN);
        assertTrue(text.startsWith("# Response sheet: Larkfield\n\n- **Incident:** i-1\n"), text);
        assertTrue(text.contains("1. [x] Shut the valve.\n   - Done 2026-05-04 06:10: it \\*was\\* \\<b\\>"), text);
        assertTrue(text.contains("2. [ ] Test total chlorine"), text);
    }

    @Test
    void watersAreInTheUnitsOfTheSite() {
        String text = SheetFormat.TEXT.write(sheet(""), DUBLIN, Units.US);
        assertTrue(text.contains("- sump: 8.7 gal in\n"), text); // 33 L of 3.785411784 L a gallon
    }

    @Test
    void nothingTypedReachesATerminalAsAnEscape() {
        for (SheetFormat format : SheetFormat.values()) {
            assertFalse(format.write(sheet("\u001b[2J\u009b31m"), DUBLIN)
                    .chars()
                    .anyMatch(c -> c != '\n' && Character.isISOControl(c)));
        }
    }

    private static ResponseSheet sheet(String note) {
        String test = "Test total chlorine with a DPD kit: fish tank first, then the source; enter the results.";
        return new ResponseSheet(
                "i-1",
                "Larkfield",
                AT,
                AT,
                null,
                List.of("sump: 33 L in"),
                List.of(),
                List.of(),
                List.of(new SheetEvent(AT, "unplanned-inflow sump")),
                List.of(
                        new SheetStep("stop-water", "Shut the valve.", "Unseen once done.", AT, note),
                        new SheetStep("test-chlorine", test, "Gloves.", null, "")),
                List.of("Follow the label."));
    }
}
