package bywash.tui.watch;

import bywash.ingest.recording.RecordedLine.Message;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/** The invented site's probes, and all that can go wrong between them and the watch; everything from one seed. */
final class FaultyWorld {
    private static final List<String> TOPICS = List.of(
            "larkfield/sump/level",
            "larkfield/reserve/level",
            "larkfield/fish",
            "larkfield/do",
            "larkfield/orp",
            "larkfield/pump");

    final SplittableRandom random;
    /** Until when each topic says nothing; a half-open line is all of them at once. */
    private final Map<String, Instant> mute = new LinkedHashMap<>();

    private final Map<String, byte[]> kept = new LinkedHashMap<>();
    private boolean doubled;
    private boolean shuffled;
    private double oxygen = 7.5;

    FaultyWorld(long seed) {
        random = new SplittableRandom(seed);
    }

    boolean oneIn(int n) {
        return random.nextInt(n) == 0;
    }

    Duration between(int fromS, int toS) {
        return Duration.ofSeconds(random.nextInt(fromS, toS + 1));
    }

    void muteOne(Instant until) {
        mute.put(TOPICS.get(random.nextInt(TOPICS.size())), until);
    }

    void muteAll(Instant until) {
        TOPICS.forEach(topic -> mute.put(topic, until));
    }

    /** The weather of the line for the next while. */
    void newManners() {
        doubled = oneIn(4);
        shuffled = oneIn(4);
    }

    /** What arrives in the ten seconds to {@code now}. */
    List<Message> arriving(Instant now) {
        List<Message> all = new ArrayList<>();
        for (String topic : TOPICS) {
            boolean often = topic.endsWith("level");
            boolean silent = now.isBefore(mute.getOrDefault(topic, Instant.MIN));
            if (!silent && (often || now.getEpochSecond() / 10 % 3 == 0)) {
                byte[] payload = oneIn(60) ? spoilt() : reading(topic);
                kept.put(topic, payload);
                all.add(new Message(now, topic, payload, 0, false));
                if (doubled) {
                    all.add(new Message(now, topic, payload, 1, false));
                }
            }
        }
        if (shuffled) {
            for (int i = all.size() - 1; i > 0; i--) {
                all.add(random.nextInt(i), all.remove(i));
            }
        }
        return all;
    }

    /** What a broker sends again to a client that comes back: the last of each topic, however old. */
    List<Message> retained(Instant now) {
        List<Message> all = new ArrayList<>();
        kept.forEach((topic, payload) -> all.add(new Message(now, topic, payload, 1, true)));
        return all;
    }

    /** Thousands of messages, on topics of the site and on others. */
    List<Message> flood(Instant now) {
        List<Message> all = new ArrayList<>();
        for (int i = 0; i < 600; i++) {
            String topic = oneIn(2) ? TOPICS.get(random.nextInt(TOPICS.size())) : "larkfield/" + random.nextInt(1000);
            all.add(new Message(now, topic, spoilt(), 0, false));
        }
        return all;
    }

    private byte[] spoilt() {
        byte[] bytes = new byte[random.nextInt(40)];
        random.nextBytes(bytes);
        return bytes;
    }

    private byte[] reading(String topic) {
        if (oneIn(200)) {
            oxygen = oneIn(2) ? 2.0 : 7.5;
        }
        String text = switch (topic) {
            case "larkfield/sump/level" -> number(34, 0.15);
            case "larkfield/reserve/level" -> number(73, 0.15);
            case "larkfield/fish" ->
                "[{\"n\":\"ph\",\"v\":" + number(6.7, 0.02) + "},{\"n\":\"temperature\",\"u\":\"Cel\",\"v\":"
                        + number(22, 0.05) + "}]";
            case "larkfield/do" -> "{\"oxygen\":{\"mgl\":" + number(oxygen, 0.05) + "}}";
            case "larkfield/orp" -> number(318, 2);
            default -> "on";
        };
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private String number(double mean, double spread) {
        return Double.toString(Math.round((mean + spread * (random.nextDouble() * 2 - 1)) * 1000) / 1000.0);
    }
}
