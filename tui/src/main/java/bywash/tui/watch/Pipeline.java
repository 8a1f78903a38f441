package bywash.tui.watch;

import bywash.ingest.feed.EventTimeOrder;
import bywash.ingest.payload.DecodeSink;
import bywash.ingest.payload.ReadingDecoder;
import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.ingest.site.SiteFile;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmMemory;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.chlorine.ChlorineMemory;
import bywash.rules.detect.FlowFinding;
import bywash.rules.engine.Engine;
import bywash.rules.engine.IncidentMemory;
import bywash.rules.engine.Snapshot;
import bywash.rules.event.EngineEvent;
import bywash.rules.event.EngineEvent.FeedChanged;
import bywash.rules.event.EngineEvent.OperatorActed;
import bywash.rules.event.EngineEvent.ReadingArrived;
import bywash.rules.event.EngineEvent.ReadingRefused;
import bywash.rules.event.EngineEvent.WatchStarted;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.Reading;
import bywash.rules.husbandry.daily.PastMinutes;
import bywash.rules.husbandry.season.SeasonLedger;
import bywash.rules.response.IncidentBook;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Lines in, transitions out: the same path live and in a replay. One thread only. */
public final class Pipeline {
    private final ReadingDecoder decoder;
    private final EventTimeOrder order;
    private final Engine engine;
    private final Consumer<AlarmTransition> transitions;
    private final Consumer<Reading> readings;
    private final Sink sink = new Sink();
    private Consumer<OperatorEntry> entries = entry -> {};
    private BiConsumer<Instant, Collection<FlowFinding>> flows = (at, findings) -> {};
    private Consumer<String> refusals = reason -> {};
    private long messages;
    private long refused;
    private long unknownTopics;
    private String lastRefusal = "";

    public Pipeline(SiteFile file, Consumer<AlarmTransition> transitions, Consumer<Reading> readings) {
        this.decoder = new ReadingDecoder(file);
        this.engine = new Engine(file.site());
        this.transitions = transitions;
        this.readings = readings;
        this.order = new EventTimeOrder(EventTimeOrder.DEFAULT_LATENESS, this::apply, late -> {});
    }

    /** Who is told of each entry as it reaches the rules. */
    public void onEntry(Consumer<OperatorEntry> to) {
        entries = to;
    }

    /** Who is told at each tick what the balance found: the last figures of a flow come once. */
    public void onFlows(BiConsumer<Instant, Collection<FlowFinding>> to) {
        flows = to;
    }

    /** Who is told why a payload gave no reading. */
    void onRefusal(Consumer<String> to) {
        refusals = to;
    }

    /** One line of a recording or of the live feed. */
    public void accept(RecordedLine line) {
        switch (line.kind()) {
            case MESSAGE -> message((Message) line);
            case ENTRY -> enter(((RecordedLine.Entry) line).entry());
            case FEED -> {
                RecordedLine.Feed feed = (RecordedLine.Feed) line;
                feed(new FeedChanged(feed.time(), feed.up(), feed.detail()));
            }
            case WATCH_STARTED ->
                started(new WatchStarted(line.time(), ((RecordedLine.WatchStarted) line).unwatchedSince()));
        }
    }

    private void message(Message message) {
        messages++;
        sink.receivedAt = message.time();
        decoder.decode(message.time(), message.topic(), message.payload(), message.retain(), sink);
    }

    /** Something entered so long ago that what was read around it is not played again: no time passes. */
    public void remember(OperatorEntry entry) {
        apply(new OperatorActed(entry));
    }

    /** The same with what the probes read then, for the season's books. */
    public void remember(OperatorEntry entry, PastMinutes past) {
        entries.accept(entry);
        engine.remember(entry, past).forEach(transitions);
    }

    /** Puts the alarms back as they were kept. */
    public void restore(List<AlarmMemory> alarms, Instant now) {
        engine.restore(alarms, now);
    }

    /**
     * Puts the incidents back as they were.
     *
     * @param book a fresh one that has been told the alarm lines and the entries of old
     * @param memories as they were kept last, oldest first
     */
    void restore(IncidentBook book, List<IncidentMemory> memories, Instant now) {
        engine.restore(book, memories, now);
    }

    /** Whether alarms of this incident are on a response sheet. */
    boolean incident(String id) {
        return engine.incident(id);
    }

    /** What a restart needs to know of the incidents that have changed since this was last asked. */
    List<IncidentMemory> changedIncidents() {
        return engine.changedIncidents();
    }

    /** What is known of chlorine as of the last whole hour; null before the first. */
    @Nullable
    ChlorineMemory chlorine() {
        return engine.chlorine();
    }

    /** Before the first line that is played again: what was known of chlorine then; null where that is lost. */
    void restore(@Nullable ChlorineMemory memory) {
        engine.restore(memory);
    }

    /** What a restart needs to know of an alarm. */
    public AlarmMemory memory(AlarmKind kind, String subject) {
        return engine.memory(kind, subject);
    }

    private void started(WatchStarted event) {
        order.advanceTo(event.unwatchedSince());
        order.resume(event.at());
        apply(event);
    }

    public void enter(OperatorEntry entry) {
        order.offer(new OperatorActed(entry), entry.at());
    }

    /** Tells the engine of the feed's own state. */
    public void feed(FeedChanged change) {
        order.offer(change, change.at());
    }

    /** The live clock reached {@code now}. */
    public void advanceTo(Instant now) {
        order.advanceTo(now);
    }

    /** When the live clock should be told next, for a decision that waits for nothing but time; null: nothing waits. */
    @Nullable
    Instant nextDue() {
        return order.nextTickDue();
    }

    public void finish() {
        order.finish();
    }

    private void apply(EngineEvent event) {
        switch (event.kind()) {
            case READING_ARRIVED -> readings.accept(((ReadingArrived) event).reading());
            case OPERATOR_ACTED -> entries.accept(((OperatorActed) event).entry());
            case READING_REFUSED, TICK, FEED_CHANGED, WATCH_STARTED -> {
                // for the rules alone
            }
        }
        for (AlarmTransition transition : engine.apply(event)) {
            transitions.accept(transition);
        }
        if (event.kind() == EngineEvent.Kind.TICK) {
            flows.accept(event.at(), engine.findings());
        }
    }

    public Snapshot snapshot() {
        return engine.snapshot();
    }

    /** The season's book: for a report, and to be told of the days before the first line. */
    public SeasonLedger season() {
        return engine.season();
    }

    /** Reserves whose water is known to be safe to release. */
    public Set<String> safeReserves() {
        return engine.safeReserves();
    }

    public long messages() {
        return messages;
    }

    public long refused() {
        return refused;
    }

    public long unknownTopics() {
        return unknownTopics;
    }

    public long late() {
        return order.lateCount();
    }

    /** The last refusal in words; empty where there was none. */
    public String lastRefusal() {
        return lastRefusal;
    }

    private final class Sink implements DecodeSink {
        private Instant receivedAt = Instant.EPOCH;

        @Override
        public void reading(Reading reading) {
            order.offer(new ReadingArrived(reading), receivedAt);
        }

        @Override
        public void refused(String probeId, Instant at, String reason) {
            refused++;
            refusals.accept(reason);
            lastRefusal = probeId + ": " + reason;
            order.offer(new ReadingRefused(probeId, at, reason), receivedAt);
        }

        @Override
        public void unknownTopic(String topic) {
            unknownTopics++;
        }
    }
}
