package bywash.ingest.mqtt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(30)
class InboundQueueTest {
    private static RecordedLine.Message message(String topic, int bytes) {
        return new RecordedLine.Message(Instant.EPOCH, topic, new byte[bytes], 0, false);
    }

    @Test
    void keepsTheOldestAndCountsWhatItDrops() throws Exception {
        InboundQueue queue = new InboundQueue(2, 100_000, 1000);
        assertTrue(queue.offer(message("a", 1)));
        assertTrue(queue.offer(message("b", 1)));
        assertFalse(queue.offer(message("c", 1)));
        assertEquals(new InboundQueue.Counts(3, 1, 0, 2), queue.counts());
        List<String> topics = new ArrayList<>();
        assertEquals(2, queue.drain(m -> topics.add(m.topic()), 10, Duration.ZERO));
        assertEquals(List.of("a", "b"), topics);
        assertTrue(queue.offer(message("d", 1)));
    }

    @Test
    void boundsTheBytesToo() throws Exception {
        InboundQueue queue = new InboundQueue(100, 1000, 800);
        assertTrue(queue.offer(message("a", 700)));
        assertFalse(queue.offer(message("a", 700)));
        assertFalse(queue.offer(message("a", 801)));
        assertEquals(new InboundQueue.Counts(3, 1, 1, 1), queue.counts());
        queue.drain(m -> {}, 1, Duration.ZERO);
        assertTrue(queue.offer(message("a", 700)), "drained bytes are free again");
    }

    @Test
    void drainHandsOverNoMoreThanAskedAndReturnsEmptyHandedInTime() throws Exception {
        InboundQueue queue = new InboundQueue();
        for (int i = 0; i < 5; i++) {
            queue.offer(message("a", 1));
        }
        assertEquals(3, queue.drain(m -> {}, 3, Duration.ZERO));
        assertEquals(2, queue.drain(m -> {}, 3, Duration.ZERO));
        assertEquals(0, queue.drain(m -> {}, 3, Duration.ofMillis(5)));
    }

    @Test
    void drainWakesForAMessageOfAnotherThread() throws Exception {
        InboundQueue queue = new InboundQueue();
        Thread other = new Thread(() -> queue.offer(message("a", 1)));
        other.start();
        assertEquals(1, queue.drain(m -> {}, 3, Duration.ofSeconds(20)));
        other.join();
    }
}
