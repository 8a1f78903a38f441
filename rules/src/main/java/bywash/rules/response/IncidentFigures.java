package bywash.rules.response;

import bywash.rules.chlorine.ResidualEstimate;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What readings have added to an incident: what its alarm lines and the entries do not tell, and a restart has to be told.
 *
 * @param incident its id
 * @param peak the highest likely residual so far; null before its first moment
 * @param water what moved, by vessel and onset
 * @param sheet null before it was first written
 */
public record IncidentFigures(
        String incident,
        @Nullable Peak peak,
        List<WaterRun> water,
        @Nullable Written sheet) {
    public IncidentFigures {
        water = List.copyOf(water);
    }

    /**
     * The residual of the system at its highest, as it was estimated then, total residual chlorine in ug/L.
     *
     * @param lowUgL low end of its range
     * @param highUgL high end of its range
     * @param probability that the acute criterion was passed, 0 to 1
     * @param acuteUgL that criterion
     */
    public record Peak(
            Instant at, double lowUgL, double likelyUgL, double highUgL, double probability, double acuteUgL) {
        static Peak of(ResidualEstimate estimate, Instant at) {
            return new Peak(
                    at,
                    estimate.lowUgL(),
                    estimate.likelyUgL(),
                    estimate.highUgL(),
                    estimate.probability(),
                    estimate.acute().limitUgL());
        }
    }

    /**
     * The parts of a sheet that come of readings.
     *
     * @param steps without ticks
     */
    public record Written(
            Instant asOf, List<String> water, List<String> residual, List<String> rulesOut, List<SheetStep> steps) {
        public Written {
            water = List.copyOf(water);
            residual = List.copyOf(residual);
            rulesOut = List.copyOf(rulesOut);
            steps = List.copyOf(steps);
        }
    }
}
