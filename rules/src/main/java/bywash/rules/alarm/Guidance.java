package bywash.rules.alarm;

/**
 * What follows if nothing is done, and what to do now, for each alarm. Common practice, no source, unless said.
 *
 * @param consequence one sentence
 * @param action steps in order, separated by "; "
 */
public record Guidance(String consequence, String action) {
    private static final String CONFIRM = "test chlorine with a DPD kit";

    public static Guidance of(AlarmKind kind) {
        return switch (kind) {
            case UNPLANNED_INFLOW, LINE_NOT_SHUT ->
                new Guidance(
                        "Untreated mains water burns gills within hours, and the vessel overflows.",
                        "shut the valve and the second valve; look for a hose; air on full; " + CONFIRM);
            case UNPLANNED_LOSS ->
                new Guidance(
                        "The pump runs dry, beds and fish lose their water.",
                        "find the leak: hoses, bed drains, vessel joints; stop the pump if the sump runs low");
            case OVERFLOW_NEAR ->
                new Guidance(
                        "Water runs over the edge and is lost, with what is in it.",
                        "shut every inlet; make room; find where the water comes from");
            case UNSAFE_RELEASE ->
                new Guidance(
                        "Water with disinfectant reaches the fish.",
                        "shut the reserve; " + CONFIRM + " before any release");
            case CHLORINE_RISK ->
                new Guidance(
                        "Residual above 19 ug/L for an hour harms sensitive fish (US EPA 1985).",
                        "stop the water; air on full; " + CONFIRM
                                + "; dose a dechlorinator by its label; ask a vet or fish-health adviser if fish gasp");
            case LOW_OXYGEN ->
                new Guidance(
                        "Fish suffocate; nitrifying bacteria slow down.",
                        "air on full; stop feeding; check pump and air stones; check the probe");
            case PUMP_STOPPED ->
                new Guidance(
                        "Fish lose oxygen and beds dry out; pipes drain into the sump.",
                        "check power and pump; look that no water runs in; run air on battery; do not top up while pipes drain back");
            case PH_LOW ->
                new Guidance(
                        "Nitrification slows and stops as pH falls.",
                        "test pH by hand; test alkalinity; raise in small steps with a re-test");
            case PH_HIGH ->
                new Guidance(
                        "More of the ammonia is toxic; plants take up less iron.",
                        "test pH by hand; look for mains water; lower in small steps with a re-test");
            case TEMPERATURE_LOW, TEMPERATURE_HIGH, TEMPERATURE_SWING ->
                new Guidance(
                        "Fish stop feeding and weaken; warm water holds less oxygen.",
                        "check heater, shade and inlets; change temperature slowly; hold feed");
            case ORP_LOW ->
                new Guidance(
                        "Organic load or lack of oxygen.",
                        "check oxygen; look for dead fish or rotting feed; clean the probe");
            case ORP_RISE ->
                new Guidance(
                        "An oxidant harms gills and bacteria; or the probe says nothing of the water.",
                        "look whether the probe stands in water; look for a hose or a leak into the system; " + CONFIRM
                                + "; air on full if anything was dosed");
            case AMMONIA_TOXIC ->
                new Guidance(
                        "Un-ionised ammonia damages gills.", "stop feeding; air on full; re-test; do not raise pH");
            case NITRITE_HIGH ->
                new Guidance("Nitrite stops blood from carrying oxygen.", "stop feeding; air on full; re-test daily");
            case BIOFILTER_SETBACK ->
                new Guidance("Ammonia and nitrite climb.", "hold feed; test ammonia and nitrite daily for a week");
            case FEED_LOST ->
                new Guidance(
                        "Nothing is watched until the feed is back.",
                        "check broker, network and power; look at the water");
            case PROBE_SILENT ->
                new Guidance(
                        "What this probe watches is not watched.",
                        "check its power, cable and radio; look at the water");
            case PROBE_STUCK ->
                new Guidance("The reading may not follow the water.", "move or clean the probe; compare by hand");
            case PROBE_IMPLAUSIBLE ->
                new Guidance("The reading cannot be believed.", "check cable and calibration; compare by hand");
        };
    }
}
