package bywash.ingest.mqtt;

import bywash.ingest.recording.RecordedLine.Message;
import java.util.Collection;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;

/**
 * The bounded hand-over from the client's threads to the single-writer loop. Offering never blocks; when it is full the
 * newest message is dropped and counted.
 */
public final class InboundQueue {
    /** Messages held at most. */
    public static final int CAPACITY = 65_536;

    /** Bytes held at most, so that large payloads cannot fill the memory. */
    public static final long BYTES = 32L << 20;

    private final ArrayBlockingQueue<Message> queue;
    private final AtomicLong bytes = new AtomicLong();
    private final AtomicLong received = new AtomicLong();
    private final AtomicLong dropped = new AtomicLong();

    public InboundQueue() {
        this(CAPACITY);
    }

    /** @param capacity messages, 1 or more */
    public InboundQueue(int capacity) {
        this.queue = new ArrayBlockingQueue<>(capacity);
    }

    /** False when the message was dropped. */
    public boolean offer(Message message) {
        received.incrementAndGet();
        int size = message.payload().length;
        if (bytes.get() + size > BYTES || !queue.offer(message)) {
            dropped.incrementAndGet();
            return false;
        }
        bytes.addAndGet(size);
        return true;
    }

    /** Waits up to {@code millis} for a message, then takes all there are. */
    public void drain(Collection<? super Message> into, long millis) throws InterruptedException {
        @Nullable Message first = queue.poll(millis, TimeUnit.MILLISECONDS);
        if (first == null) {
            return;
        }
        take(into, first);
        for (Message next = queue.poll(); next != null; next = queue.poll()) {
            take(into, next);
        }
    }

    private void take(Collection<? super Message> into, Message message) {
        bytes.addAndGet(-message.payload().length);
        into.add(message);
    }

    public long received() {
        return received.get();
    }

    public long dropped() {
        return dropped.get();
    }
}
