package bywash.ingest.journal;

import bywash.ingest.recording.RecordedLine;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** What the logs tell of incidents. It begins at the first line of the oldest that is asked for, found by its key. */
final class IncidentReads {
    /** From a place in the record on. */
    static final String STORY = "SELECT seq, time, json, 1 FROM transition WHERE seq >= ?1"
            + " UNION ALL SELECT seq, time, json, NULL FROM entry WHERE seq >= ?1 ORDER BY seq";

    private static final String NAME = "\"incident\":\"";

    private final Connection db;

    IncidentReads(Connection db) {
        this.db = db;
    }

    /**
     * The newest incidents, oldest first.
     *
     * @param to is told their alarm lines, and all entries from the first of these on
     */
    List<KeptIncident> newest(int most, Story to) throws SQLException {
        List<KeptIncident> all = newest(most);
        if (!all.isEmpty()) {
            story(all.get(0).seq(), all.stream().map(KeptIncident::id).collect(Collectors.toSet()), to);
        }
        return all;
    }

    private List<KeptIncident> newest(int most) throws SQLException {
        List<KeptIncident> all = new ArrayList<>();
        try (PreparedStatement p =
                db.prepareStatement("SELECT seq, id, json FROM incident ORDER BY seq DESC LIMIT ?")) {
            p.setInt(1, most);
            try (ResultSet r = p.executeQuery()) {
                while (r.next()) {
                    String id = r.getString(2);
                    if (id != null) {
                        all.add(new KeptIncident(r.getLong(1), id, r.getString(3)));
                    }
                }
            }
        }
        Collections.reverse(all);
        return all;
    }

    private void story(long from, Set<String> incidents, Story to) throws SQLException {
        try (PreparedStatement p = db.prepareStatement(STORY)) {
            p.setLong(1, from);
            try (ResultSet r = p.executeQuery()) {
                while (r.next()) {
                    String json = r.getString(3);
                    if (r.getString(4) == null) {
                        if (JournalReads.line(json, r.getLong(2)) instanceof RecordedLine.Entry entry) {
                            to.entered(entry.entry());
                        }
                    } else if (json != null && incidents.contains(incident(json))) {
                        to.changed(json);
                    }
                }
            }
        }
    }

    /** The incident that an alarm line names, without the cost of reading all of it; empty where it names none. */
    private static String incident(String line) {
        int name = line.indexOf(NAME);
        int from = name + NAME.length();
        int end = name < 0 ? -1 : line.indexOf('"', from);
        return end < 0 ? "" : line.substring(from, end);
    }
}
