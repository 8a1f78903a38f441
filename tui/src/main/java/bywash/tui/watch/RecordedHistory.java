package bywash.tui.watch;

import bywash.ingest.journal.TrendBucket;
import bywash.ingest.journal.TrendHistory;
import bywash.tui.view.HistorySource;
import bywash.tui.view.TrendBuffer;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Past values out of memory for the last days, out of the journal for all that is longer. What the journal answered is given
 * again for half a minute, as a screen asks four times a second.
 */
final class RecordedHistory implements HistorySource {
    /** Kept in memory also after a restart, which plays three days again. */
    private static final Duration IN_MEMORY = Duration.ofDays(2);

    private static final long FRESH_NANOS = Duration.ofSeconds(30).toNanos();
    private static final int MOST = 64;

    private record Question(String probe, Duration span, int count) {}

    private record Answer(Instant to, long asked, List<Bucket> buckets) {}

    private final TrendBuffer memory;
    private final TrendHistory journal;
    private final Map<Question, Answer> answers = new LinkedHashMap<>(16, 0.75f, true);

    RecordedHistory(TrendBuffer memory, TrendHistory journal) {
        this.memory = memory;
        this.journal = journal;
    }

    @Override
    public List<Bucket> buckets(String probe, Instant from, Instant to, int count) {
        if (Duration.between(from, to).compareTo(IN_MEMORY) <= 0) {
            List<Bucket> recent = memory.buckets(probe, from, to, count);
            if (recent.stream().anyMatch(b -> b.count() > 0)) {
                return recent;
            }
        }
        Question question = new Question(probe, Duration.between(from, to), count);
        synchronized (answers) {
            Answer known = answers.get(question);
            boolean near =
                    known != null && Duration.between(known.to(), to).abs().compareTo(Duration.ofSeconds(30)) < 0;
            if (known != null && near && System.nanoTime() - known.asked() < FRESH_NANOS) {
                return known.buckets();
            }
        }
        List<Bucket> all = new ArrayList<>(Collections.nCopies(count, Bucket.EMPTY));
        for (TrendBucket b : journal.buckets(probe, from, to, count)) {
            all.set(b.slice(), new Bucket(b.count(), b.low(), b.mean(), b.high()));
        }
        List<Bucket> buckets = List.copyOf(all);
        synchronized (answers) {
            answers.put(question, new Answer(to, System.nanoTime(), buckets));
            while (answers.size() > MOST) {
                answers.remove(answers.keySet().iterator().next());
            }
        }
        return buckets;
    }
}
