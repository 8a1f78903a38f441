package bywash.tui.watch;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;

/** Takes from a journal what a faulty watch would not have kept. */
final class JournalSaboteur {
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
}
