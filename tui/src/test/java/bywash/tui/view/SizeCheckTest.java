package bywash.tui.view;

import static bywash.tui.view.Glasshouse.entry;
import static org.junit.jupiter.api.Assertions.assertEquals;

import bywash.ingest.recording.BrokenEntry;
import bywash.rules.event.OperatorEntry.Plant;
import bywash.rules.site.Site;
import bywash.rules.site.Units;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A slip of the hand or of a unit is refused at the form and at the shell, with what can be at this site. */
final class SizeCheckTest {
    private static final Site SITE = site();

    private static Site site() {
        try {
            return bywash.tui.watch.Larkfield.site().site();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            'feed','mass':'100 kg' | 100.0 kg of feed at once is more than can be, at most 7.5 kg for tanks of 1500 L; give what was fed
            'fish-in','cohort':'spring','species':'nile-tilapia','count':10000,'mean-mass':'200 g','vessel':'fish-tank' | 2000.0 kg of fish is more than can live in fish-tank of 1500 L, at most 750.0 kg; give count and mass as they are
            'plant','vessel':'bed-1','crop':'lettuce','area':'50 m2' | 50.00 m2 planted is more than bed-1 can have: with 180 L of media or water at most 1.80 m2; give the area in that bed
            'crop-harvest','vessel':'bed-1','crop':'lettuce','mass':'200 kg' | 200.0 kg harvested is more than bed-1 can bear, at most 90.0 kg; give what was weighed
            'crop-harvest','vessel':'bed-1','crop':'lettuce','mass':'2 kg','cleared':'9 m2' | 9.00 m2 cleared is more than bed-1 can have: with 180 L of media or water at most 1.80 m2; give the area in that bed
            'batch-treat','vessel':'reserve','treatment':'thiosulfate','amount':'4000 g' | 4000 g of thiosulfate is more than anybody puts into the 1045 L of reserve, at most 2091 g; give what was put in
            'dose','vessel':'sump','reagent':'ascorbic-acid','amount':'19 kg' | 19000 g of ascorbic-acid is more than anybody puts into the 2444 L of the system, at most 4888 g; give what was put in
            """)
    void whatCannotBeHereIsRefused(String fields, String words) throws BrokenEntry {
        assertEquals(words, EntryCheck.problem(SITE, List.of(), entry(fields)));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            'feed','mass':'5 kg'
            'fish-in','cohort':'spring','species':'nile-tilapia','count':400,'mean-mass':'200 g','vessel':'fish-tank'
            'plant','vessel':'bed-1','crop':'lettuce','area':'0.6 m2'
            'crop-harvest','vessel':'bed-1','crop':'lettuce','mass':'12 kg','cleared':'0.6 m2'
            'batch-treat','vessel':'reserve','treatment':'thiosulfate','amount':'60 g'
            'batch-treat','vessel':'reserve','treatment':'aerated'
            'dose','vessel':'sump','reagent':'ascorbic-acid','amount':'400 g'
            """)
    void whatCanBeIsTaken(String fields) throws BrokenEntry {
        assertEquals("", EntryCheck.problem(SITE, List.of(), entry(fields)));
    }

    @Test
    void aBedThatWouldBeFlatIsAskedAbout() throws BrokenEntry {
        assertEquals(
                "Over 1.50 m2 the media of bed-1 would be 120 mm deep; is the area right?",
                SizeCheck.doubt(SITE, (Plant) entry("'plant','vessel':'bed-1','crop':'lettuce','area':'1.5 m2'")));
        assertEquals(
                "", SizeCheck.doubt(SITE, (Plant) entry("'plant','vessel':'bed-1','crop':'lettuce','area':'0.6 m2'")));
        assertEquals(Units.METRIC, SITE.units());
    }
}
