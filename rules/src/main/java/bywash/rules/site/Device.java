package bywash.rules.site;

/** What a state probe tells of. */
public enum Device {
    PUMP("pump"),
    VALVE("valve"),
    MAINS_POWER("mains-power");

    private final String word;

    Device(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
