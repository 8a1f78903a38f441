package bywash.tui.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.event.CalibrationPoint;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.BedState;
import bywash.rules.event.OperatorEntry.Calibrate;
import bywash.rules.event.OperatorEntry.CropHarvest;
import bywash.rules.event.OperatorEntry.Dose;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.FishIn;
import bywash.rules.event.OperatorEntry.FishLoss;
import bywash.rules.event.OperatorEntry.FishMove;
import bywash.rules.event.OperatorEntry.Harvest;
import bywash.rules.event.OperatorEntry.PhAim;
import bywash.rules.event.OperatorEntry.Plant;
import bywash.rules.event.OperatorEntry.ProbeCare;
import bywash.rules.event.OperatorEntry.StockingChange;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.event.OperatorEntry.Weigh;
import bywash.rules.event.OperatorEntry.Withdraw;
import bywash.rules.site.Stocking;
import bywash.tui.view.Frame;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

/** From keys to the entries of the season. The forms stand under n in a fixed order. */
final class SeasonFormsTest {
    private static final Frame STOCKED = SeasonFrames.stocked();
    private static final Frame FISHLESS = SeasonFrames.fishless();
    private static final Instant NOW = Frames.NOW;

    private ScreenModel model = new ScreenModel();

    private static String form(int place) {
        return "n" + "v".repeat(place) + "\n";
    }

    /** Keys that begin with n open a form, on a screen of their own. */
    private Effect press(Frame frame, String keys) {
        model = keys.startsWith("n") ? new ScreenModel() : model;
        return Keys.press(model, frame, keys);
    }

    private List<OperatorEntry> entered(Frame frame, String keys) {
        return assertInstanceOf(Effect.Enter.class, press(frame, keys), () -> screen(frame))
                .entries();
    }

    private String screen(Frame frame) {
        return Screens.draw(frame, model, false, 80, 24).text();
    }

    private String flowing(Frame frame) {
        return screen(frame).replaceAll("\\s+", " ");
    }

    /** What the form says in place of an entry. */
    private String refused(Frame frame, String keys) {
        assertInstanceOf(Effect.Say.class, press(frame, keys), () -> screen(frame));
        return model.notice();
    }

    @Test
    void fishComeInAsANewCohortOrJoinOneOfTheirSpecies() {
        assertEquals(
                List.of(new FishIn(NOW, "autumn", "nile-tilapia", 40, 12.5, "fish-tank")),
                entered(STOCKED, form(6) + "autumnvv40v12.5\n"));
        assertEquals(
                "Cohort spring is nile-tilapia; give the common-carp another name.",
                refused(STOCKED, form(6) + "springv>v40v12.5\n"));
        assertEquals("Count: type a whole number, 1 or more.", refused(STOCKED, form(6) + "springvv4.5v12.5\n"));
    }

    @Test
    void aLoadOverTheGuideIsWarnedOf() {
        assertTrue(refused(STOCKED, form(6) + "autumnvv400v120\n").startsWith("Read the warning"));
        assertTrue(
                screen(STOCKED).contains("fish-tank would carry 41.9 kg/m3, over the guide of 20.0 kg/m3."),
                screen(STOCKED));
    }

    @Test
    void withoutFishTheFirstToComeTurnTheBandsAndWhatSpeaksAgainstItIsSaid() {
        refused(FISHLESS, form(6) + "autumnv>>>>v40v12.5\n");
        assertTrue(screen(FISHLESS).contains("nitrite a day after a dose no"), screen(FISHLESS));
        assertEquals(
                List.of(
                        new StockingChange(NOW, Stocking.FISH, "rainbow-trout"),
                        new FishIn(NOW, "autumn", "rainbow-trout", 40, 12.5, "fish-tank")),
                entered(FISHLESS, "\n"));
    }

    @Test
    void aSampleIsWeighedOneByOneOrTogether() {
        assertEquals(
                List.of(new Weigh(NOW, "spring", false, 3, 596, List.of(190.0, 200.5, 205.5))),
                entered(STOCKED, form(7) + "vv190, 200.5,205.5\n"));
        assertEquals(
                List.of(new Weigh(NOW, "spring", false, 10, 2000, List.of())),
                entered(STOCKED, form(7) + "vvv10v2000\n"));
        assertTrue(refused(STOCKED, form(7) + "v>v190, 200\n").startsWith("Read the warning"));
        assertTrue(screen(STOCKED).contains("74 are on record; 2 weighed as all of them puts the count to 2."));
        assertEquals(
                "Cohort spring has 74 fish, not 80; type a count that it has, or weigh all to put the count right.",
                refused(STOCKED, form(7) + "vvv80v16000\n"));
    }

    @Test
    void aHarvestShowsWhatTheWeightsAddUpToAsTheyAreTyped() {
        press(STOCKED, form(8) + "v168, 176, 184, 202");
        assertTrue(
                screen(STOCKED)
                        .contains("4 weighed, total 730 g, mean 183 g, spread 15 g, smallest 168 g, largest 202 g"),
                screen(STOCKED));
        assertEquals(
                List.of(new Harvest(NOW, "spring", 4, List.of(168.0, 176.0, 184.0, 202.0))), entered(STOCKED, "\n"));
        assertEquals(
                "Total: the weights typed come to 370 g; type the total of all 4 fish.",
                refused(STOCKED, form(8) + "v168, 202v4v300\n"));
        assertEquals(List.of(new Harvest(NOW, "spring", 4, List.of(168.0, 202.0), 750)), entered(STOCKED, "###750\n"));
    }

    @Test
    void aWeightFarFromTheCohortIsAskedForAgain() {
        assertTrue(refused(STOCKED, form(8) + "v168, 1760\n").startsWith("Read the warning"));
        assertTrue(screen(STOCKED).contains("1760 g is far from the 200 g on record for one fish"));
        assertEquals(1, entered(STOCKED, "\n").size());
    }

    @Test
    void aGreatLossSaysWhatToLookAt() {
        assertEquals(List.of(new FishLoss(NOW, "spring", 2, "jumped")), entered(STOCKED, form(9) + "v2vjumped\n"));
        refused(STOCKED, form(9) + "v20\n");
        assertTrue(screen(STOCKED).contains("That is 27 % of the cohort. Look at oxygen"));
    }

    @Test
    void partOfACohortMovesOnlyWithTheNameOfWhatItBecomes() {
        assertEquals(
                "Only 20 of 74 move; name the cohort that they become or join.", refused(STOCKED, form(10) + "v20\n"));
        assertEquals(List.of(new FishMove(NOW, "spring", 20, "fish-tank", "large")), entered(STOCKED, "vvlarge\n"));
        assertEquals(List.of(new FishMove(NOW, "spring", 20, "away", null)), entered(STOCKED, form(10) + "v20v>\n"));
    }

    @Test
    void theSpeciesToBringBackIsChosenAndItsBandsMakeTheChecklist() {
        assertEquals(
                List.of(new StockingChange(NOW, Stocking.FISHLESS, "rainbow-trout")),
                entered(FISHLESS, form(11) + "v>>>>\n"));
        assertTrue(refused(STOCKED, form(11) + ">\n").startsWith("Read the warning"));
        assertTrue(screen(STOCKED).contains("74 fish are on record"));
    }

    @Test
    void aBedIsPlantedOnAnEarlierDayAndNotOnOneToCome() {
        Instant yesterday = Instant.parse("2026-05-03T08:30:00Z");
        assertEquals(
                List.of(new Plant(yesterday, "bed-1", "chard", 0.6)),
                entered(STOCKED, form(12) + "v>v0.6vyesterday 9:30\n"));
        assertTrue(refused(STOCKED, form(12) + "vv0.6v23:00\n").startsWith("When: leave it open for now, or type"));
    }

    @Test
    void aCropIsHarvestedAndABedTakenOff() {
        assertEquals(
                List.of(new CropHarvest(NOW, "bed-1", "lettuce", 900, 0.5)),
                entered(STOCKED, form(13) + "vv900v0.5\n"));
        press(STOCKED, form(14));
        assertTrue(screen(STOCKED).contains("Without bed-1 (1.2 m2 of lettuce)"));
        assertEquals(List.of(new BedState(NOW, "bed-1", false)), entered(STOCKED, "\n"));
        assertEquals("Bed-1 is in the loop already.", capital(refused(STOCKED, form(14) + "v>\n")));
    }

    private static String capital(String text) {
        return text.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + text.substring(1);
    }

    @Test
    void aDoseIsEnteredAfterItsCautions() {
        assertTrue(refused(STOCKED, form(15) + "v>>v50\n").startsWith("Read the warning"));
        assertTrue(screen(STOCKED).contains("Add acid to water"), screen(STOCKED));
        assertEquals(List.of(new Dose(NOW, "sump", "phosphoric-acid", 50, 85)), entered(STOCKED, "\n"));
        press(STOCKED, form(15) + "v" + ">".repeat(12) + "v5");
        assertTrue(screen(STOCKED).contains("ammonia is never dosed with fish"), screen(STOCKED));
    }

    @Test
    void theStrengthOnTheLabelIsAskedForAndComputedWith() {
        press(STOCKED, form(15) + "v>>v50");
        assertTrue(screen(STOCKED).contains("open: 85 %"), screen(STOCKED));
        double whole = alkalinity(screen(STOCKED));
        press(STOCKED, "v42.5");
        assertEquals(whole / 2, alkalinity(screen(STOCKED)), 0.06);
        press(STOCKED, "\n");
        assertEquals(List.of(new Dose(NOW, "sump", "phosphoric-acid", 50, 42.5)), entered(STOCKED, "\n"));
        assertEquals(
                "Strength 60 % is not one of hydrochloric acid; give the percent by weight on the label, above 0 to 38.",
                refused(STOCKED, form(15) + "vv50v60\n"));
        press(FISHLESS, form(15) + "v" + ">".repeat(13) + "v100");
        String ammonia = flowing(FISHLESS);
        assertTrue(ammonia.contains("That is 7.8 g of nitrogen"), ammonia); // 100 g of 9.5 % x 0.8225
        press(STOCKED, form(15) + "v" + ">".repeat(14) + "v10");
        assertTrue(flowing(STOCKED).contains("of chlorine out in the"), flowing(STOCKED));
    }

    private static double alkalinity(String screen) {
        java.util.regex.Matcher m = java.util.regex.Pattern.compile("alkalinity by about (-?[0-9.]+)")
                .matcher(screen);
        assertTrue(m.find(), screen);
        return Double.parseDouble(m.group(1));
    }

    @Test
    void aWayToAnotherPhIsPlannedByAnyMeansThatGoesThere() {
        press(STOCKED, form(16) + "6.8v>");
        assertTrue(screen(STOCKED).contains("05-05 26.7 g"), screen(STOCKED));
        assertTrue(screen(STOCKED).contains("test 2 h later"), screen(STOCKED));
        assertTrue(screen(STOCKED).contains("Gloves and eye protection"), screen(STOCKED));
        assertTrue(press(STOCKED, "\n") instanceof Effect.Say);
        assertEquals(List.of(new PhAim(NOW, 6.8, "potassium-carbonate", 100)), entered(STOCKED, "\n"));
        assertTrue(
                refused(STOCKED, form(16) + "6.0v>\n").startsWith("No plan: targetPh is 6.0; potassium carbonate"),
                model.notice());
        press(STOCKED, form(16) + "6.0v<");
        assertTrue(flowing(STOCKED).contains("days at the feed of the last week"), screen(STOCKED));
        assertTrue(refused(FISHLESS, form(16) + "6.5v<\n").startsWith("No plan: no feed is on record"));
    }

    @Test
    void twoBuffersGiveSlopeAndOffsetBeforeTheyAreEntered() {
        press(STOCKED, form(17) + "v>v4.01v171v6.86v2");
        assertTrue(screen(STOCKED).contains("Found: slope 100.2 %, offset -6.30 mV: good."), screen(STOCKED));
        assertEquals(
                List.of(new Calibrate(
                        NOW,
                        "fish-ph",
                        "",
                        List.of(new CalibrationPoint(4.01, "pH", 171, "mV"), new CalibrationPoint(6.86, "pH", 2, "mV")),
                        21.5)),
                entered(STOCKED, "vvv21.5\n"));
        assertTrue(refused(STOCKED, form(17) + "vv4.01v4.1\n").startsWith("Reading 2: pH wants a second buffer"));
        assertEquals(
                "Reading 1: type what the probe showed in it, before it was adjusted.",
                refused(STOCKED, form(17) + "vv4.01v41\n"));
    }

    @Test
    void careOfAProbeIsEntered() {
        assertEquals(List.of(new ProbeCare(NOW, "fish-do", "new membrane")), entered(STOCKED, form(18) + ">v>\n"));
    }

    @Test
    void feedGoesToOneCohortOrToAll() {
        assertEquals(
                List.of(new Feed(Instant.parse("2026-05-04T05:00:00Z"), 60, Double.NaN, "spring", null)),
                entered(STOCKED, form(1) + "60vvv>v6:00\n"));
        refused(STOCKED, form(1) + "900\n");
        assertTrue(screen(STOCKED).contains("900 g at once is far over the 121 g a day"), screen(STOCKED));
    }

    @Test
    void aMistakenEntryIsTakenBackByWordAndTime() {
        List<OperatorEntry> back = entered(Frames.valveOpen(), form(19) + "vtyped twice\n\n");
        Withdraw first = assertInstanceOf(Withdraw.class, back.get(0));
        assertEquals("note", first.of());
        assertEquals("typed twice", first.why());
        assertEquals(1, first.which());
        assertTrue(first.entered().isBefore(NOW));
    }

    @Test
    void oxygenAndTemperatureByAMeterAreTestsToo() {
        assertEquals(
                List.of(
                        new WaterTest(NOW, "fish-tank", "dissolved-oxygen", 6.4),
                        new WaterTest(NOW, "fish-tank", "temperature", 24.5)),
                press(STOCKED, "n\n" + "v".repeat(8) + "6.4v24.5\n") instanceof Effect.Enter e
                        ? e.entries()
                        : List.of());
    }

    @Test
    void aTestMadeThisMorningIsEnteredAtItsTime() {
        assertEquals(
                List.of(new WaterTest(Instant.parse("2026-05-04T04:15:00Z"), "fish-tank", "ph", 6.8)),
                press(STOCKED, "n\n" + "v".repeat(7) + "6.8vvv5:15\n") instanceof Effect.Enter e
                        ? e.entries()
                        : List.of());
    }
}
