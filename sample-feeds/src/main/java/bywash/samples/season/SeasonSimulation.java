package bywash.samples.season;

import bywash.ingest.recording.RecordedLine;
import bywash.rules.event.Appetite;
import bywash.rules.event.OperatorEntry.BatchFill;
import bywash.rules.event.OperatorEntry.Dose;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.FishIn;
import bywash.rules.event.OperatorEntry.FishLoss;
import bywash.rules.event.OperatorEntry.Harvest;
import bywash.rules.event.OperatorEntry.Note;
import bywash.rules.event.OperatorEntry.ProbeCare;
import bywash.rules.event.OperatorEntry.StockingChange;
import bywash.rules.event.OperatorEntry.TopUpEnd;
import bywash.rules.event.OperatorEntry.TopUpStart;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.event.OperatorEntry.Weigh;
import bywash.rules.site.Stocking;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/** The invented season: fishless start, one cohort to harvest, a second one in autumn, beds, doses, care, and three bad days. */
public final class SeasonSimulation {
    private static final LocalDate START = LocalDate.parse("2026-03-01");
    private static final int DAYS = 245;
    private static final int FISH_DAY = 27;
    private static final int AUTUMN_DAY = 185;
    private static final double PROTEIN = 0.32;
    private static final double DOSE_N_SHARE = 0.2619;
    private static final Set<Integer> PH_CARE = Set.of(0, 30, 61, 105, 135, 165, 196, 226);
    private static final Set<Integer> OXYGEN_CARE = Set.of(0, 32, 62, 93, 150, 181, 212);

    private final SplittableRandom random;
    private final Diary diary = new Diary();
    private final WaterModel water;
    private final BedModel beds;
    private final ProbeModel probes = new ProbeModel();
    private @Nullable FishModel spring;
    private @Nullable FishModel autumn;

    public SeasonSimulation(long seed) {
        random = new SplittableRandom(seed);
        water = new WaterModel(random.split());
        beds = new BedModel(random.split());
    }

    /** All lines, in order of time. */
    public List<RecordedLine> lines() {
        for (int number = 0; number < DAYS; number++) {
            day(START.plusDays(number), number);
        }
        return diary.inOrder();
    }

    private void day(LocalDate day, int number) {
        if (number == 0) {
            diary.enter(new StockingChange(Diary.at(day, 8, 0), Stocking.FISHLESS));
            beds.begin(day, diary);
        }
        double doseN = number < FISH_DAY ? feedBacteria(day, number) : 0;
        fish(day, number);
        double feedG = number < FISH_DAY ? 0 : feed(day, number);
        beds.day(day, number, diary);
        double mainsL = topUp(day, number);
        care(day, number);
        tests(day, number);
        water.oxygenTrouble(number == 156 || number == 157 ? 3.4 : 0);
        water.day(feedG, doseN, beds.uptakeN(), mainsL);
        base(day, number);
        readings(day, number);
        probes.day();
    }

    private double feedBacteria(LocalDate day, int number) {
        if (number % 2 != 0) {
            return 0;
        }
        double tan = water.test(water.tanMgL(), 0.1);
        diary.enter(new WaterTest(Diary.at(day, 9, 0), "fish-tank", "total-ammonia", tan));
        diary.enter(new WaterTest(Diary.at(day, 9, 5), "fish-tank", "nitrite", water.test(water.nitriteMgL(), 0.1)));
        if (tan >= 1) {
            return 0;
        }
        double grams = Math.round((2 - tan) * 2.4 / DOSE_N_SHARE * 10) / 10.0;
        diary.enter(new Dose(Diary.at(day, 9, 30), "sump", "ammonium-chloride", grams));
        return grams * DOSE_N_SHARE;
    }

    private void fish(LocalDate day, int number) {
        if (number == FISH_DAY) {
            spring = new FishModel(80, 35, random.split());
            diary.enter(new StockingChange(Diary.at(day, 7, 0), Stocking.FISH));
            diary.enter(new FishIn(Diary.at(day, 7, 5), "spring", "nile-tilapia", 80, 35, "fish-tank"));
        }
        if (number == AUTUMN_DAY) {
            autumn = new FishModel(60, 25, random.split());
            diary.enter(new FishIn(Diary.at(day, 7, 5), "autumn", "nile-tilapia", 60, 25, "fish-tank"));
        }
        FishModel first = spring;
        if (first != null) {
            lose(first, day, number);
            weigh("spring", first, day, number - FISH_DAY);
            harvest(first, day, number);
        }
        if (autumn != null) {
            weigh("autumn", autumn, day, number - AUTUMN_DAY);
        }
    }

    private void lose(FishModel fish, LocalDate day, int number) {
        int lost = number == 44 ? 1 : number == 90 ? 2 : number == 158 ? 3 : 0;
        if (lost > 0) {
            fish.lose(lost);
            String cause = number == 90 ? "jumped" : number == 158 ? "low oxygen" : "found dead";
            diary.enter(new FishLoss(Diary.at(day, 8, 10), "spring", lost, cause));
        }
    }

    private void weigh(String cohort, FishModel fish, LocalDate day, int age) {
        if (age > 0 && age % 28 == 21 && fish.count() > 0) {
            List<Double> masses = fish.sample(20);
            double total = masses.stream().mapToDouble(Double::doubleValue).sum();
            diary.enter(new Weigh(Diary.at(day, 7, 30), cohort, false, masses.size(), total, masses));
        }
    }

    private void harvest(FishModel fish, LocalDate day, int number) {
        if (number == 168 || number == 203) {
            List<Double> masses = fish.harvest(20);
            diary.enter(new Harvest(Diary.at(day, 7, 40), "spring", masses.size(), masses));
        } else if (number == 238) {
            int count = fish.count();
            List<Double> masses = fish.harvest(count);
            double total =
                    Math.round(masses.stream().mapToDouble(Double::doubleValue).sum());
            diary.enter(new Harvest(Diary.at(day, 7, 40), "spring", count, masses.subList(8, 20), total));
        }
    }

    private double feed(LocalDate day, int number) {
        boolean poor = number >= 156 && number <= 160 || random.nextInt(40) == 0;
        Appetite appetite = poor ? Appetite.POOR : number % 7 == 0 ? Appetite.EAGER : null;
        double temperature = water.temperatureC(number + 60, 12);
        double all = feed("spring", spring, temperature, poor, day, appetite);
        return all + feed("autumn", autumn, temperature, poor, day, null);
    }

    private double feed(
            String cohort,
            @Nullable FishModel fish,
            double temperatureC,
            boolean poor,
            LocalDate day,
            @Nullable Appetite appetite) {
        if (fish == null || fish.count() == 0) {
            return 0;
        }
        double warm = Math.max(0, Math.min(1, (temperatureC - 17) / 10));
        double mean = fish.biomassG() / fish.count();
        double share = mean < 50 ? 0.029 : mean < 150 ? 0.02 : 0.0145;
        double plan = fish.biomassG() * share * warm;
        double fed = Math.round(poor ? plan / 2 : plan);
        fish.day(temperatureC, plan > 0 ? fed / plan : 0);
        diary.enter(new Feed(Diary.at(day, 8, cohort.equals("spring") ? 30 : 40), fed, PROTEIN, cohort, appetite));
        return fed;
    }

    private double topUp(LocalDate day, int number) {
        if (number % 7 == 5) {
            diary.enter(new BatchFill(Diary.at(day, 18, 0), "reserve", 180));
        }
        if (number % 7 != 1 && number % 7 != 4) {
            return 0;
        }
        if (number % 7 == 1) {
            diary.enter(new WaterTest(Diary.at(day, 9, 30), "reserve", "total-chlorine", 0));
        }
        diary.enter(new TopUpStart(Diary.at(day, 10, 0), "sump", "reserve", 80, Duration.ofMinutes(20)));
        diary.enter(new TopUpEnd(Diary.at(day, 10, 20), "sump"));
        return 80;
    }

    private void care(LocalDate day, int number) {
        if (PH_CARE.contains(number)) {
            probes.calibratePh(day, diary);
        }
        if (number == 150) {
            diary.enter(new ProbeCare(Diary.at(day, 15, 30), "fish-do", "new membrane"));
        }
        if (OXYGEN_CARE.contains(number)) {
            probes.calibrateOxygen(day, diary);
        }
    }

    private void tests(LocalDate day, int number) {
        if (number % 7 != 2) {
            return;
        }
        diary.enter(test(day, 0, "ph", Math.round(water.ph() * 10) / 10.0));
        if (number >= FISH_DAY) {
            diary.enter(test(day, 5, "total-ammonia", water.test(water.tanMgL(), 0.05)));
            diary.enter(test(day, 10, "nitrite", water.test(water.nitriteMgL(), 0.05)));
        }
        diary.enter(test(day, 15, "nitrate", water.test(water.nitrateMgL(), 5)));
        diary.enter(test(day, 20, "alkalinity", water.test(water.alkalinityMgL(), 5)));
    }

    private static WaterTest test(LocalDate day, int minute, String quantity, double value) {
        return new WaterTest(Diary.at(day, 9, 10 + minute), "fish-tank", quantity, value);
    }

    /** Bicarbonate when the alkalinity is low; none in ten days of June, when nobody was there to give it. */
    private void base(LocalDate day, int number) {
        boolean away = number >= 98 && number < 112;
        if (number == 98) {
            diary.enter(new Note(Diary.at(day, 18, 0), "away for two weeks; neighbour feeds"));
        }
        if (!away && number % 2 == 0 && water.alkalinityMgL() < 58) {
            water.bicarbonate(150);
            diary.enter(new Dose(Diary.at(day, 18, 30), "sump", "potassium-bicarbonate", 150));
        }
    }

    private void readings(LocalDate day, int number) {
        for (int hour : new int[] {3, 15}) {
            double temperature = water.temperatureC(number + 60, hour);
            String ph = water.number(water.ph() + probes.phError(), 0.02, 3);
            String senml = "[{\"bn\":\"larkfield:fish:\",\"n\":\"ph\",\"u\":\"pH\",\"v\":" + ph
                    + "},{\"n\":\"temperature\",\"u\":\"Cel\",\"v\":" + water.number(temperature, 0.05, 2) + "}]";
            diary.message(Diary.at(day, hour, 0), "larkfield/fish", senml);
            double oxygen = water.oxygenMgL(number + 60, hour) * probes.oxygenShare();
            diary.message(
                    Diary.at(day, hour, 0),
                    "larkfield/do",
                    "{\"oxygen\":{\"mgl\":" + water.number(oxygen, 0.05, 2) + "}}");
            if (number < 190 || number > 192) {
                diary.message(Diary.at(day, hour, 0), "larkfield/orp", water.number(318, 5, 1));
            }
        }
    }
}
