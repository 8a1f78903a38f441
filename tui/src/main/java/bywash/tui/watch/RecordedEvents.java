package bywash.tui.watch;

import bywash.ingest.journal.JournalReader;
import bywash.ingest.recording.RecordedLine;
import bywash.tui.view.EventLog.Event;
import bywash.tui.view.PastEvents;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What happened before this watch began, out of the journal. A connection a question, so that it may come from any thread;
 * the last answers are kept, as a screen asks four times a second and the past changes no more.
 */
final class RecordedEvents implements PastEvents {
    private static final Logger LOG = LoggerFactory.getLogger(RecordedEvents.class);
    private static final int KEPT = 4;

    private record Answer(Instant from, Instant to, List<Event> events) {
        boolean covers(Instant otherFrom, Instant otherTo) {
            return !otherFrom.isBefore(from) && !otherTo.isAfter(to);
        }
    }

    private final Path state;
    private final String site;
    private final Deque<Answer> answers = new ArrayDeque<>();
    private String fault = "";

    /** @param state folder of the journal */
    RecordedEvents(Path state, String site) {
        this.state = state;
        this.site = site;
    }

    @Override
    public synchronized List<Event> between(Instant from, Instant to) {
        Instant begin = from.isAfter(Instant.EPOCH) ? from.truncatedTo(ChronoUnit.DAYS) : Instant.EPOCH;
        Answer answer =
                answers.stream().filter(a -> a.covers(begin, to)).findFirst().orElseGet(() -> ask(begin, to));
        return answer.events().stream()
                .filter(e -> !e.at().isBefore(from) && e.at().isBefore(to))
                .toList();
    }

    private Answer ask(Instant from, Instant to) {
        List<Event> events = new ArrayList<>();
        try (JournalReader journal = JournalReader.open(state, site)) {
            journal.transitions(from, to)
                    .forEach(line -> AlarmLines.read(line).ifPresent(t -> events.add(new Event.Alarm(t))));
            journal.entries(from, to).forEach(e -> events.add(new Event.Entry(e.entry())));
            for (RecordedLine line : journal.states(from, to)) {
                if (line instanceof RecordedLine.WatchStarted w) {
                    events.add(new Event.Unwatched(w.time(), w.unwatchedSince()));
                }
            }
            fault = "";
        } catch (IOException e) {
            String words = String.valueOf(e.getMessage());
            if (!words.equals(fault)) {
                LOG.warn("no past events: {}", words);
            }
            fault = words;
            return new Answer(from, to, List.of());
        }
        events.sort(Comparator.comparing(Event::at));
        Answer answer = new Answer(from, to, List.copyOf(events));
        answers.addFirst(answer);
        if (answers.size() > KEPT) {
            answers.removeLast();
        }
        return answer;
    }

    @Override
    public synchronized String beginning() {
        return fault.isEmpty() ? "The journal begins here." : "What was before cannot be shown: " + fault;
    }
}
