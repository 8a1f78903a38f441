package bywash.ingest.payload;

import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** Reads a state: on or off, in the words that switches use. */
final class StateWord {
    private StateWord() {}

    static double parse(byte[] text) throws PayloadFault {
        if (text.length > 64) {
            throw new PayloadFault("the payload is too long for a state, " + text.length + " bytes");
        }
        return parse(new String(text, StandardCharsets.UTF_8));
    }

    static double parse(String text) throws PayloadFault {
        return switch (text.strip().toLowerCase(Locale.ROOT)) {
            case "on", "1", "true", "open" -> 1;
            case "off", "0", "false", "closed", "shut" -> 0;
            default -> throw new PayloadFault(PayloadFault.quoted(text) + " is not a state such as on or off");
        };
    }

    static double of(double number) throws PayloadFault {
        if (number == 0 || number == 1) {
            return number;
        }
        throw new PayloadFault(number + " is not a state such as 1 or 0");
    }
}
