package bywash.rules.husbandry.feed;

import static bywash.rules.husbandry.Sites.day;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.event.Appetite;
import bywash.rules.event.OperatorEntry.FishIn;
import bywash.rules.husbandry.Sites;
import bywash.rules.husbandry.bacteria.ProvenLoad;
import bywash.rules.husbandry.stock.CohortStatus;
import bywash.rules.husbandry.stock.SpeciesTable;
import bywash.rules.husbandry.stock.StockLedger;
import bywash.rules.published.PublishedTable;
import bywash.rules.site.Species;
import bywash.rules.water.FeedRate;
import java.util.List;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

class FeedPlanTest {
    private static final Species TILAPIA = SpeciesTable.builtIn().get(0);

    private static List<CohortStatus> stock(int count, double meanG) {
        StockLedger stock = new StockLedger(Sites.site(), (v, a, b) -> Double.NaN, remark -> {});
        stock.book(new FishIn(day(0), "spring", "nile-tilapia", count, meanG));
        return stock.status();
    }

    @Test
    @DisplayName("100 g of grown fish eat 1 to 2 g (FAO 589 section 7.2, worked example read in public)")
    void rationAgrees() {
        FeedPlan plan = FeedPlan.of(Sites.site(), stock(1, 100), 28, null, null);
        assertEquals(1, plan.lowG(), 1e-9);
        assertEquals(2, plan.highG(), 1e-9);
        assertEquals(new Ration(4, 5), Ration.ofMass(0.9));
        assertEquals(new Ration(2, 3), Ration.ofMass(30));
    }

    @Test
    @DisplayName("tilapia do not feed below 17 Cel and grow best at 27 to 30 (FAO 589 ch. 7, read in public)")
    void temperatureTakesFromTheRation() {
        assertEquals(1, Ration.temperatureShare(TILAPIA, 28), 0);
        assertEquals(0.5, Ration.temperatureShare(TILAPIA, 22), 1e-9);
        assertEquals(0, Ration.temperatureShare(TILAPIA, 16.9), 0);
        assertEquals(0.5, Ration.temperatureShare(TILAPIA, 33), 1e-9);
        assertEquals(0, Ration.temperatureShare(TILAPIA, 36.5), 0);
    }

    @Test
    void poorAppetiteHalvesTheRationAndThePlanSaysSo() {
        FeedPlan plan = FeedPlan.of(Sites.site(), stock(60, 200), 28, Appetite.POOR, null);
        assertEquals(60, plan.lowG(), 1e-9);
        assertEquals(
                "60 to 120 g of feed a day for the fish (50 % of the ration: they last ate poorly); nothing is planted on record.",
                plan.words());
    }

    @Test
    @DisplayName("at 22 Cel half of the ration, as above; where the temperature is not known all of it")
    void thePlanFollowsTheTemperature() {
        FeedPlan cool = FeedPlan.of(Sites.site(), stock(1, 100), 22, null, null);
        assertEquals(0.5, cool.lowG(), 1e-9);
        assertEquals(1, cool.highG(), 1e-9);
        assertEquals(0.75, cool.middleG(), 1e-9);
        assertEquals(
                1.5,
                FeedPlan.of(Sites.site(), stock(1, 100), Double.NaN, null, null).middleG(),
                1e-9);
    }

    @Test
    void fryAreFedToo() {
        FeedPlan fry = FeedPlan.of(Sites.site(), stock(1000, 0.5), 28, null, null);
        assertEquals(500 * 0.045, fry.middleG(), 1e-9, "4 to 5 % of 500 g");
    }

    @Test
    void thePlanIsPutAgainstWhatTheBedsCanUse() {
        FeedRate.Range beds = FeedRate.byBedArea(2, FeedRate.Crop.LEAFY);
        assertTrue(FeedPlan.of(Sites.site(), stock(60, 200), 28, null, beds)
                .words()
                .endsWith(
                        "by their area the beds can use 80 to 100 g: more than the plants can use, nitrate may rise."));
        assertTrue(FeedPlan.of(Sites.site(), stock(30, 200), 28, null, beds)
                .words()
                .endsWith("by their area the beds can use 80 to 100 g: they match."));
        assertTrue(FeedPlan.of(Sites.site(), stock(10, 200), 28, null, beds)
                .words()
                .endsWith("less than the plants can use, they may run short."));
        assertEquals(
                "No fish on record.",
                FeedPlan.of(Sites.site(), List.of(), 28, null, beds).words());
    }

    @Test
    @DisplayName(
            "2000 g of feed with 32 % protein bring 58.9 g of TAN (Timmons and Ebeling 2013, worked example read as quoted)")
    void loadAgrees() {
        FeedLoad load = FeedLoad.of(2000, 32);
        assertEquals(58.9, load.tanGPerDay(), 0.05);
        assertEquals(2500, load.oxygenHighGPerDay(), 1e-9);
        assertEquals(58.88 * 7.1455, load.alkalinityGPerDay(), 0.5);
        PublishedTable.Row factor =
                PublishedTable.read("feed_nitrogen", 32).rows().get(5);
        assertEquals(1000 + 58.88 * factor.number("value"), load.oxygenLowGPerDay(), 0.1);
    }

    @Test
    @DisplayName("oxygen after a change of feed is the steady state of two-film gas transfer (Hipparchus root)")
    void oxygenAfterIsTheSteadyState() {
        double saturation = 8.6;
        double now = 6.9;
        double transfer = 90 / (saturation - now);
        double root = new BrentSolver(1e-12).solve(100, c -> transfer * (saturation - c) - 150, 0, saturation);
        assertEquals(root, FeedOutlook.oxygenAfterMgL(now, saturation, 90, 150), 1e-9);
        assertTrue(Double.isNaN(FeedOutlook.oxygenAfterMgL(now, saturation, 0, 150)));
        assertTrue(Double.isNaN(FeedOutlook.oxygenAfterMgL(9, saturation, 90, 150)), "supersaturated");
    }

    @Test
    void warnsBeforeOxygenBacteriaAndAlkalinityFallBehind() {
        WaterNow water = new WaterNow(5.4, 8.4, 24, 6.8, 0.2, 0.1, 62, 2460);
        ProvenLoad proven = new ProvenLoad(2.0, 24, day(0));
        List<FeedWarning> warnings =
                FeedOutlook.of(FeedLoad.of(80, 32), FeedLoad.of(160, 32), List.of(TILAPIA), water, proven);
        assertEquals(
                List.of(
                        "At 160 g of feed a day oxygen would fall to 2.4 mg/L; the fish need 4.0.",
                        "The plan brings 4.7 g of ammonia nitrogen a day; the bacteria have been shown to carry 2.0.",
                        "Alkalinity falls under 40 mg/L in 2 d."),
                warnings.stream().map(FeedWarning::what).toList());
        assertEquals(
                List.of(),
                FeedOutlook.of(
                        FeedLoad.of(80, 32),
                        FeedLoad.of(85, 32),
                        List.of(TILAPIA),
                        new WaterNow(7.2, 8.4, 24, 6.8, 0.2, 0.1, 120, 2460),
                        new ProvenLoad(2.3, 24, day(0))));
    }

    @Test
    void whatIsUnderItsLeastAlreadyIsSaidSo() {
        WaterNow water = new WaterNow(4.1, 8.4, 24, 6.8, 0.2, 0.1, 40, 2460);
        List<String> warnings =
                FeedOutlook.of(FeedLoad.of(80, 32), FeedLoad.of(200, 32), List.of(TILAPIA), water, null).stream()
                        .map(FeedWarning::what)
                        .toList();
        assertEquals(
                List.of(
                        "At 200 g of feed a day oxygen would fall to 0.0 mg/L; the fish need 4.0.",
                        "Alkalinity is 40 mg/L, under 40: the pH can fall fast."),
                warnings);
    }

    @Test
    void highTestsSayThatTheBacteriaAreBehind() {
        WaterNow water = new WaterNow(7, 8.4, 24, 6.8, 2.5, 1.4, 120, 2460);
        List<FeedWarning> warnings = FeedOutlook.of(null, FeedLoad.of(80, 32), List.of(TILAPIA), water, null);
        assertEquals(
                List.of(
                        "Ammonia is 2.50 mg/L, above 2.00: the bacteria are behind.",
                        "Nitrite is 1.40 mg/L, above 1.00: the bacteria are behind."),
                warnings.stream().map(FeedWarning::what).toList());
    }

    @Test
    void whatIsNotKnownGivesNoWarningAndNoAllClear() {
        WaterNow nothing =
                new WaterNow(Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, 2460);
        assertEquals(
                List.of(), FeedOutlook.of(FeedLoad.of(80, 32), FeedLoad.of(160, 32), List.of(TILAPIA), nothing, null));
    }
}
