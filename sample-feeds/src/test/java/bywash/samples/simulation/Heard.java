package bywash.samples.simulation;

import bywash.rules.event.OperatorEntry;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** Keeps what a simulated site told. */
final class Heard implements SiteSink {
    static final Instant START = Instant.parse("2026-05-04T04:00:00Z");

    final List<Double> sumpMm = new ArrayList<>();
    final List<Instant> sumpAt = new ArrayList<>();
    final List<OperatorEntry> entries = new ArrayList<>();
    int pumpTold;

    static SiteRun run(SiteModel model, List<Action> actions, long seed, Heard heard, double minutes) {
        SiteRun run = new SiteRun(model, actions, START, seed, heard);
        for (long s = 0; s < minutes * 60; s++) {
            run.step();
        }
        return run;
    }

    @Override
    public void level(String vessel, Instant at, double mm) {
        if (vessel.equals("sump")) {
            sumpMm.add(mm);
            sumpAt.add(at);
        }
    }

    @Override
    public void pump(Instant at, boolean on) {
        pumpTold++;
    }

    @Override
    public void entry(OperatorEntry entry) {
        entries.add(entry);
    }

    @Override
    public void quality(Instant at, WaterSample sample) {
        // levels are what these tests look at
    }
}
