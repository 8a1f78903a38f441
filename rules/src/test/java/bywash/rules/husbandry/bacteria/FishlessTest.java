package bywash.rules.husbandry.bacteria;

import static bywash.rules.husbandry.Sites.day;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.event.OperatorEntry.Dose;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.husbandry.bacteria.CheckItem.Answer;
import bywash.rules.husbandry.bacteria.PresentWater.Seen;
import bywash.rules.husbandry.stock.SpeciesTable;
import bywash.rules.published.PublishedTable;
import bywash.rules.site.Species;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

class FishlessTest {
    private static final Species TILAPIA = SpeciesTable.builtIn().get(0);

    private static FishlessPlan.Known known(double tan, double nitrite, double ph) {
        return new FishlessPlan.Known(tan, day(9.9), nitrite, day(9.9), ph, 22);
    }

    @Test
    @DisplayName(
            "1 L of 10 mg/L N takes 38.19 mg of NH4Cl (Standard Methods 4500-NH3: 3.819 g/L = 1 g/L N [from memory])")
    void ammoniumChlorideAgrees() {
        assertEquals(3.819, AmmoniaSource.AMMONIUM_CHLORIDE.productG(1, 100), 0.001);
    }

    @Test
    @DisplayName("NH3 per N is 1.21589 (table computed with Python 3.11); protein per N 6.25 (conventional)")
    void otherSourcesAgree() {
        PublishedTable.Row row = PublishedTable.read("feed_nitrogen", 32).rows().get(13);
        row.nearShare("value", AmmoniaSource.AMMONIA_SOLUTION.productG(1, 100), 1e-3);
        assertEquals(6.25, AmmoniaSource.PELLETS.productG(1, 100), 1e-9);
        assertEquals(6.25 / 0.32, AmmoniaSource.PELLETS.productG(1, 32), 1e-9);
    }

    @Test
    void dosesToTwoMilligramsFromWhatTheTestFound() {
        FishlessPlan plan = FishlessPlan.of(2460, known(0.4, 0.2, 6.8), day(10));
        assertEquals(1.6 * 2.46, plan.nitrogenG(), 1e-9);
        assertEquals("Add 3.94 g of nitrogen: 2460 L from 0.4 to 2.0 mg/L.", plan.words());
        assertEquals(
                List.of(
                        "15.0 g of ammonium chloride, pure",
                        "50.4 g of ammonia solution of 9.5 %",
                        "76.9 g of pellets of 32 % protein, over a week"),
                plan.products(32, 9.5));
        assertEquals(List.of(), plan.testsDue());
    }

    @Test
    void holdsBackWhileAmmoniaOrNitriteIsHighOrTheTestIsOld() {
        assertEquals(0, FishlessPlan.of(2460, known(1.4, 0.2, 6.8), day(10)).nitrogenG(), 0);
        assertEquals(
                "Nitrite is 6.0 mg/L, above 5: add nothing until it falls.",
                FishlessPlan.of(2460, known(0.2, 6, 6.8), day(10)).words());
        FishlessPlan blind = FishlessPlan.of(2460, known(0.2, 0.2, Double.NaN), day(13));
        assertEquals("Test ammonia first: nothing is dosed blind.", blind.words());
        assertEquals(List.of("total-ammonia", "nitrite", "ph"), blind.testsDue());
    }

    @Test
    @DisplayName("at high pH less is dosed, so that free ammonia stays at 0.1 mg/L (Anthonisen 1976 [from memory])")
    void freeAmmoniaIsKeptUnderTheHold() {
        FishlessPlan plan = FishlessPlan.of(2460, known(0.0, 0.2, 8.3), day(10));
        assertEquals(0.1, plan.freeMgL(), 1e-9);
        assertTrue(plan.toMgL() < 2, plan.words());
    }

    @Test
    void cautionsStandWithEachSource() {
        for (AmmoniaSource source : AmmoniaSource.values()) {
            assertFalse(source.cautions().isEmpty());
        }
        assertTrue(AmmoniaSource.AMMONIA_SOLUTION.cautions().contains("Never near bleach"));
    }

    @Test
    @DisplayName("nitrification changes 4.275 % a degree near 20 Cel (Zhu and Chen 2002, abstract)")
    void aLoadIsWorthLessInColdWater() {
        ProvenLoad load = new ProvenLoad(4, 20, day(0));
        assertEquals(4 * 1.04275, load.at(21), 0.005);
        assertEquals(2.6, load.at(10), 0.1);
        assertEquals(4, load.at(Double.NaN), 0);
    }

    @Test
    void lowTestsProveALoadAndAHighOneTakesItBack() {
        BacteriaBook book = new BacteriaBook();
        book.tested(new WaterTest(day(1), "fish-tank", "total-ammonia", 0.2), 3, 22);
        assertNull(book.proven(day(1)), "half a pair proves nothing");
        book.tested(new WaterTest(day(2), "fish-tank", "nitrite", 0.1), 3, 22);
        assertEquals(3, Objects.requireNonNull(book.proven(day(2))).tanGPerDay(), 0);
        book.tested(new WaterTest(day(9), "fish-tank", "nitrite", 2), 3, 22);
        assertEquals(2.4, Objects.requireNonNull(book.proven(day(9))).tanGPerDay(), 1e-9);
        assertNull(book.proven(day(80)), "two months later it says nothing");
    }

    private static List<CheckItem> list(Map<String, Seen> probes, Map<String, Seen> tests, double residual) {
        return FishReturn.of(TILAPIA, new PresentWater(probes::get, tests::get, residual), day(10));
    }

    @Test
    void theChecklistAnswersFromPresentReadings() {
        Map<String, Seen> probes = new HashMap<>();
        probes.put("temperature", new Seen(24.2, day(9.999), ""));
        probes.put("ph", new Seen(6.8, day(9.999), ""));
        probes.put("dissolved-oxygen", new Seen(7.1, day(9.999), ""));
        Map<String, Seen> tests = new HashMap<>();
        tests.put("total-ammonia", new Seen(0.2, day(9.8), ""));
        tests.put("nitrite", new Seen(0.1, day(9.8), ""));
        tests.put("total-chlorine", new Seen(0, day(9.8), ""));
        List<CheckItem> good = list(probes, tests, 2);
        assertTrue(FishReturn.ready(good), good.toString());
        assertEquals(10, good.size());
        assertEquals("24.20 C, 86 s old", good.get(0).present());
        tests.put("nitrite", new Seen(1.2, day(9.8), ""));
        assertEquals(Answer.NO, list(probes, tests, 2).get(4).answer());
        assertFalse(FishReturn.ready(list(probes, tests, 2)));
    }

    @Test
    void whatIsOldDoubtedOrMissingIsNotKnownAndNeverReady() {
        Map<String, Seen> probes = new HashMap<>();
        probes.put("temperature", new Seen(24.2, day(9), ""));
        probes.put("ph", new Seen(6.8, day(9.999), "calibration overdue by 3 d"));
        List<CheckItem> items = list(probes, new HashMap<>(), 0);
        for (int i = 0; i < 7; i++) {
            assertEquals(Answer.NOT_KNOWN, items.get(i).answer(), items.get(i).toString());
        }
        assertFalse(FishReturn.ready(items));
        assertEquals("6.80, 86 s old, suspect", items.get(1).present());
    }

    @Test
    void aResidualThatMayBeThereKeepsFishOut() {
        Map<String, Seen> tests = new HashMap<>();
        tests.put("total-chlorine", new Seen(0, day(9.8), ""));
        assertEquals(Answer.NO, list(new HashMap<>(), tests, 14).get(6).answer());
        assertEquals(Answer.YES, list(new HashMap<>(), tests, 3).get(6).answer());
    }

    @Test
    @DisplayName("ammonium chloride is 26.19 % nitrogen by mass: 14.007 / 53.49 (IUPAC weights)")
    void ammoniaDosedIsNitrogenThatTheBacteriaWereShownToCarry() {
        AmmoniaBook book = new AmmoniaBook(java.time.ZoneOffset.UTC);
        for (int d = 0; d < 7; d++) {
            book.book(new Dose(day(d), "sump", "ammonium-chloride", 18));
        }
        book.book(new Dose(day(6), "sump", "potassium-bicarbonate", 150));
        assertEquals(18 * 14.007 / 53.492, book.recentGPerDay(day(7), 7), 1e-3);
        assertEquals(0, book.recentGPerDay(day(20), 7), 0);
        BacteriaBook bacteria = new BacteriaBook();
        bacteria.tested(new WaterTest(day(7), "fish-tank", "total-ammonia", 0.1), book.recentGPerDay(day(7), 7), 22);
        bacteria.tested(new WaterTest(day(7), "fish-tank", "nitrite", 0.1), book.recentGPerDay(day(7), 7), 22);
        ProvenLoad proven = bacteria.proven(day(8));
        assertNotNull(proven);
        assertEquals(4.71, proven.tanGPerDay(), 0.01);
    }
}
