package bywash.tui.screen;

import bywash.tui.view.Tone;

/** How a cell looks. What is abnormal also carries a word or a mark, so that nothing is lost without colour. */
public enum Style {
    PLAIN,
    /** Headings. */
    STRONG,
    SELECTED,
    WARNING,
    CRITICAL;

    public static Style of(Tone tone) {
        return switch (tone) {
            case PLAIN -> PLAIN;
            case WARNING -> WARNING;
            case CRITICAL -> CRITICAL;
        };
    }
}
