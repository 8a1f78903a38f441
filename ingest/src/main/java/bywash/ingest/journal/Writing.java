package bywash.ingest.journal;

import bywash.ingest.recording.EntryJson;
import bywash.ingest.recording.LineJson;
import bywash.ingest.recording.RecordedLine;
import bywash.rules.event.OperatorEntry;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;

/** One thing for the record. What is given first stands first; each is kept whole or not at all. */
public sealed interface Writing {
    /** What it is, from what may be given up first to what may be given up last. */
    enum Kind {
        MESSAGE,
        MINUTE,
        STATE,
        ALARM,
        ENTRY,
        /** The site file, how alarms stand, and figures of incidents: little, and never given up. */
        REST
    }

    Kind kind();

    /** Where all of it goes: one deed for each kind of thing, so that none can be forgotten. */
    interface Store {
        void message(RecordedLine.Message message) throws SQLException;

        void minute(Rollup rollup) throws SQLException;

        void state(Instant at, String json) throws SQLException;

        void transition(KeptTransition transition) throws SQLException;

        void standing(KeptTransition transition) throws SQLException;

        void entry(Instant at, String json) throws SQLException;

        void figures(Figures figures) throws SQLException;

        void site(Instant from, String text) throws SQLException;

        void chlorine(Instant at, String json) throws SQLException;
    }

    /** Goes into the store. */
    void into(Store store) throws SQLException;

    /** One of many like it: what stands soon after another of its source may be given up. */
    sealed interface Sample extends Writing {
        /** The topic or the probe it comes from. */
        String source();

        Instant at();
    }

    /** About what it takes in memory, bytes. */
    int size();

    /** How many lines it comes to. */
    default int lines() {
        return 1;
    }

    /** Whether it must be synced to the disk before anybody sees it. */
    default boolean durable() {
        return false;
    }

    /** What holds a thing in memory, beside its texts. */
    int OVERHEAD = 100;

    record Message(RecordedLine.Message message) implements Sample {
        @Override
        public Kind kind() {
            return Kind.MESSAGE;
        }

        @Override
        public void into(Store store) throws SQLException {
            store.message(message);
        }

        @Override
        public String source() {
            return message.topic();
        }

        @Override
        public Instant at() {
            return message.time();
        }

        @Override
        public int size() {
            return OVERHEAD + message.payload().length;
        }
    }

    record Minute(Rollup rollup) implements Sample {
        @Override
        public Kind kind() {
            return Kind.MINUTE;
        }

        @Override
        public void into(Store store) throws SQLException {
            store.minute(rollup);
        }

        @Override
        public String source() {
            return rollup.probe();
        }

        @Override
        public Instant at() {
            return rollup.minute();
        }

        @Override
        public int size() {
            return OVERHEAD;
        }
    }

    /** How the feed, or the watch itself, stands from here on. */
    record State(Instant at, String json) implements Writing {
        public static State of(RecordedLine line) {
            return new State(line.time(), LineJson.toJson(line));
        }

        @Override
        public Kind kind() {
            return Kind.STATE;
        }

        @Override
        public void into(Store store) throws SQLException {
            store.state(at, json);
        }

        @Override
        public int size() {
            return OVERHEAD + json.length();
        }
    }

    /** Changes that came of one event. */
    record Transitions(List<KeptTransition> all) implements Writing {
        public Transitions {
            all = List.copyOf(all);
        }

        @Override
        public Kind kind() {
            return Kind.ALARM;
        }

        @Override
        public void into(Store store) throws SQLException {
            for (KeptTransition each : all) {
                store.transition(each);
            }
        }

        @Override
        public int size() {
            return all.stream()
                    .mapToInt(t -> OVERHEAD + t.json().length() + t.state().length())
                    .sum();
        }

        @Override
        public int lines() {
            return all.size();
        }

        @Override
        public boolean durable() {
            return true;
        }
    }

    /** How alarms stand, without a line of their own: for a journal that was begun anew. */
    record Standing(List<KeptTransition> all) implements Writing {
        public Standing {
            all = List.copyOf(all);
        }

        @Override
        public Kind kind() {
            return Kind.REST;
        }

        @Override
        public void into(Store store) throws SQLException {
            for (KeptTransition each : all) {
                store.standing(each);
            }
        }

        @Override
        public int size() {
            return all.stream().mapToInt(t -> OVERHEAD + t.state().length()).sum();
        }

        @Override
        public boolean durable() {
            return true;
        }
    }

    /**
     * What readings have added to an incident so far; replaces what was kept of it. An incident that no alarm line on record
     * belongs to is passed over.
     */
    record Figures(String incident, String json) implements Writing {
        @Override
        public Kind kind() {
            return Kind.REST;
        }

        @Override
        public void into(Store store) throws SQLException {
            store.figures(this);
        }

        @Override
        public int size() {
            return OVERHEAD + json.length();
        }
    }

    record Entry(Instant at, String json) implements Writing {
        public static Entry of(OperatorEntry entry) {
            return new Entry(entry.at(), EntryJson.toJson(entry));
        }

        @Override
        public Kind kind() {
            return Kind.ENTRY;
        }

        @Override
        public void into(Store store) throws SQLException {
            store.entry(at, json);
        }

        @Override
        public int size() {
            return OVERHEAD + json.length();
        }

        @Override
        public boolean durable() {
            return true;
        }
    }

    /** The text of the site file that holds from a time on. */
    record Site(Instant from, String text) implements Writing {
        @Override
        public Kind kind() {
            return Kind.REST;
        }

        @Override
        public void into(Store store) throws SQLException {
            store.site(from, text);
        }

        @Override
        public int size() {
            return OVERHEAD + text.length();
        }
    }

    /** What is known of chlorine at a time, all of before in it. */
    record Chlorine(Instant at, String json) implements Writing {
        @Override
        public Kind kind() {
            return Kind.REST;
        }

        @Override
        public void into(Store store) throws SQLException {
            store.chlorine(at, json);
        }

        @Override
        public int size() {
            return OVERHEAD + json.length();
        }
    }
}
