package bywash.ingest.mqtt;

import bywash.ingest.recording.RecordedLine;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Collection;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * The bounded hand-over from the client's threads to the one loop that owns the engine. {@link #offer} never waits for room:
 * when it is full the newest message is dropped and counted. The lock is held for a few instructions only.
 */
public final class InboundQueue {
    private static final int MOST = 65_536;
    private static final int LONGEST = 262_144;
    /** Counted for each message beside topic and payload, bytes. */
    private static final int OVERHEAD = 100;

    private final int capacity;
    private final long capacityBytes;
    private final int longestPayload;
    private final @Nullable FloodGate gate;
    private final ReentrantLock lock = new ReentrantLock();
    private final Condition arrived = lock.newCondition();
    private final ArrayDeque<RecordedLine.Message> messages = new ArrayDeque<>();
    private long bytes;
    private long received;
    private long dropped;
    private long oversize;

    /** 65,536 messages, 64 MB or an eighth of the heap, payloads up to 256 KiB. */
    public InboundQueue() {
        this(MOST, mostBytes(), LONGEST, null);
    }

    /** The same, and no more of each topic and in all than these limits say. */
    public InboundQueue(FloodLimits limits) {
        this(MOST, mostBytes(), LONGEST, new FloodGate(limits));
    }

    /** @param capacity messages; the other bounds as usual */
    public InboundQueue(int capacity) {
        this(capacity, mostBytes(), LONGEST, null);
    }

    private static long mostBytes() {
        return Math.min(64_000_000, Runtime.getRuntime().maxMemory() / 8);
    }

    /**
     * Makes an empty queue.
     *
     * @param capacity messages
     * @param capacityBytes of topics, payloads and what holds them
     * @param longestPayload bytes; longer ones are dropped and counted as oversize
     */
    public InboundQueue(int capacity, long capacityBytes, int longestPayload) {
        this(capacity, capacityBytes, longestPayload, null);
    }

    private InboundQueue(int capacity, long capacityBytes, int longestPayload, @Nullable FloodGate gate) {
        if (capacity < 1 || capacityBytes < 1 || longestPayload < 1) {
            throw new IllegalArgumentException("queue bounds must be at least 1");
        }
        this.capacity = capacity;
        this.capacityBytes = capacityBytes;
        this.longestPayload = longestPayload;
        this.gate = gate;
    }

    /** Whether the message was taken. */
    public boolean offer(RecordedLine.Message message) {
        long size = size(message);
        lock.lock();
        try {
            received++;
            if (message.payload().length > longestPayload) {
                oversize++;
                return false;
            }
            if (gate != null && gate.judge(message) != null) {
                return false;
            }
            if (messages.size() >= capacity || bytes + size > capacityBytes) {
                dropped++;
                return false;
            }
            messages.addLast(message);
            bytes += size;
            arrived.signal();
            return true;
        } finally {
            lock.unlock();
        }
    }

    /**
     * Hands over what is there, oldest first; waits up to the given time for the first message.
     *
     * @return how many were handed over; 0 when the time passed without one
     */
    public int drain(Consumer<RecordedLine.Message> sink, int most, Duration wait) throws InterruptedException {
        ArrayDeque<RecordedLine.Message> taken = new ArrayDeque<>();
        lock.lockInterruptibly();
        try {
            long left = wait.toNanos();
            while (messages.isEmpty()) {
                if (left <= 0) {
                    return 0;
                }
                left = arrived.awaitNanos(left);
            }
            while (taken.size() < most && !messages.isEmpty()) {
                RecordedLine.Message next = messages.removeFirst();
                bytes -= size(next);
                taken.addLast(next);
            }
        } finally {
            lock.unlock();
        }
        taken.forEach(sink);
        return taken.size();
    }

    /** Waits up to so many milliseconds for a message, then takes all there are. */
    public void drain(Collection<? super RecordedLine.Message> into, long millis) throws InterruptedException {
        drain(into::add, Integer.MAX_VALUE, Duration.ofMillis(millis));
    }

    /**
     * The counts so far.
     *
     * @param received everything that came in, dropped or not
     * @param dropped because the queue was full
     * @param oversize because the payload was too long
     * @param waiting in the queue now
     */
    public record Counts(long received, long dropped, long oversize, int waiting) {}

    public Counts counts() {
        lock.lock();
        try {
            return new Counts(received, dropped, oversize, messages.size());
        } finally {
            lock.unlock();
        }
    }

    public long received() {
        return counts().received();
    }

    /** Everything that was not taken: for want of room, because it was too long, or as part of a flood. */
    public long dropped() {
        Counts now = counts();
        return now.dropped() + now.oversize() + overTopic() + overDay();
    }

    /** Dropped because far more came on its topic than the site file declares. */
    public long overTopic() {
        return ofGate(g -> g.dropped(FloodGate.Reason.TOPIC), 0L);
    }

    /** Dropped because too much came in all that day. */
    public long overDay() {
        return ofGate(g -> g.dropped(FloodGate.Reason.DAY), 0L);
    }

    /** Who floods us, in words; empty where nobody does. */
    public String flood(Instant now) {
        return ofGate(g -> g.words(now), "");
    }

    private <T> T ofGate(Function<FloodGate, T> question, T without) {
        lock.lock();
        try {
            return gate == null ? without : question.apply(gate);
        } finally {
            lock.unlock();
        }
    }

    private static long size(RecordedLine.Message message) {
        return OVERHEAD + message.topic().length() + (long) message.payload().length;
    }
}
