package bywash.tui.view;

import static bywash.tui.view.Glasshouse.SITE;
import static bywash.tui.view.Glasshouse.entry;
import static org.junit.jupiter.api.Assertions.assertEquals;

import bywash.ingest.recording.BrokenEntry;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmView;
import bywash.rules.alarm.Priority;
import bywash.rules.event.OperatorEntry;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** An entry that names what the site does not have is refused with what it has, the likeliest first. */
final class NameCheckTest {
    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            'top-up-end','vessel':'pond' | vessel "pond" is not in the site file; it has sump, reserve, fish-tank
            'batch-fill','vessel':'reserv','volume':'9 L' | vessel "reserv" is not in the site file; it has reserve, sump, fish-tank
            'top-up-start','vessel':'sump','source':'resrve','volume':'9 L','duration':'9 min' | source "resrve" is no reserve of the site file, nor the mains; it has reserve, mains
            'top-up-start','vessel':'sump','source':'sump','volume':'9 L','duration':'9 min' | source "sump" is no reserve of the site file, nor the mains; it has reserve, mains
            'probe-care','probe':'fishdo','care':'cleaned' | probe "fishdo" is not in the site file; it has fish-do, sump-level
            'maintenance-start','subject':'sump-leve','duration':'9 min' | subject "sump-leve" is no probe or vessel of the site file; it has sump-level, fish-do, sump, reserve, fish-tank
            'maintenance-end','subject':'pump' | subject "pump" is no probe or vessel of the site file; it has sump, sump-level, fish-do, reserve, fish-tank
            'out-of-service','alarm':'low-oxygen','subject':'fish' | subject "fish" is nothing that low-oxygen is about; here it is fish-tank
            'out-of-service','alarm':'low-oxygen','subject':'sump' | subject "sump" is nothing that low-oxygen is about; here it is fish-tank
            'out-of-service','alarm':'orp-low','subject':'fish-tank' | subject "fish-tank" is nothing that orp-low is about; the site has no probe for it
            'return-to-service','alarm':'feed-lost','subject':'sump' | subject "sump" is nothing that feed-lost is about; here it is feed
            'shelve','alarm':'chlorine-risk','subject':'sump','duration':'9 min' | subject "sump" is nothing that chlorine-risk is about; here it is system
            'unshelve','alarm':'probe-silent','subject':'fish-tank' | subject "fish-tank" is nothing that probe-silent is about; here it is sump-level, fish-do
            'acknowledge','subject':'pond' | subject "pond" is nothing that an alarm is about; here it is sump, reserve, system, fish-tank, feed, sump-level, fish-do
            """)
    void whatIsNotThereIsRefusedWithWhatIs(String fields, String words) throws BrokenEntry {
        assertEquals(words, NameCheck.problem(SITE, List.of(), entry(fields)));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            'top-up-start','vessel':'sump','source':'mains','volume':'9 L','duration':'9 min'
            'fish-move','cohort':'spring','count':1,'vessel':'away'
            'fish-in','cohort':'spring','species':'nile-tilapia','count':40,'mean-mass':'120 g'
            'maintenance-start','subject':'sump','duration':'9 min'
            'out-of-service','alarm':'unplanned-inflow','subject':'sump'
            'out-of-service','alarm':'nitrite-high','subject':'reserve'
            'shelve','alarm':'pump-stopped','subject':'sump','duration':'9 min'
            'acknowledge'
            'acknowledge','alarm':'low-oxygen'
            'acknowledge','subject':'system'
            'note','text':'no name in it'
            """)
    void whatIsThereIsTaken(String fields) throws BrokenEntry {
        assertEquals("", NameCheck.problem(SITE, List.of(), entry(fields)));
    }

    @Test
    void anAlarmThatStandsCanBeNamedEvenWhereTheSiteLostItsVessel() throws BrokenEntry {
        AlarmView old = new AlarmView(
                AlarmKind.LOW_OXYGEN,
                "old-tank",
                AlarmState.OUT_OF_SERVICE,
                Priority.CRITICAL,
                "",
                Instant.EPOCH,
                "",
                "",
                "",
                "",
                null,
                Map.of(),
                null);
        OperatorEntry back = entry("'return-to-service','alarm':'low-oxygen','subject':'old-tank'");
        assertEquals("", NameCheck.problem(SITE, List.of(old), back));
        assertEquals(
                "subject \"old-tank\" is nothing that low-oxygen is about; here it is fish-tank",
                NameCheck.problem(SITE, List.of(), back));
    }

    @Test
    void anAlarmThatIsNoneIsRefusedWithTheLikeliestFirst() throws BrokenEntry {
        String words = NameCheck.problem(
                SITE, List.of(), entry("'shelve','alarm':'low-oxigen','subject':'fish-tank','duration':'9 min'"));
        assertEquals(
                "alarm \"low-oxigen\" is not known; there are low-oxygen, unplanned-inflow,",
                words.substring(0, words.indexOf(',', words.indexOf("unplanned-inflow")) + 1));
    }
}
