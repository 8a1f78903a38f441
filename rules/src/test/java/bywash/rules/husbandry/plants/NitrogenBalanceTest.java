package bywash.rules.husbandry.plants;

import static bywash.rules.husbandry.Sites.day;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.BedState;
import bywash.rules.event.OperatorEntry.CropHarvest;
import bywash.rules.event.OperatorEntry.Plant;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.husbandry.Sites;
import bywash.rules.husbandry.plants.NitrogenStatus.Verdict;
import bywash.rules.water.FeedRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import org.hipparchus.stat.regression.SimpleRegression;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NitrogenBalanceTest {
    private static final double VOLUME_L = 2460;
    private final List<String> remarks = new ArrayList<>();
    private final CropLedger beds = new CropLedger(Sites.site(), remarks::add);

    private void book(OperatorEntry... entries) {
        for (OperatorEntry entry : entries) {
            switch (entry.kind()) {
                case PLANT -> beds.book((Plant) entry);
                case CROP_HARVEST -> beds.book((CropHarvest) entry);
                case BED -> beds.book((BedState) entry);
                default -> throw new IllegalArgumentException(entry.word() + " is nothing to the beds");
            }
        }
    }

    private static WaterTest nitrate(double days, double mgL) {
        return new WaterTest(day(days), "fish-tank", "nitrate", mgL);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    @DisplayName("the slope of tests and its error agree with Hipparchus")
    void slopeAgrees(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        SimpleRegression oracle = new SimpleRegression();
        List<Slope.Point> points = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            double x = -2.0 * i;
            double y = 60 + 1.3 * x + 4 * random.nextGaussian();
            oracle.addData(x, y);
            points.add(new Slope.Point(x, y));
        }
        Slope slope = Slope.of(points);
        assertEquals(oracle.getSlope(), slope.perDay(), 1e-9);
        assertEquals(2 * oracle.getSlopeStdErr(), slope.halfWidth(), 1e-9);
    }

    @Test
    @DisplayName("tomato takes 0.62 g of N/m2/d in all, 0.43 into fruit at 69 % (Graber and Junge 2009, abstract)")
    void tomatoUptakeHoldsThePublishedOne() {
        Range uptake = Crop.TOMATO.uptakeGPerM2Day();
        double published = 0.43 / 0.69;
        assertTrue(uptake.low() <= published && published <= uptake.high(), uptake.toString());
    }

    @Test
    @DisplayName("feed that beds can use: FAO 589, 40-50 and 50-80 g/m2/d [from memory]")
    void feedUseFollowsTheGroupOfEachCrop() {
        book(new Plant(day(0), "bed-1", "lettuce", 1), new Plant(day(0), "bed-2", "tomato", 0.5));
        FeedRate.Range use = Objects.requireNonNull(CropLedger.feedUse(beds.status()));
        assertEquals(40 + 25, use.lowGPerDay(), 1e-9);
        assertEquals(50 + 40, use.highGPerDay(), 1e-9);
        book(new BedState(day(1), "bed-1", false), new BedState(day(1), "bed-2", false));
        assertNull(CropLedger.feedUse(beds.status()));
    }

    @Test
    void theBalanceComesInWordsWithTheFigures() {
        book(new Plant(day(0), "bed-1", "lettuce", 1.2), new Plant(day(0), "bed-2", "tomato", 1.2));
        NitrogenStatus status = NitrogenBalance.of(
                VOLUME_L, 2.36, beds.status(), List.of(nitrate(0, 62), nitrate(7, 70), nitrate(14, 80)), day(15));
        assertEquals(Verdict.ENOUGH, status.verdict());
        assertEquals(
                "For the plants nitrogen is enough. Feed and ammonia bring 2.36 g of N a day; the beds take 0.72 to 1.44. By that nitrate would "
                        + "move +1.7 to +3.0 mg/L a day. Last test 80 mg/L, moving +1.3 (+/- 0.2) mg/L a day over 3 tests.",
                status.words());
        assertEquals(
                (2.36 - 0.72) * 4.42664 / VOLUME_L * 1000,
                status.computedPerDay().high(),
                0.001);
    }

    @Test
    void aFallTowardsNothingIsShortBeforeItIsThere() {
        book(new Plant(day(0), "bed-1", "tomato", 3));
        NitrogenStatus status = NitrogenBalance.of(
                VOLUME_L, 0.6, beds.status(), List.of(nitrate(0, 40), nitrate(7, 30), nitrate(14, 20)), day(15));
        assertEquals(Verdict.SHORT, status.verdict());
        assertEquals(
                Verdict.AMPLE,
                NitrogenBalance.of(VOLUME_L, 0.6, beds.status(), List.of(nitrate(14, 180)), day(15))
                        .verdict());
    }

    @Test
    void withoutAFreshTestTheReckoningAloneDecidesAndSaysSo() {
        NitrogenStatus nothing = NitrogenBalance.of(VOLUME_L, Double.NaN, beds.status(), List.of(), day(1));
        assertEquals(Verdict.NOT_KNOWN, nothing.verdict());
        assertEquals(
                "For the plants nitrogen is not known. No feed or ammonia on record. Nothing is planted on record. No nitrate test on record: test.",
                nothing.words());
        book(new Plant(day(0), "bed-1", "lettuce", 1));
        NitrogenStatus old = NitrogenBalance.of(VOLUME_L, 2, beds.status(), List.of(nitrate(0, 50)), day(20));
        assertEquals(Verdict.AMPLE, old.verdict());
        assertTrue(old.words().contains("Last test 50 mg/L, over two weeks old: test again."), old.words());
        assertNull(old.measured());
    }

    @Test
    void theReckoningHasThreeAnswers() {
        book(new Plant(day(0), "bed-1", "lettuce", 1.2), new Plant(day(0), "bed-2", "tomato", 1.2)); // 0.72 to 1.44 g/d
        assertEquals(Verdict.SHORT, reckoned(0.7));
        assertEquals(Verdict.ENOUGH, reckoned(0.8));
        assertEquals(Verdict.ENOUGH, reckoned(1.4));
        assertEquals(Verdict.AMPLE, reckoned(1.5));
        assertEquals(Verdict.NOT_KNOWN, reckoned(Double.NaN));
    }

    private Verdict reckoned(double madeGPerDay) {
        return NitrogenBalance.of(VOLUME_L, madeGPerDay, beds.status(), List.of(), day(1))
                .verdict();
    }

    @Test
    void twoTestsADayApartGiveASlopeAndNoLess() {
        assertNull(NitrogenBalance.of(VOLUME_L, 1, List.of(), List.of(nitrate(0, 40), nitrate(0.99, 50)), day(2))
                .measured());
        Slope slope = NitrogenBalance.of(VOLUME_L, 1, List.of(), List.of(nitrate(0, 40), nitrate(1, 50)), day(2))
                .measured();
        assertEquals(10, Objects.requireNonNull(slope).perDay(), 1e-9);
    }

    @Test
    void aHarvestCarriesNitrogenOffAndClearsItsArea() {
        book(new Plant(day(0), "bed-1", "lettuce", 0.6), new Plant(day(9), "bed-1", "lettuce", 0.6));
        book(new CropHarvest(day(30), "bed-1", "lettuce", 2400, 0.8));
        BedStatus bed = beds.status().get(0);
        assertEquals(0.4, bed.plantedM2(), 1e-9);
        assertEquals(day(9), bed.stands().get(0).since());
        assertEquals(2.4 * 2.0, bed.removedN().low(), 1e-9);
        assertEquals(2.4 * 2.5, bed.removedN().high(), 1e-9);
        assertEquals(day(30), bed.lastHarvest());
    }

    @Test
    void takingABedOffIsToldBeforeItIsDone() {
        book(new Plant(day(0), "bed-1", "lettuce", 1), new Plant(day(0), "bed-2", "tomato", 1));
        NitrogenStatus now = NitrogenBalance.of(VOLUME_L, 1.5, beds.status(), List.of(), day(1));
        assertEquals(
                "Without bed-2 (1.0 m2 of tomato) the beds take 0.20 to 0.50 g of N a day instead of 0.60 to 1.20; nitrate would "
                        + "move +1.8 to +2.3 mg/L a day.",
                NitrogenBalance.without(now, beds.status().get(1), VOLUME_L));
        assertNotNull(now.words());
    }

    @Test
    void whatCannotBeBookedIsTold() {
        book(new Plant(day(0), "bed-9", "lettuce", 1), new Plant(day(0), "bed-1", "moonflower", 1));
        book(new CropHarvest(day(1), "bed-1", "lettuce", 100, 0.5));
        assertEquals(
                List.of(
                        "2026-03-01T08:00:00Z plant: bed bed-9 is not in the site file; one of bed-1, bed-2",
                        "2026-03-01T08:00:00Z plant: crop moonflower is not known and counts as leafy; lettuce, chard, basil, herbs, "
                                + "leafy, tomato, cucumber, pepper or fruiting",
                        "2026-03-02T08:00:00Z crop-harvest: clears more lettuce than bed-1 has on record; plant entries for all that grows"),
                remarks);
    }

    @Test
    @DisplayName(
            "nitrogen of the fresh crop: USDA SR Legacy protein / 6.25 (lettuce 1.35 and 1.36 %, read; basil 3.2 %, as quoted); New"
                    + " England guide, lettuce 75 lb in 15 short tons")
    void nitrogenOfTheCropIsThatOfPublishedTables() {
        for (double protein : new double[] {1.35, 1.36}) {
            assertInside(Crop.LETTUCE, protein * 10 / 6.25);
        }
        assertInside(Crop.LETTUCE, 75.0 / (15 * 2000) * 1000);
        assertInside(Crop.BASIL, 3.1 * 10 / 6.25);
    }

    private static void assertInside(Crop crop, double gPerKg) {
        assertTrue(
                gPerKg >= crop.contentGPerKg().low() - 1e-9
                        && gPerKg <= crop.contentGPerKg().high() + 1e-9,
                crop + " " + gPerKg);
    }
}
