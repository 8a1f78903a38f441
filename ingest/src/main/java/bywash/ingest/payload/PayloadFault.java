package bywash.ingest.payload;

import bywash.ingest.text.PlainText;

/** Why a payload cannot become a reading, fit to be shown. */
final class PayloadFault extends Exception {
    private static final long serialVersionUID = 1L;

    PayloadFault(String reason) {
        super(PlainText.of(reason, 160), null, false, false);
    }

    String reason() {
        return String.valueOf(getMessage());
    }

    static String quoted(String text) {
        return "\"" + PlainText.of(text, 40) + "\"";
    }
}
