package bywash.samples.simulation;

import bywash.rules.event.OperatorEntry;
import java.time.Instant;

/** Takes what a simulated site tells, in order of time. */
public interface SiteSink {
    /** A level reading of {@code sump} or {@code reserve}, mm above the floor. */
    void level(String vessel, Instant at, double mm);

    /** The pump's state, where it is told. */
    void pump(Instant at, boolean on);

    void entry(OperatorEntry entry);

    /** The fish tank's probes are due. */
    void quality(Instant at, WaterSample sample);

    /** The fish tank's payloads; each call draws new noise. */
    interface WaterSample {
        String senml();

        String oxygen();

        String orp();
    }
}
