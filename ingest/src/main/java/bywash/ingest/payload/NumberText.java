package bywash.ingest.payload;

import java.nio.charset.StandardCharsets;

/**
 * Reads the text of one number: sign, digits, point, exponent; blanks around it are passed over. Short decimals, the usual
 * case, make no garbage: up to 15 digits over a power of ten is exact by one division.
 */
final class NumberText {
    private static final int LONGEST = 64;
    private static final double[] TENS = {
        1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15
    };

    private NumberText() {}

    static double parse(byte[] text) throws PayloadFault {
        int from = 0;
        int to = text.length;
        while (from < to && text[from] >= 0 && text[from] <= ' ') {
            from++;
        }
        while (to > from && text[to - 1] >= 0 && text[to - 1] <= ' ') {
            to--;
        }
        if (from == to) {
            throw new PayloadFault("the payload is empty");
        }
        if (to - from > LONGEST) {
            throw new PayloadFault("the payload is too long for a number, " + text.length + " bytes");
        }
        return parse(text, from, to);
    }

    private static double parse(byte[] text, int from, int to) throws PayloadFault {
        boolean negative = text[from] == '-';
        int at = negative || text[from] == '+' ? from + 1 : from;
        long digits = 0;
        int count = 0;
        int decimals = -1;
        for (; at < to; at++) {
            byte c = text[at];
            if (c >= '0' && c <= '9') {
                digits = count < 15 ? digits * 10 + c - '0' : digits;
                count++;
                decimals += decimals >= 0 ? 1 : 0;
            } else if (c == '.' && decimals < 0) {
                decimals = 0;
            } else {
                break;
            }
        }
        if (count == 0 || (at < to && !exponent(text, at, to))) {
            throw new PayloadFault(quoted(text, from, to) + " is not a number");
        }
        if (at == to && count <= 15) {
            double value = decimals <= 0 ? digits : digits / TENS[decimals];
            return negative ? -value : value;
        }
        double value = Double.parseDouble(new String(text, from, to - from, StandardCharsets.US_ASCII));
        if (!Double.isFinite(value)) {
            throw new PayloadFault(quoted(text, from, to) + " is too large a number");
        }
        return value;
    }

    private static boolean exponent(byte[] text, int from, int to) {
        if (text[from] != 'e' && text[from] != 'E') {
            return false;
        }
        int at = from + 1;
        if (at < to && (text[at] == '+' || text[at] == '-')) {
            at++;
        }
        int first = at;
        while (at < to && text[at] >= '0' && text[at] <= '9') {
            at++;
        }
        return at == to && at > first;
    }

    private static String quoted(byte[] text, int from, int to) {
        return PayloadFault.quoted(new String(text, from, to - from, StandardCharsets.UTF_8));
    }
}
