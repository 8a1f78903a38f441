package bywash.tui.watch;

import bywash.ingest.payload.DecodeSink;
import bywash.ingest.payload.ReadingDecoder;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.ingest.site.SiteFile;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.Reading;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;

/**
 * The invented site's probes, and all that can go wrong between them and the watch; everything from one seed. It knows when
 * each probe last sent a reading of that moment, which is what the watch is judged by.
 */
final class FaultyWorld {
    private static final List<String> TOPICS = List.of(
            "larkfield/sump/level",
            "larkfield/reserve/level",
            "larkfield/fish",
            "larkfield/do",
            "larkfield/orp",
            "larkfield/pump");

    final SplittableRandom random;
    private final HostilePayloads hostile;
    /** Until when each topic says nothing; a half-open line is all of them at once. */
    private final Map<String, Instant> mute = new LinkedHashMap<>();

    private final Map<String, byte[]> kept = new LinkedHashMap<>();
    private final Map<String, Instant> fresh = new TreeMap<>();
    private final Map<String, Instant> spoken = new TreeMap<>();
    private final ReadingDecoder truth;
    private boolean doubled;
    private boolean shuffled;
    private boolean delayed;
    private double oxygen = 7.5;

    FaultyWorld(long seed, SiteFile site) {
        random = new SplittableRandom(seed);
        hostile = new HostilePayloads(random);
        truth = new ReadingDecoder(site);
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
        delayed = oneIn(4);
    }

    /** When a probe last sent a good reading of that very time; before all time where never. */
    Instant fresh(String probe) {
        return fresh.getOrDefault(probe, Instant.MIN);
    }

    /** When a probe last sent anything, be it nonsense. */
    Instant spoken(String probe) {
        return spoken.getOrDefault(probe, Instant.MIN);
    }

    /** What arrives in the ten seconds to {@code now}. */
    List<Message> arriving(Instant now) {
        List<Message> all = new ArrayList<>();
        for (String topic : TOPICS) {
            boolean often = topic.endsWith("level");
            boolean silent = now.isBefore(mute.getOrDefault(topic, Instant.MIN));
            if (!silent && (often || now.getEpochSecond() / 10 % 3 == 0)) {
                byte[] payload = oneIn(60) ? hostile.next() : reading(topic);
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
        return sent(all);
    }

    /** What a broker sends again to a client that comes back: the last of each topic, however old. */
    List<Message> retained(Instant now) {
        List<Message> all = new ArrayList<>();
        kept.forEach((topic, payload) -> all.add(new Message(now, topic, payload, 1, true)));
        return sent(all); // a state that was kept is one of this moment, and nonsense that was kept is nonsense
    }

    /** Hundreds of messages at once, on topics of the site and on others; or thousands on one, more than is taken. */
    List<Message> flood(Instant now) {
        List<Message> all = new ArrayList<>();
        boolean one = oneIn(4);
        String same = TOPICS.get(random.nextInt(TOPICS.size()));
        int messages = one ? 20_000 : 600;
        for (int i = 0; i < messages; i++) {
            String topic = one
                    ? same
                    : oneIn(2) ? TOPICS.get(random.nextInt(TOPICS.size())) : "larkfield/" + random.nextInt(1000);
            all.add(new Message(now, topic, hostile.small(), 0, false));
        }
        return sent(all);
    }

    /** Notes the readings among them that are possible, and of this time. */
    private List<Message> sent(List<Message> all) {
        for (Message message : all) {
            truth.decode(message.time(), message.topic(), message.payload(), message.retain(), new DecodeSink() {
                @Override
                public void reading(Reading reading) {
                    spoken.put(reading.probe(), message.time());
                    fresh.merge(reading.probe(), reading.at(), (a, b) -> a.isAfter(b) ? a : b);
                }

                @Override
                public void refused(String probe, Instant at, String reason) {
                    spoken.put(probe, at);
                }

                @Override
                public void unknownTopic(String topic) {}
            });
        }
        return all;
    }

    /** What the grower may enter. */
    OperatorEntry entry(Instant now) {
        return switch (random.nextInt(9)) {
            case 0, 1 -> new OperatorEntry.Acknowledge(now, null, null);
            case 2 -> new OperatorEntry.TopUpStart(now, "sump", "mains", 60, Duration.ofMinutes(10));
            case 3 -> new OperatorEntry.TopUpEnd(now, "sump");
            case 4 -> new OperatorEntry.WaterTest(now, "fish-tank", "nitrite", random.nextInt(3));
            case 5 -> new OperatorEntry.Shelve(now, "probe-silent", "fish-do", between(60, 1200));
            case 6 -> new OperatorEntry.MaintenanceStart(now, "fish-do", between(60, 600), "");
            case 7 -> new OperatorEntry.OutOfService(now, "probe-silent", "pump", "");
            default -> new OperatorEntry.Note(now, "note " + random.nextInt(1000));
        };
    }

    private byte[] reading(String topic) {
        if (oneIn(200)) {
            oxygen = oneIn(2) ? 2.0 : 7.5;
        }
        String text = switch (topic) {
            case "larkfield/sump/level" -> number(34, 0.15);
            case "larkfield/reserve/level" -> number(73, 0.15);
            case "larkfield/fish" ->
                "[{\"n\":\"ph\",\"v\":" + number(6.7, 0.02) + time() + "},{\"n\":\"temperature\",\"u\":\"Cel\",\"v\":"
                        + number(22, 0.05) + time() + "}]";
            case "larkfield/do" -> "{\"oxygen\":{\"mgl\":" + number(oxygen, 0.05) + "}}";
            case "larkfield/orp" -> number(318, 2);
            default -> oneIn(150) ? "off" : "on";
        };
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** The reading's own time, up to some seconds before it arrives: within the lateness bound or past it. */
    private String time() {
        return delayed ? ",\"t\":-" + random.nextInt(40) / 10.0 : "";
    }

    private String number(double mean, double spread) {
        return Double.toString(Math.round((mean + spread * (random.nextDouble() * 2 - 1)) * 1000) / 1000.0);
    }
}
