package bywash.rules.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmMemory;
import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.alarm.Priority;
import bywash.rules.chlorine.Litres;
import bywash.rules.chlorine.ResidualEstimate;
import bywash.rules.husbandry.Sites;
import bywash.rules.site.SystemVolume;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class IncidentBookTest {
    private static final Instant T = Instant.parse("2026-05-04T06:00:00Z");
    private static final String ID = "sump-20260504T060000Z";

    private final IncidentBook book = new IncidentBook(Sites.site());

    private static AlarmTransition line(int minute, AlarmState state, Map<String, Object> values) {
        return new AlarmTransition(
                T.plusSeconds(60L * minute),
                AlarmKind.UNPLANNED_INFLOW,
                "sump",
                state,
                Priority.CRITICAL,
                ID,
                "at minute " + minute,
                values);
    }

    private static AlarmTransition line(int minute, AlarmState state) {
        return line(minute, state, Map.of());
    }

    private List<SheetEvent> events(int minute) {
        Instant at = T.plusSeconds(60L * minute);
        ResidualEstimate none = new ResidualEstimate(0, 0, 0, 0, null, List.of());
        book.tick(new Readings(at, none, SystemVolume.of(Sites.site()), List.of(), List.of(), List.of()));
        return book.sheets().get(0).events();
    }

    @Test
    void anAlarmThatCallsAgainAndAgainIsToldOnceWithHowOften() {
        book.transition(line(0, AlarmState.UNACKNOWLEDGED));
        for (int call = 2; call <= 400; call++) {
            book.transition(
                    line(5 * call, AlarmState.UNACKNOWLEDGED, Map.of(AlarmTransition.ANNOUNCEMENT, (double) call)));
        }
        book.transition(line(2001, AlarmState.ACKNOWLEDGED));
        List<SheetEvent> events = events(2002);
        assertEquals(3, events.size(), events::toString);
        assertEquals(T.plusSeconds(600), events.get(1).at(), "when it first called again");
        assertTrue(
                events.get(1).words().contains("called again 399 times"),
                events.get(1).words());
        assertTrue(
                events.get(1).words().endsWith("at minute 2000"),
                "what it said last: " + events.get(1).words());
        assertTrue(events.get(2).words().contains("acknowledged"), events.get(2).words());
    }

    @Test
    void whatIsRaisedAnewIsNoRepeatedCall() {
        book.transition(line(0, AlarmState.UNACKNOWLEDGED));
        book.transition(line(5, AlarmState.UNACKNOWLEDGED, Map.of(AlarmTransition.ANNOUNCEMENT, 2.0)));
        book.transition(line(6, AlarmState.RETURNED_UNACKNOWLEDGED));
        book.transition(line(9, AlarmState.UNACKNOWLEDGED));
        book.transition(line(14, AlarmState.UNACKNOWLEDGED, Map.of(AlarmTransition.ANNOUNCEMENT, 2.0)));
        assertEquals(5, events(15).size());
    }

    @Test
    void whatIsLeftOfADamagedRecordStands() {
        book.told(line(30, AlarmState.ACKNOWLEDGED));
        book.complete(List.of(), List.of(), T);
        assertTrue(book.has(ID) && book.standing());
        assertTrue(events(31).get(0).words().contains("first lines of this incident are lost"));
        book.told(line(40, AlarmState.NORMAL));
        assertFalse(book.standing());
        assertEquals(T.plusSeconds(2400), book.summaries().get(0).ended());
        assertEquals(1, book.summaries().get(0).alarms().size());
    }

    @Test
    void anIncidentWhoseEndAloneIsLeftIsOver() {
        book.told(line(40, AlarmState.NORMAL));
        assertTrue(book.has(ID));
        assertFalse(book.standing());
    }

    @Test
    void anAlarmThatStandsBringsItsIncidentBack() {
        AlarmMemory memory = new AlarmMemory(
                AlarmKind.UNPLANNED_INFLOW, "sump", AlarmState.UNACKNOWLEDGED, ID, T, T, 1, null, "runs in", "slope");
        book.complete(List.of(), List.of(memory), T.plusSeconds(3600));
        assertTrue(book.has(ID) && book.standing());
        assertEquals(T, book.summaries().get(0).began());
        book.transition(line(70, AlarmState.NORMAL));
        assertFalse(book.standing());
    }

    @Test
    void whatReadingsHadAddedBringsAnIncidentBackToo() {
        WaterRun run = new WaterRun("sump", T, true, new Litres(50, 60, 70), "outside", false);
        IncidentFigures figures = new IncidentFigures(ID, null, List.of(run), null);
        Instant seen = T.plusSeconds(7200);
        book.complete(List.of(figures), List.of(), seen);
        book.restore(List.of(figures), new IncidentBook(Sites.site()), seen);
        IncidentSummary summary = book.summaries().get(0);
        assertEquals(T, summary.began());
        assertEquals(seen, summary.ended(), "no alarm of it stands");
        assertEquals(60, summary.unplannedL(), 1e-9);
    }

    @Test
    void aWholeRecordIsToldAsItWas() {
        IncidentBook straight = new IncidentBook(Sites.site());
        List<AlarmTransition> lines = List.of(
                line(0, AlarmState.UNACKNOWLEDGED), line(3, AlarmState.ACKNOWLEDGED), line(9, AlarmState.NORMAL));
        lines.forEach(straight::transition);
        lines.forEach(book::told);
        AlarmMemory over =
                new AlarmMemory(AlarmKind.UNPLANNED_INFLOW, "sump", AlarmState.NORMAL, ID, T, T, 1, null, "", "");
        book.complete(List.of(), List.of(over), T.plusSeconds(3600));
        assertEquals(straight.summaries(), book.summaries());
    }
}
