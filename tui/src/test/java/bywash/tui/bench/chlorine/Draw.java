package bywash.tui.bench.chlorine;

import bywash.samples.simulation.Action;
import bywash.samples.simulation.SiteModel;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * One incident drawn from a population of sites and causes, so that a chance that is said can be held against how often it comes
 * true. What is drawn, and from what:
 *
 * <ul>
 *   <li>loss of chlorine in the system: evenly in the logarithm, 0.02 to 2 1/h. 0.02 to 0.74 is the bulk decay of 200 bottle tests
 *       (Powell et al. 2000, Urban Water; from memory); the US EPA Water Treatment Plant model, version 2, gives 0.03 (2 mg/L, 20
 *       Cel, organic carbon 1.5 mg/L). Walls and biofilm add to it: no source, hence up to 2.
 *   <li>what the site file says of the mains: 0.2 to 2 mg/L, evenly in the logarithm (usual in distribution; from memory), and what
 *       it carries that day: 0.5 to 1.5 of that, evenly. No source.
 *   <li>what the file says of the fish tank's volume: up to a tenth out. No source.
 *   <li>the probe's response: {@link OrpResponse}. No source.
 *   <li>the cause: mains water eight times in ten, rain or water that has stood once in ten each; the potential silent once in five, else fouled three times in twenty.
 *       Assumed.
 * </ul>
 */
record Draw(
        long seed,
        double lossPerH,
        double statedMgL,
        double carriesMgL,
        double tankFileL,
        double rateLMin,
        double minutes,
        Cause cause,
        OrpResponse.Fault fault) {
    static final double AT_MIN = 240;
    private static final int LENGTH_MIN = 480;
    private static final double TANK_L = 1500;

    /** What water it is. */
    enum Cause {
        MAINS,
        RAIN,
        /** Mains water that has stood: up to half of what the mains carries is left in it. */
        STOOD
    }

    static Draw of(long seed) {
        SplittableRandom random = new SplittableRandom(seed * 104_729 + 17);
        double stated = logEven(random, 0.2, 2);
        return new Draw(
                seed,
                logEven(random, 0.02, 2),
                stated,
                stated * (0.5 + random.nextDouble()),
                TANK_L * (0.9 + 0.2 * random.nextDouble()),
                2 + 4 * random.nextDouble(),
                15 + 35 * random.nextDouble(),
                cause(random),
                fault(random));
    }

    private static OrpResponse.Fault fault(SplittableRandom random) {
        boolean silent = random.nextDouble() < 0.2;
        boolean fouled = random.nextDouble() < 0.15;
        return silent ? OrpResponse.Fault.SILENT : fouled ? OrpResponse.Fault.FOULED : OrpResponse.Fault.NONE;
    }

    private static Cause cause(SplittableRandom random) {
        double share = random.nextDouble();
        return share < 0.1 ? Cause.RAIN : share < 0.2 ? Cause.STOOD : Cause.MAINS;
    }

    private static double logEven(SplittableRandom random, double low, double high) {
        return low * Math.pow(high / low, random.nextDouble());
    }

    /** The incident, yet to be played. */
    Trial trial() {
        double until = AT_MIN + minutes;
        double left = new SplittableRandom(seed).nextDouble() / 2;
        Action flow = switch (cause) {
            case MAINS -> new Action.InflowIntoSump(AT_MIN, until, rateLMin, carriesMgL);
            case RAIN -> new Action.RainIntoSump(AT_MIN, until, rateLMin);
            case STOOD -> new Action.InflowIntoSump(AT_MIN, until, rateLMin, carriesMgL * left);
        };
        Map<String, String> file = Map.of(
                "residual: 0.9 mg/L", String.format(Locale.ROOT, "residual: %.2f mg/L", statedMgL),
                "volume: 1500 L", String.format(Locale.ROOT, "volume: %.0f L", tankFileL));
        return new Trial(
                SiteModel.larkfield().withChlorineLoss(lossPerH),
                file,
                List.of(flow),
                LENGTH_MIN,
                seed,
                new OrpResponse(new SplittableRandom(seed + 7919), fault, AT_MIN - 5));
    }
}
