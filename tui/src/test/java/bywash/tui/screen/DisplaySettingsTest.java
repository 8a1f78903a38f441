package bywash.tui.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import org.junit.jupiter.api.Test;

final class DisplaySettingsTest {
    @Test
    void localeDecidesOnUnicode() {
        assertEquals(new DisplaySettings(true, true, false), of("TERM", "xterm", "LANG", "en_IE.UTF-8"));
        assertEquals(new DisplaySettings(true, true, false), of("TERM", "xterm", "LANG", "C.utf8"));
        assertEquals(
                new DisplaySettings(false, true, false), of("TERM", "xterm", "LANG", "en_IE.UTF-8", "LC_ALL", "C"));
        assertEquals(new DisplaySettings(false, true, false), of("TERM", "xterm"));
    }

    @Test
    void noColorAndOldTerminalsGoWithoutColour() {
        assertEquals(new DisplaySettings(false, false, false), of("TERM", "xterm-256color", "NO_COLOR", "1"));
        assertEquals(new DisplaySettings(false, true, false, true), of("TERM", "xterm-256color", "NO_COLOR", ""));
        assertEquals(new DisplaySettings(false, false, false), of("TERM", "vt100"));
    }

    @Test
    void manyColoursAreKnownByTheTerminalsName() {
        assertEquals(new DisplaySettings(false, true, false, true), of("TERM", "xterm-256color"));
        assertEquals(new DisplaySettings(false, true, false, true), of("TERM", "xterm", "COLORTERM", "truecolor"));
        assertEquals(new DisplaySettings(false, true, false, false), of("TERM", "linux"));
    }

    @Test
    void aDumbTerminalCannotBeDrawnOn() {
        assertEquals(new DisplaySettings(false, false, true), of("TERM", "dumb"));
        assertEquals(new DisplaySettings(false, false, true), of());
    }

    private static DisplaySettings of(String... pairs) {
        Map<String, String> environment = new java.util.HashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            environment.put(pairs[i], pairs[i + 1]);
        }
        return DisplaySettings.from(environment);
    }
}
