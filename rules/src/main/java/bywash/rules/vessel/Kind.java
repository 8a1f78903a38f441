package bywash.rules.vessel;

/** The families of vessel shape, each with the word that a site file uses for it. */
public enum Kind {
    BOX("box"),
    VERTICAL_CYLINDER("vertical-cylinder"),
    HORIZONTAL_CYLINDER("horizontal-cylinder"),
    CONE_BOTTOM("cone-bottom"),
    FRUSTUM("frustum"),
    STRAPPING_TABLE("strapping-table");

    private final String word;

    Kind(String word) {
        this.word = word;
    }

    /** The word that a site file uses for this shape. */
    public String word() {
        return word;
    }
}
