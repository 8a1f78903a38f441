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
            "SELECT (minute * 60000 - ?1) * ?2 / (?5 - ?1) AS n, sum(count), min(low), sum(mean * count) / sum(count), max(high) FROM rollup"
                    + " WHERE probe = (SELECT id FROM topic WHERE name = ?3) AND minute >= ?6 AND minute < ?4"
                    + " GROUP BY n ORDER BY n";

    private final Path file;

    JournalHistory(Path file) {
        this.file = file;
    }

    @Override
    public List<TrendBucket> buckets(String probe, Instant from, Instant to, int slices) {
        if (slices < 1 || !from.isBefore(to) || !Files.exists(file)) {
            return List.of();
        }
        List<TrendBucket> all = new ArrayList<>();
        try (Connection db = JournalFile.reading(file);
                PreparedStatement p = db.prepareStatement(BUCKETS)) {
            p.setLong(1, from.toEpochMilli());
            p.setLong(2, slices);
            p.setString(3, probe);
            p.setLong(4, -Math.floorDiv(-to.toEpochMilli(), 60_000L));
            p.setLong(5, to.toEpochMilli());
            p.setLong(6, -Math.floorDiv(-from.toEpochMilli(), 60_000L));
            try (ResultSet r = p.executeQuery()) {
                while (r.next()) {
                    all.add(new TrendBucket(r.getInt(1), r.getInt(2), r.getDouble(3), r.getDouble(4), r.getDouble(5)));
                }
            }
        } catch (SQLException e) {
            LOG.warn("no trend from the journal", e);
        }
        return all;
    }
}
