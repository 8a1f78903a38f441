package bywash.ingest.payload;

/** Why a payload cannot become a reading, fit to be shown. */
final class PayloadFault extends Exception {
    private static final long serialVersionUID = 1L;

    PayloadFault(String reason) {
        super(plain(reason), null, false, false);
    }

    String reason() {
        return String.valueOf(getMessage());
    }

    /** Without control characters or marks that turn text round, and cut short. */
    static String plain(String text) {
        String plain = text.replaceAll("[\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}\\p{Cs}]", " ");
        return plain.length() <= 160 ? plain : plain.substring(0, 157) + "...";
    }

    static String quoted(String text) {
        String plain = plain(text);
        return "\"" + (plain.length() <= 40 ? plain : plain.substring(0, 37) + "...") + "\"";
    }
}
