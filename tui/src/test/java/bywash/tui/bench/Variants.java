package bywash.tui.bench;

import bywash.samples.simulation.BedModel;
import bywash.samples.simulation.ProbeModel;
import bywash.samples.simulation.SiteModel;
import java.util.LinkedHashMap;
import java.util.Map;

/** The sites that the benchmark runs on: the budget's two and what may differ from them. */
final class Variants {
    /** No siphons, 1.1 m2, noise 1.5 mm, a sample every 10 s. */
    static final SiteModel PLAIN = SiteModel.larkfield().withSump(1.1).withBeds(new BedModel(0, 12, 0, 0, false));

    /** Three beds of 60 to 95 L, drawn from the seed. */
    static final SiteModel THREE = PLAIN.withBeds(new BedModel(3, 12, 0.05, 0, true));

    private Variants() {}

    /** Every variant by its name, in the order of the table. */
    static Map<String, SiteModel> all() {
        Map<String, SiteModel> all = new LinkedHashMap<>();
        all.put("no siphons", PLAIN);
        all.put("no siphons, pump not told", PLAIN.withPumpProbe(false));
        all.put("no siphons, steps of 5 mm", PLAIN.withProbe(new ProbeModel(1.5, 10, 5, 0, 0)));
        all.put("no siphons, steps of 5 mm, noise 0.5 mm", PLAIN.withProbe(new ProbeModel(0.5, 10, 5, 0, 0)));
        all.put("no siphons, noise 6 mm every 20 s", PLAIN.withProbe(new ProbeModel(6, 20, 0.1, 0, 0)));
        all.put("no siphons, spikes, losses, drift", PLAIN.withProbe(new ProbeModel(1.5, 10, 1, 2, 0.01)));
        all.put("Larkfield", SiteModel.larkfield());
        all.put("three beds", THREE);
        all.put("three beds, pump not told", THREE.withPumpProbe(false));
        all.put("three beds, jitter 15 %", THREE.withBeds(new BedModel(3, 12, 0.15, 0, true)));
        all.put("three beds, a sample a minute", THREE.withProbe(new ProbeModel(1.5, 60, 0.1, 0, 0)));
        all.put("three beds, steps of 5 mm", THREE.withProbe(new ProbeModel(1.5, 10, 5, 0, 0)));
        all.put("three beds that fill in 30 min", THREE.withBeds(new BedModel(3, 30, 0.05, 0, true)));
        all.put("three beds, flow wanders 10 %", THREE.withBeds(new BedModel(3, 12, 0.05, 0.1, true)));
        all.put(
                "three beds, worn probe, flow wanders",
                THREE.withProbe(new ProbeModel(2, 10, 1, 3, 0.01))
                        .withBeds(new BedModel(3, 12, 0.05, 0.1, true))
                        .withEvaporation(2));
        all.put("one bed", PLAIN.withBeds(new BedModel(1, 10, 0.08, 0, true)));
        all.put("two beds", PLAIN.withBeds(new BedModel(2, 9, 0.08, 0, true)));
        all.put("six beds, 2 m2", PLAIN.withSump(2).withBeds(new BedModel(6, 15, 0.08, 0.03, true)));
        return all;
    }
}
