package bywash.tui.view;

import static org.junit.jupiter.api.Assertions.assertEquals;

import bywash.ingest.recording.BrokenEntry;
import bywash.ingest.recording.EntryJson;
import bywash.rules.event.EntryKind;
import bywash.rules.event.OperatorEntry;
import bywash.rules.site.Units;
import java.util.EnumSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What the grower reads of each kind of entry, as it is written in a recording. */
final class EntryWordsTest {
    /** Entry, then its words. */
    private static final String[][] ALL = {
        {
            "'top-up-start','vessel':'sump','source':'reserve','volume':'160 L','duration':'40 min'",
            "top-up of 160 L into sump from reserve, 40 min"
        },
        {"'top-up-end','vessel':'sump'", "top-up into sump ended"},
        {"'batch-fill','vessel':'reserve','volume':'800 L'", "reserve filled with 800 L"},
        {
            "'batch-treat','vessel':'reserve','treatment':'thiosulfate','amount':'4 g','strength':'99 %'",
            "reserve treated: thiosulfate, 4.0 g of 99 %"
        },
        {"'batch-treat','vessel':'reserve','treatment':'standing'", "reserve treated: standing"},
        {
            "'test','vessel':'reserve','quantity':'total-chlorine','value':'0.35 mg/L'",
            "test of reserve: total chlorine 0.35 mg/L"
        },
        {"'stocking','stocking':'fishless','species':'rainbow-trout'", "stocking is now fishless, rainbow trout"},
        {"'feed','mass':'120 g','protein':'32 %','cohort':'spring'", "fed 120 g, protein 32 %, cohort spring"},
        {
            "'fish-in','cohort':'spring','species':'nile-tilapia','count':40,'mean-mass':'120 g'",
            "40 Nile tilapia in, cohort spring, 120 g each"
        },
        {"'harvest','cohort':'spring','count':2,'masses':['412 g','398 g']", "2 harvested from cohort spring, 0.8 kg"},
        {"'weigh','cohort':'spring','of':'sample','count':2,'total':'811 g'", "cohort spring: 2 weighed, 811 g"},
        {"'fish-loss','cohort':'spring','count':1,'cause':'jumped'", "cohort spring: 1 lost, jumped"},
        {"'fish-move','cohort':'spring','count':10,'vessel':'away'", "cohort spring: 10 moved to away"},
        {"'plant','vessel':'bed-1','crop':'lettuce','area':'0.6 m2'", "bed-1 planted: lettuce, 0.60 m2"},
        {"'crop-harvest','vessel':'bed-1','crop':'lettuce','mass':'1350 g'", "bed-1 harvested: lettuce, 1350 g"},
        {"'bed','vessel':'bed-2','state':'off'", "bed-2 taken out of the loop"},
        {
            "'dose','vessel':'sump','reagent':'potassium-bicarbonate','amount':'40 g'",
            "sump dosed: potassium bicarbonate, 40.0 g"
        },
        {
            "'ph-plan','target':'6.8','reagent':'potassium-carbonate','strength':'98 %'",
            "pH plan: to 6.8 by potassium carbonate"
        },
        {"'calibrate','probe':'fish-ph','detail':'buffers 4 and 7'", "fish-ph calibrated buffers 4 and 7"},
        {"'probe-care','probe':'fish-do','care':'new membrane'", "fish-do: new membrane"},
        {"'acknowledge'", "acknowledged all"},
        {"'acknowledge','alarm':'orp-low'", "acknowledged orp-low everywhere"},
        {"'shelve','alarm':'orp-low','subject':'fish-tank','duration':'60 min'", "shelved orp-low fish-tank for 60 min"
        },
        {"'unshelve','alarm':'orp-low','subject':'fish-tank'", "unshelved orp-low fish-tank"},
        {
            "'maintenance-start','subject':'sump-level','duration':'20 min','detail':'cleaning'",
            "sump-level in care for 20 min: cleaning"
        },
        {"'maintenance-end','subject':'sump-level'", "sump-level in use again"},
        {
            "'out-of-service','alarm':'orp-low','subject':'fish-tank','detail':'no spare'",
            "out of service: orp-low fish-tank, no spare"
        },
        {"'return-to-service','alarm':'orp-low','subject':'fish-tank'", "in service again: orp-low fish-tank"},
        {"'note','text':'all quiet'", "note: all quiet"},
        {
            "'step-done','incident':'20260504T073000Z-unplanned-inflow-sump','step':'stop-water','note':'both'",
            "step done: stop-water of 20260504T073000Z-unplanned-inflow-sump, both"
        },
        {
            "'withdraw','entry':'feed','entered':'2026-05-04T06:00:00.000Z','why':'twice'",
            "taken back: feed of 2026-05-04 06:00:00Z, twice"
        },
    };

    @Test
    void eachKindHasItsWords() throws BrokenEntry {
        Set<EntryKind> seen = EnumSet.noneOf(EntryKind.class);
        DisplayUnits metric = new DisplayUnits(Units.METRIC);
        for (String[] each : ALL) {
            String json = ("{'time':'2026-05-04T07:00:00.000Z','operator':" + each[0] + "}").replace('\'', '"');
            OperatorEntry entry = EntryJson.fromJson(json);
            assertEquals(each[1], EntryWords.of(entry, metric));
            seen.add(entry.kind());
        }
        assertEquals(EnumSet.allOf(EntryKind.class), seen);
    }
}
