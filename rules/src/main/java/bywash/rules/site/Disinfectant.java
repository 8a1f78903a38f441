package bywash.rules.site;

/** What the mains supply is disinfected with. */
public enum Disinfectant {
    CHLORINE("chlorine"),
    CHLORAMINE("chloramine"),
    NONE("none");

    private final String word;

    Disinfectant(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
