package bywash.samples.season;

import bywash.rules.event.OperatorEntry.BedState;
import bywash.rules.event.OperatorEntry.CropHarvest;
import bywash.rules.event.OperatorEntry.Plant;
import java.time.LocalDate;
import java.util.SplittableRandom;

/** The three beds: lettuce cut every five weeks, tomato from April, basil cut every two weeks until a rest. */
final class BedModel {
    private static final double BED_M2 = 1.2;
    private static final LocalDate REST = LocalDate.parse("2026-08-20");
    private static final LocalDate BACK = LocalDate.parse("2026-09-05");

    private final SplittableRandom random;
    private boolean tomato;
    private boolean basil = true;

    BedModel(SplittableRandom random) {
        this.random = random;
    }

    void begin(LocalDate day, Diary diary) {
        diary.enter(new Plant(Diary.at(day, 10, 0), "bed-1", "lettuce", BED_M2));
        diary.enter(new Plant(Diary.at(day, 10, 10), "bed-3", "basil", BED_M2));
    }

    void day(LocalDate day, int number, Diary diary) {
        if (number > 0 && number % 35 == 0) {
            double mass = Math.round((3.4 + 0.3 * random.nextGaussian()) * BED_M2 * 100) * 10.0;
            diary.enter(new CropHarvest(Diary.at(day, 11, 0), "bed-1", "lettuce", mass, BED_M2));
            diary.enter(new Plant(Diary.at(day, 14, 0), "bed-1", "lettuce", BED_M2));
        }
        if (number == 50) {
            tomato = true;
            diary.enter(new Plant(Diary.at(day, 10, 30), "bed-2", "tomato", BED_M2));
        }
        if (number >= 115 && number < 230 && number % 7 == 3) {
            double mass = Math.round((0.95 + 0.15 * random.nextGaussian()) * 100) * 10.0;
            diary.enter(new CropHarvest(Diary.at(day, 9, 0), "bed-2", "tomato", mass, 0));
        }
        if (basil && number > 20 && number % 14 == 6) {
            double mass = Math.round((0.55 + 0.08 * random.nextGaussian()) * 100) * 10.0;
            diary.enter(new CropHarvest(Diary.at(day, 9, 30), "bed-3", "basil", mass, 0));
        }
        if (day.equals(REST)) {
            basil = false;
            diary.enter(new CropHarvest(Diary.at(day, 9, 0), "bed-3", "basil", 820, BED_M2));
            diary.enter(new BedState(Diary.at(day, 9, 20), "bed-3", false));
        }
        if (day.equals(BACK)) {
            basil = true;
            diary.enter(new BedState(Diary.at(day, 9, 0), "bed-3", true));
            diary.enter(new Plant(Diary.at(day, 9, 10), "bed-3", "basil", BED_M2));
        }
    }

    /** Nitrogen that the plants take in a day, g. */
    double uptakeN() {
        return 0.3 * BED_M2 + (tomato ? 0.55 * BED_M2 : 0) + (basil ? 0.45 * BED_M2 : 0);
    }
}
