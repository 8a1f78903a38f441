package bywash.tui.bench;

import bywash.ingest.journal.Journal;
import bywash.ingest.journal.KeptTransition;
import bywash.ingest.journal.Rollup;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.rules.event.OperatorEntry;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * The journal of the demo's site after a year: its seven probes every 10 s, as minutes for all of the year and as messages for
 * the last 60 days, feed twice a day, tests, weighings, and an alarm a week. Written in the order of time, as a watch does.
 */
public final class YearJournal {
    static final Instant START = Instant.parse("2025-11-03T00:00:00Z");
    static final int DAYS = 365;
    private static final int MESSAGE_DAYS = 60;

    private final SplittableRandom random = new SplittableRandom(7);
    private final Journal journal;

    private YearJournal(Journal journal) {
        this.journal = journal;
    }

    public static Instant end() {
        return START.plus(Duration.ofDays(DAYS));
    }

    /** Writes it to a folder, for the site {@code larkfield}. */
    public static void write(Path dir) throws Exception {
        try (Journal journal = Journal.open(dir, "larkfield", YearJournal::end)) {
            YearJournal year = new YearJournal(journal);
            for (int day = 0; day < DAYS; day++) {
                year.day(day);
            }
        }
    }

    private void day(int day) {
        Instant midnight = START.plus(Duration.ofDays(day));
        entries(day, midnight);
        for (int hour = 0; hour < 24; hour++) {
            Instant from = midnight.plus(Duration.ofHours(hour));
            if (day >= DAYS - MESSAGE_DAYS) {
                messages(from);
            }
            minutes(from);
        }
        if (day % 7 == 3) {
            alarm(midnight.plus(Duration.ofHours(9)));
        }
    }

    private void entries(int day, Instant midnight) {
        if (day == 0) {
            journal.appendEntry(new OperatorEntry.FishIn(midnight.plusSeconds(60), "autumn", "nile-tilapia", 60, 40));
            journal.appendEntry(new OperatorEntry.Plant(midnight.plusSeconds(90), "bed-1", "lettuce", 1.2));
        }
        journal.appendEntry(new OperatorEntry.Feed(midnight.plus(Duration.ofHours(8)), 45, 0.32));
        journal.appendEntry(new OperatorEntry.Feed(midnight.plus(Duration.ofHours(17)), 45, 0.32));
        Instant morning = midnight.plus(Duration.ofHours(9));
        if (day % 2 == 0) {
            for (String quantity : List.of("total-ammonia", "nitrite", "ph")) {
                double value = quantity.equals("ph") ? 6.9 : 0.2;
                journal.appendEntry(new OperatorEntry.WaterTest(morning, "fish-tank", quantity, value));
            }
        }
        if (day % 7 == 0) {
            journal.appendEntry(new OperatorEntry.WaterTest(morning, "fish-tank", "nitrate", 40 + day % 30));
            journal.appendEntry(new OperatorEntry.TopUpStart(morning, "sump", "reserve", 40, Duration.ofMinutes(10)));
        }
        if (day % 30 == 29) {
            double meanG = 40 + 1.1 * day;
            journal.appendEntry(
                    new OperatorEntry.Weigh(morning.plusSeconds(600), "autumn", true, 60, 60 * meanG, List.of()));
        }
    }

    private double value(int probe, Instant at) {
        double wave = StrictMath.sin(2 * StrictMath.PI * at.getEpochSecond() / 86_400);
        double noise = random.nextDouble() - 0.5;
        return switch (probe) {
            case 0 -> 45 + 6 * StrictMath.sin(2 * StrictMath.PI * at.getEpochSecond() / 700) + 0.2 * noise;
            case 1 -> 70 + 0.2 * noise;
            case 2 -> 6.9 + 0.1 * wave + 0.02 * noise;
            case 3 -> 24 + wave + 0.05 * noise;
            case 4 -> 7 + 0.8 * wave + 0.05 * noise;
            case 5 -> 310 + 8 * wave + 2 * noise;
            default -> 1;
        };
    }

    private static final List<String> PROBES =
            List.of("sump-level", "reserve-level", "fish-ph", "fish-temp", "fish-do", "fish-orp", "pump");

    private void minutes(Instant hour) {
        List<Rollup> batch = new ArrayList<>();
        for (int m = 0; m < 60; m++) {
            Instant minute = hour.plusSeconds(60L * m);
            for (int p = 0; p < PROBES.size(); p++) {
                double v = value(p, minute) * (p < 2 ? 10 : 1);
                double spread = p == 6 ? 0 : 0.01 * random.nextDouble();
                batch.add(new Rollup(PROBES.get(p), minute, 6, v, v - spread, v + spread));
            }
        }
        journal.appendRollups(batch);
    }

    private void messages(Instant hour) {
        List<Message> batch = new ArrayList<>();
        for (int s = 0; s < 3600; s += 10) {
            Instant at = hour.plusSeconds(s);
            add(batch, at, "larkfield/sump/level", number(value(0, at), 10));
            add(batch, at.plusMillis(120), "larkfield/reserve/level", number(value(1, at), 10));
            add(
                    batch,
                    at.plusMillis(310),
                    "larkfield/fish",
                    "[{\"n\":\"ph\",\"u\":\"pH\",\"v\":" + number(value(2, at), 100)
                            + "},{\"n\":\"temperature\",\"u\":\"Cel\",\"v\":" + number(value(3, at), 100) + "}]");
            add(batch, at.plusMillis(480), "larkfield/do", "{\"oxygen\":{\"mgl\":" + number(value(4, at), 100) + "}}");
            add(batch, at.plusMillis(640), "larkfield/orp", number(value(5, at), 1));
            add(batch, at.plusMillis(810), "larkfield/pump", "1");
        }
        journal.appendMessages(batch);
    }

    private static String number(double value, double steps) {
        return String.valueOf(Math.round(value * steps) / steps);
    }

    private static void add(List<Message> batch, Instant at, String topic, String payload) {
        batch.add(new Message(at, topic, payload.getBytes(StandardCharsets.UTF_8), 1, false));
    }

    private void alarm(Instant at) {
        for (String state : List.of("unacknowledged", "returned-unacknowledged", "normal")) {
            Instant when = at.plusSeconds(state.length() * 60L);
            String json = "{\"time\":\"" + when + "\",\"site\":\"larkfield\",\"alarm\":\"unplanned-inflow\","
                    + "\"subject\":\"sump\",\"state\":\"" + state + "\",\"priority\":\"critical\",\"incident\":\"" + at
                    + "\",\"message\":\"Water nobody declared is entering sump from outside: 4.1 L/min, 31 L so far\","
                    + "\"values\":{\"inflow_l_min\":4.1,\"volume_l\":31,\"since\":\"" + at + "\"}}";
            journal.appendTransitions(List.of(new KeptTransition(when, json, "unplanned-inflow", "sump", "{}")));
        }
    }
}
