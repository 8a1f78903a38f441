package bywash.rules.recovery;

import bywash.rules.recovery.WaterTests.Test;
import bywash.rules.water.LossFit;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The way back after chlorine: ammonia and nitrite daily for a week, chlorine until two zeros, pH and alkalinity at the start,
 * after a day, three and seven; feed held and stepped back. The bacteria grow slowly: what a shock has killed shows in
 * ammonia within a day and in nitrite over a week. Schedule and steps are common practice, no source.
 */
public final class Recovery {
    private static final Duration DAY = Duration.ofDays(1);
    private static final Duration WEEK = Duration.ofDays(7);
    private static final int FEWEST_TESTS = 4;
    private static final int[] PH_DAYS = {0, 1, 3, 7};

    private final WaterTests tests;
    private final RecentMeals feed;
    private @Nullable String incident;
    private Instant began = Instant.EPOCH;
    private FeedStage stage = FeedStage.FULL;
    private Instant stageSince = Instant.EPOCH;

    public Recovery(WaterTests tests, RecentMeals feed) {
        this.tests = tests;
        this.feed = feed;
    }

    /** An incident with chlorine or another oxidant began, or a newer one. */
    public void begin(String id, Instant at) {
        if (!id.equals(incident)) {
            incident = id;
            began = at;
            to(FeedStage.HOLD, at);
        }
    }

    /** What a restart has to be told; null where nothing is recovered from. */
    public @Nullable RecoveryMemory memory() {
        String id = incident;
        return id == null ? null : new RecoveryMemory(id, began, stage, stageSince);
    }

    /** Goes on from there. */
    public void restore(@Nullable RecoveryMemory memory) {
        incident = memory == null ? null : memory.incident();
        began = memory == null ? Instant.EPOCH : memory.began();
        stage = memory == null ? FeedStage.FULL : memory.feed();
        stageSince = memory == null ? Instant.EPOCH : memory.since();
    }

    private void to(FeedStage next, Instant at) {
        stage = next;
        stageSince = at;
    }

    /** Time passes; {@code standing} says whether the incident still stands. */
    public void tick(Instant at, boolean standing) {
        if (incident == null) {
            return;
        }
        if (standing || elevatedLately(at)) {
            if (stage != FeedStage.HOLD) {
                to(FeedStage.HOLD, at);
            } else if (standing) {
                stageSince = at;
            }
        } else if (stage != FeedStage.FULL
                && !at.isBefore(stageSince.plus(DAY))
                && missing(at).isEmpty()) {
            to(stage.next(), at);
        }
    }

    private boolean elevatedLately(Instant at) {
        return elevated(at, "total-ammonia") || elevated(at, "nitrite");
    }

    private boolean elevated(Instant at, String quantity) {
        Test last = tests.latest(quantity);
        boolean fresh = last != null && !last.at().isBefore(began) && last.at().isAfter(at.minus(WEEK));
        return last != null && fresh && Bacteria.elevated(tests, quantity, last);
    }

    /** What the next step of feed still waits for, in words; empty where nothing. */
    private List<String> missing(Instant at) {
        List<String> missing = new ArrayList<>();
        if (zeros() < 2) {
            missing.add("two chlorine tests of zero (" + zeros() + " so far)");
        }
        for (String quantity : List.of("total-ammonia", "nitrite")) {
            Test last = tests.latest(quantity);
            if (last == null
                    || last.at().isBefore(at.minus(DAY.plus(DAY.dividedBy(2))))
                    || last.at().isBefore(began)) {
                missing.add("a test of " + quantity.replace('-', ' ') + " of the last day");
            } else if (elevated(at, quantity)) {
                missing.add(quantity + " back from " + String.format(Locale.ROOT, "%.2f mg/L", last.value()));
            }
        }
        return missing;
    }

    /** Chlorine tests of zero in a row, latest backwards. */
    private int zeros() {
        List<Test> chlorine = tests.since("total-chlorine", began);
        int zeros = 0;
        for (int i = chlorine.size() - 1; i >= 0 && chlorine.get(i).value() <= LossFit.LEAST_READING_MG_L; i--) {
            zeros++;
        }
        return zeros;
    }

    /** Where it stands; null where there was no incident, or it began more than thirty days ago. */
    public @Nullable RecoveryView view(Instant at, double systemL) {
        String id = incident;
        if (id == null || at.isAfter(began.plus(Duration.ofDays(30)))) {
            return null;
        }
        boolean recovered = recovered(at);
        return new RecoveryView(
                id,
                began,
                recovered,
                words(at, recovered),
                recovered ? List.of() : schedule(at),
                stage,
                feedWords(at),
                Bacteria.judge(at, tests, feed, systemL).words());
    }

    private boolean recovered(Instant at) {
        Instant from = lastElevation();
        boolean week = !at.isBefore(from.plus(WEEK));
        return week
                && zeros() >= 2
                && tests.since("total-ammonia", from).size() >= FEWEST_TESTS
                && tests.since("nitrite", from).size() >= FEWEST_TESTS;
    }

    /** The latest elevated test, or the start. */
    private Instant lastElevation() {
        Instant last = began;
        for (String quantity : List.of("total-ammonia", "nitrite")) {
            for (Test test : tests.since(quantity, began)) {
                last = Bacteria.elevated(tests, quantity, test) && test.at().isAfter(last) ? test.at() : last;
            }
        }
        return last;
    }

    private String words(Instant at, boolean recovered) {
        if (recovered) {
            return "Recovered: a week without elevated ammonia or nitrite, tested, and chlorine gone.";
        }
        long day = Duration.between(began, at).toDays();
        Instant from = lastElevation();
        if (!at.isBefore(from.plus(WEEK))) {
            return "A week has passed, but tests are missing: whether it has recovered is not known.";
        }
        String since = from.equals(began)
                ? ""
                : ", elevated " + Duration.between(from, at).toDays() + " d ago";
        return "Day " + day + " after the incident" + since
                + "; it counts as recovered after a week without elevation.";
    }

    private List<DueTest> schedule(Instant at) {
        List<DueTest> due = new ArrayList<>();
        if (zeros() < 2) {
            due.add(every(at, "total-chlorine", Duration.ofHours(12), "until two tests in a row show none"));
        }
        due.add(every(at, "total-ammonia", DAY, "daily for a week"));
        due.add(every(at, "nitrite", DAY, "daily for a week"));
        due.add(onDays(at, "ph"));
        due.add(onDays(at, "alkalinity"));
        due.sort(Comparator.comparing(DueTest::dueAt).thenComparing(DueTest::quantity));
        return due;
    }

    private DueTest every(Instant at, String quantity, Duration every, String why) {
        List<Test> made = tests.since(quantity, began);
        Instant dueAt = made.isEmpty() ? began : made.get(made.size() - 1).at().plus(every);
        return new DueTest(quantity, dueAt, !at.isBefore(dueAt), why);
    }

    private DueTest onDays(Instant at, String quantity) {
        List<Test> made = tests.since(quantity, began);
        Instant last = made.isEmpty()
                ? began.minusSeconds(1)
                : made.get(made.size() - 1).at();
        for (int day : PH_DAYS) {
            Instant dueAt = began.plus(Duration.ofDays(day));
            if (last.isBefore(dueAt)) {
                return new DueTest(quantity, dueAt, !at.isBefore(dueAt), "at the start, after 1, 3 and 7 days");
            }
        }
        Instant dueAt = last.plus(WEEK);
        return new DueTest(quantity, dueAt, !at.isBefore(dueAt), "weekly");
    }

    private String feedWords(Instant at) {
        if (stage == FeedStage.FULL) {
            return "Feed as usual.";
        }
        String now = stage == FeedStage.HOLD
                ? "Feeding held"
                : String.format(Locale.ROOT, "Feed %.0f %% of the usual", 100 * stage.share());
        List<String> missing = missing(at);
        String next = missing.isEmpty()
                ? "next step a day after the last one, while tests stay good"
                : "next step waits for " + String.join(", ", missing);
        return now + "; " + next + ".";
    }
}
