package bywash.rules.site;

/** What a vessel does in the loop. */
public enum VesselRole {
    FISH_TANK("fish-tank"),
    SUMP("sump"),
    GROW_BED("grow-bed"),
    /** Stands apart: mains water waits or is treated here. Not part of the recirculating volume. */
    RESERVE("reserve");

    private final String word;

    VesselRole(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
