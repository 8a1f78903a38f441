package bywash.tui.watch;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/** Takes from a journal what a faulty watch would not have kept. */
final class JournalSaboteur {
    private static final List<String> CELLS = List.of(
            "topic.id",
            "topic.name",
            "message.seq",
            "message.time",
            "message.topic",
            "message.flags",
            "message.payload",
            "entry.seq",
            "entry.time",
            "entry.json",
            "transition.time",
            "transition.json",
            "rollup.minute",
            "rollup.count",
            "rollup.mean",
            "state.time",
            "state.json",
            "alarm.kind",
            "alarm.json",
            "alive.time",
            "site.time",
            "site.text");
    /** A number in each table by which some rows are chosen. */
    private static final Map<String, String> KEYS = Map.of(
            "topic", "id",
            "message", "seq",
            "entry", "seq",
            "transition", "seq",
            "rollup", "minute",
            "state", "seq",
            "alarm", "length(json)",
            "alive", "2 * id",
            "site", "2 * time");

    private static final List<String> VALUES = List.of(
            "NULL",
            "0",
            "-1",
            "9223372036854775807",
            "-9223372036854775808",
            "253402300799999",
            "COLUMN + 86400000 * 365 * 900",
            "COLUMN - 86400000 * 365 * 20",
            "1e308",
            "'text'",
            "''",
            "x'00ff1b5b324a'",
            "char(27) || '[2J' || char(8238)",
            "replace(COLUMN, '2026', '2926')",
            "replace(COLUMN, '2026', '1976')",
            "substr(COLUMN, 1, 20)",
            "COLUMN || COLUMN",
            "'{}'",
            "'{\"time\":\"2926-05-04T06:00:00.000Z\",\"feed\":\"up\",\"detail\":\"\"}'",
            "'{\"time\":\"2026-05-04T06:00:00.000Z\",\"operator\":\"note\",\"text\":\"x\"}'");

    private JournalSaboteur() {}

    static void spoil(Sabotage sabotage, Path state, String site) {
        String sql = switch (sabotage) {
            case FORGET_AN_ENTRY -> "DELETE FROM entry WHERE seq = (SELECT max(seq) FROM entry)";
            case FORGET_THE_ALARMS -> "DELETE FROM alarm";
            case FORGET_A_LINE -> "DELETE FROM transition WHERE seq = (SELECT max(seq) FROM transition)";
            case LOSE_MESSAGES -> "DELETE FROM message WHERE seq % 3 > 0";
            default -> "";
        };
        if (sql.isEmpty()) {
            return;
        }
        try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + state.resolve(site + ".db"));
                Statement s = db.createStatement()) {
            s.execute(sql);
        } catch (SQLException e) {
            throw new AssertionError(e);
        }
    }

    /** Puts odd values into one to four cells; returns what was done. */
    static List<String> cells(SplittableRandom random, Path file) throws SQLException {
        List<String> done = new ArrayList<>();
        try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement s = db.createStatement()) {
            for (int n = 1 + random.nextInt(4); n > 0; n--) {
                String[] cell = CELLS.get(random.nextInt(CELLS.size())).split("\\.");
                String value = VALUES.get(random.nextInt(VALUES.size())).replace("COLUMN", cell[1]);
                String sql = "UPDATE OR IGNORE " + cell[0] + " SET " + cell[1] + " = " + value
                        + (random.nextInt(3) == 0
                                ? ""
                                : " WHERE " + KEYS.get(cell[0]) + " % " + (2 + random.nextInt(9)) + " = 0");
                try {
                    s.execute(sql);
                    done.add(sql);
                } catch (SQLException e) {
                    done.add("refused: " + sql);
                }
            }
        }
        return done;
    }
}
