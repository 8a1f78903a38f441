package bywash.ingest.journal;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Trends out of the journal's minutes. Each question opens a reading connection of its own, so that it may come from any
 * thread, holds nobody up, and still finds its way when a damaged file has been set aside.
 */
final class JournalHistory implements TrendHistory {
    private static final Logger LOG = LoggerFactory.getLogger(JournalHistory.class);
    private static final String BUCKETS =
            "SELECT (minute - ?1) / ?2 AS n, sum(count), min(low), sum(mean * count) / sum(count), max(high) FROM rollup"
                    + " WHERE probe = (SELECT id FROM topic WHERE name = ?3) AND minute >= ?1 AND minute < ?4"
                    + " GROUP BY n ORDER BY n";

    private final Path file;

    JournalHistory(Path file) {
        this.file = file;
    }

    @Override
    public List<TrendBucket> buckets(String probe, Instant from, Instant to, int most) {
        long minutes = TrendHistory.bucketLength(from, to, most).toMinutes();
        long first = Math.floorDiv(from.getEpochSecond(), 60L);
        if (!Files.exists(file)) {
            return List.of();
        }
        List<TrendBucket> all = new ArrayList<>();
        try (Connection db = JournalFile.reading(file);
                PreparedStatement p = db.prepareStatement(BUCKETS)) {
            p.setLong(1, first);
            p.setLong(2, minutes);
            p.setString(3, probe);
            p.setLong(4, -Math.floorDiv(-to.getEpochSecond(), 60L));
            try (ResultSet r = p.executeQuery()) {
                while (r.next()) {
                    Instant begin = Instant.ofEpochSecond((first + r.getLong(1) * minutes) * 60);
                    all.add(new TrendBucket(
                            begin,
                            begin.plusSeconds(minutes * 60),
                            r.getInt(2),
                            r.getDouble(3),
                            r.getDouble(4),
                            r.getDouble(5)));
                }
            }
        } catch (SQLException e) {
            LOG.warn("no trend from the journal", e);
        }
        return all;
    }
}
