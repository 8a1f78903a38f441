package bywash.tui.screen;

/** Where the grower is. */
public enum Page {
    OVERVIEW("Overview"),
    DETAIL("Alarm in full"),
    TOP_UP("Declare a top-up"),
    END_TOP_UP("End the top-up"),
    HELP("Help"),
    QUIT("Leave?"),
    /** Laid over any page after the first of the two key presses. */
    ACKNOWLEDGE("Acknowledge");

    private final String title;

    Page(String title) {
        this.title = title;
    }

    String title() {
        return title;
    }
}
