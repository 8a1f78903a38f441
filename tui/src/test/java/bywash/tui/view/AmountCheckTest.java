package bywash.tui.view;

import static bywash.tui.view.Glasshouse.SITE;
import static bywash.tui.view.Glasshouse.entry;
import static org.junit.jupiter.api.Assertions.assertEquals;

import bywash.ingest.recording.BrokenEntry;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What no form offers is refused from the shell too, with what would be right. */
final class AmountCheckTest {
    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            'batch-fill','vessel':'fish-tank','volume':'9 L' | vessel "fish-tank" is no reserve; it has reserve
            'batch-fill','vessel':'reserve','volume':'901 L' | reserve holds at most 900 L, not 901 L; give a volume that fits
            'batch-treat','vessel':'sump','treatment':'aerated' | vessel "sump" is no reserve; it has reserve
            'top-up-start','vessel':'sump','source':'reserve','volume':'5000 L','duration':'9 min' | sump holds at most 900 L, not 5000 L; give a volume that fits
            'top-up-start','vessel':'fish-tank','source':'reserve','volume':'1000 L','duration':'9 min' | reserve holds at most 900 L, not 1000 L; give a volume that fits
            'top-up-start','vessel':'sump','source':'mains','volume':'9 L','duration':'25 h' | a top-up runs for at most 24 h; give its duration
            'shelve','alarm':'overflow-near','subject':'sump','duration':'900 h' | an alarm is shelved for at most 24 h; out-of-service takes one out until return-to-service
            'test','vessel':'fish-tank','quantity':'total-chlorine','value':'1000 mg/L' | total chlorine of 1000.00 mg/L cannot be; give 0.00 to 20.00 mg/L
            'dose','vessel':'reserve','reagent':'ascorbic-acid','amount':'9 g' | vessel "reserve" is a reserve; what goes into one is a batch-treat
            'dose','vessel':'sump','reagent':'ascorbic-acid','amount':'21 kg' | amount of dose is more than 20 kg; give what was dosed
            """)
    void whatCannotBeIsRefused(String fields, String words) throws BrokenEntry {
        assertEquals(words, EntryCheck.problem(SITE, List.of(), entry(fields)));
    }

    @ParameterizedTest
    @CsvSource({"bleach", "Ascorbic-Acid", "salt"})
    void onlyWhatAFormOffersIsDosed(String reagent) throws BrokenEntry {
        String words = EntryCheck.problem(
                SITE, List.of(), entry("'dose','vessel':'sump','amount':'9 g','reagent':'" + reagent + "'"));
        String all = "reagent \"" + reagent + "\" is not known; give ";
        assertEquals(all, words.substring(0, all.length()));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            'batch-fill','vessel':'reserve','volume':'900 L'
            'batch-treat','vessel':'reserve','treatment':'thiosulfate','amount':'9 g'
            'top-up-start','vessel':'sump','source':'mains','volume':'900 L','duration':'24 h'
            'shelve','alarm':'ph-low','subject':'fish-tank','duration':'24 h'
            'dose','vessel':'sump','reagent':'ascorbic-acid','amount':'20 kg'
            """)
    void whatCanBeIsTaken(String fields) throws BrokenEntry {
        assertEquals("", AmountCheck.problem(SITE, entry(fields)));
    }
}
