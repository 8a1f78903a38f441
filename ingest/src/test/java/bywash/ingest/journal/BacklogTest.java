package bywash.ingest.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class BacklogTest {
    private static final Instant T0 = JournalTest.T0;

    private static Writing message(int second, String topic) {
        return new Writing.Message(JournalTest.message(second, topic, "1"));
    }

    private static Writing entry(int second) {
        return Writing.Entry.of(JournalTest.note(second, "note"));
    }

    private static Writing alarm(int second, String subject) {
        return new Writing.Transitions(
                List.of(new KeptTransition(T0.plusSeconds(second), "{}", "ph-low", subject, "state " + second)));
    }

    private static List<String> topics(Backlog backlog) {
        return backlog.first(Integer.MAX_VALUE).stream()
                .filter(w -> w.kind() == Writing.Kind.MESSAGE)
                .map(w -> {
                    RecordedLine.Message m = ((Writing.Message) w).message();
                    return m.topic() + (m.time().getEpochSecond() - T0.getEpochSecond());
                })
                .toList();
    }

    @Test
    void givesBackWhatItTookInOrder() {
        Backlog backlog = new Backlog(1000);
        List<Writing> all = List.of(message(1, "a"), entry(2), message(3, "a"), alarm(4, "tank"));
        all.forEach(backlog::add);
        assertEquals(all.subList(0, 3), backlog.first(3));
        backlog.written(3);
        assertEquals(all.subList(3, 4), backlog.first(9));
        assertEquals(1, backlog.waiting(Writing.Kind.ALARM));
        assertEquals(0, backlog.waiting(Writing.Kind.MESSAGE));
        backlog.written(1);
        assertTrue(backlog.isEmpty());
        assertEquals(0, backlog.lost());
    }

    /** An older state of chlorine is on the disk, and the next hour brings another: no entry goes for its sake. */
    @Test
    void givesUpWhatIsKeptOfChlorineBeforeAnyLine() {
        Backlog backlog = new Backlog(2000);
        Writing entry = entry(1);
        Writing alarm = alarm(2, "tank");
        backlog.add(entry);
        backlog.add(alarm);
        backlog.add(new Writing.Chlorine(T0, "x".repeat(3000)));
        assertTrue(backlog.full());
        backlog.shrink();
        assertFalse(backlog.full());
        assertEquals(List.of(entry, alarm), backlog.first(9));
        assertEquals(0, backlog.lost());
    }

    /** A full disk for weeks, with an incident that stands: its figures do not pile up. */
    @Test
    void keepsOnlyTheLatestFiguresOfAnIncident() {
        Backlog backlog = new Backlog(1_000_000);
        Writing other = new Writing.Figures("other", "{}");
        backlog.add(new Writing.Figures("one", "old"));
        backlog.add(other);
        backlog.add(alarm(4, "tank"));
        backlog.add(new Writing.Figures("one", "new"));
        assertEquals(List.of(other, alarm(4, "tank"), new Writing.Figures("one", "new")), backlog.first(9));
        assertEquals(0, backlog.lost());
    }

    @Test
    void thinsTheMessagesOfEachTopicAndTouchesNothingElse() {
        Backlog backlog = new Backlog(1300);
        backlog.add(message(0, "rare"));
        backlog.add(entry(0));
        for (int i = 1; i <= 10; i++) {
            backlog.add(message(i, "a"));
        }
        backlog.add(alarm(11, "tank"));
        assertTrue(backlog.full());
        backlog.shrink();
        assertFalse(backlog.full());
        assertEquals(List.of("rare0", "a1", "a3", "a5", "a7", "a9"), topics(backlog));
        assertEquals(5, backlog.lost(Writing.Kind.MESSAGE));
        assertEquals(1, backlog.waiting(Writing.Kind.ENTRY));
        assertEquals(1, backlog.waiting(Writing.Kind.ALARM));
    }

    /** Days of a full disk: what is left is thin where it is old, and still reaches back to the beginning. */
    @Test
    void staysWithinItsBoundHoweverLongItLasts() {
        Backlog backlog = new Backlog(20_000);
        for (int i = 0; i < 100_000; i++) {
            backlog.add(message(i, "a"));
            if (backlog.full()) {
                backlog.shrink();
            }
        }
        List<String> left = topics(backlog);
        assertTrue(left.size() < 200 && left.size() > 90, () -> left.size() + " left");
        assertEquals(100_000, left.size() + backlog.lost(Writing.Kind.MESSAGE));
        for (int i = 1; i < left.size(); i++) {
            int gap = Integer.parseInt(left.get(i).substring(1))
                    - Integer.parseInt(left.get(i - 1).substring(1));
            assertTrue(gap < 3000, () -> "a hole of " + gap + " s");
        }
        assertEquals(List.of("a0", "a99999"), List.of(left.get(0), left.get(left.size() - 1)));
    }

    @Test
    void givesUpMessagesThenAlarmLinesButTheLastOfEachAndEntriesLast() {
        Backlog backlog = new Backlog(1000);
        for (int i = 0; i < 40; i++) {
            backlog.add(message(i, "a"));
            backlog.add(alarm(i, i % 2 == 0 ? "tank" : "sump"));
        }
        backlog.add(entry(40));
        backlog.shrink();
        assertEquals(40, backlog.lost(Writing.Kind.MESSAGE), "no alarm line before all messages");
        assertFalse(backlog.full());
        List<Writing> left = backlog.first(Integer.MAX_VALUE);
        assertEquals(entry(40), left.get(left.size() - 1));
        assertTrue(left.containsAll(List.of(alarm(38, "tank"), alarm(39, "sump"))), left::toString);
        assertEquals(0, backlog.lost(Writing.Kind.ENTRY));
        assertEquals(40, backlog.lost(Writing.Kind.ALARM) + backlog.waiting(Writing.Kind.ALARM));
    }

    @Test
    void givesUpEntriesWhenNothingElseIsLeft() {
        Backlog backlog = new Backlog(1000);
        for (int i = 0; i < 40; i++) {
            backlog.add(entry(i));
        }
        backlog.shrink();
        assertFalse(backlog.full());
        assertTrue(backlog.lost(Writing.Kind.ENTRY) > 0);
        List<Writing> left = backlog.first(Integer.MAX_VALUE);
        assertEquals(entry(39), left.get(left.size() - 1), "the newest stay");
    }
}
