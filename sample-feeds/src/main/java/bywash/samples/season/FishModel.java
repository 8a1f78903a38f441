package bywash.samples.season;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** One cohort, fish by fish: each grows by its own thermal coefficient, less in water away from its best. */
final class FishModel {
    private final List<Double> roots = new ArrayList<>();
    private final List<Double> coefficients = new ArrayList<>();
    private final SplittableRandom random;

    FishModel(int count, double meanG, SplittableRandom random) {
        this.random = random;
        for (int i = 0; i < count; i++) {
            roots.add(Math.cbrt(meanG * Math.max(0.6, 1 + 0.14 * random.nextGaussian())));
            coefficients.add(Math.max(0.4, 0.88 * (1 + 0.16 * random.nextGaussian())));
        }
    }

    void day(double temperatureC, double fedShare) {
        double warm = Math.max(0, Math.min(1, (temperatureC - 17) / 9));
        for (int i = 0; i < roots.size(); i++) {
            double step = coefficients.get(i) * temperatureC / 1000 * warm * Math.min(1, fedShare);
            roots.set(i, roots.get(i) + step);
        }
    }

    int count() {
        return roots.size();
    }

    private double mass(int fish) {
        double root = roots.get(fish);
        return Math.round(root * root * root * 10) / 10.0;
    }

    double biomassG() {
        double sum = 0;
        for (int i = 0; i < roots.size(); i++) {
            sum += mass(i);
        }
        return sum;
    }

    void lose(int fish) {
        for (int i = 0; i < fish && !roots.isEmpty(); i++) {
            remove(random.nextInt(roots.size()));
        }
    }

    /** Masses of fish caught at random and put back. */
    List<Double> sample(int fish) {
        List<Integer> pool = new ArrayList<>();
        for (int i = 0; i < roots.size(); i++) {
            pool.add(i);
        }
        List<Double> masses = new ArrayList<>();
        while (masses.size() < fish && !pool.isEmpty()) {
            masses.add(mass(pool.remove(random.nextInt(pool.size()))));
        }
        return masses;
    }

    /** Takes the largest out; returns their masses. */
    List<Double> harvest(int fish) {
        List<Double> masses = new ArrayList<>();
        while (masses.size() < fish && !roots.isEmpty()) {
            int largest = 0;
            for (int i = 1; i < roots.size(); i++) {
                largest = roots.get(i) > roots.get(largest) ? i : largest;
            }
            masses.add(mass(largest));
            remove(largest);
        }
        return masses;
    }

    private void remove(int fish) {
        roots.remove(fish);
        coefficients.remove(fish);
    }
}
