package bywash.tui.view;

import java.util.List;
import java.util.Locale;

/**
 * Which events of the log are shown.
 *
 * @param kind alarms, entries, or both
 * @param words shown are only those whose text holds this; capitals do not matter; empty for all
 */
public record LogFilter(Kind kind, String words) {
    public static final LogFilter ALL = new LogFilter(Kind.ALL, "");

    /** Which kind of event. */
    public enum Kind {
        ALL("alarms and entries"),
        RAISED("alarms raised"),
        ALARMS("alarms, all changes"),
        ENTRIES("entries");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }

        /** The next in turn. */
        public Kind next() {
            return values()[(ordinal() + 1) % values().length];
        }
    }

    /** Those in memory that pass, newest first. */
    public List<LogLine> lines(Frame frame) {
        return frame.log().newestFirst().stream()
                .map(e -> LogLine.from(e, frame))
                .filter(this::passes)
                .toList();
    }

    boolean passes(LogLine line) {
        String wanted = words.toLowerCase(Locale.ROOT);
        return ofKind(line)
                && (wanted.isEmpty() || line.text().toLowerCase(Locale.ROOT).contains(wanted));
    }

    private boolean ofKind(LogLine line) {
        return switch (kind) {
            case ALL -> true;
            case RAISED -> line.raised();
            case ALARMS -> !line.entry();
            case ENTRIES -> line.entry();
        };
    }
}
