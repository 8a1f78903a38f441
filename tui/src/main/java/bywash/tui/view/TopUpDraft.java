package bywash.tui.view;

/** A top-up as typed so far; volume in display units, duration in minutes. */
public record TopUpDraft(String vessel, String source, String volume, String minutes) {
    /** The source that stands for the mains supply. */
    public static final String MAINS = "mains";
}
