package bywash.rules.site;

/** Whether fish are in the water. */
public enum Stocking {
    FISH("fish"),
    FISHLESS("fishless");

    private final String word;

    Stocking(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
