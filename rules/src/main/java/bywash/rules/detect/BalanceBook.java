package bywash.rules.detect;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Keeps the hourly balance of each vessel and of all together, with what was declared. Minutes of the balance. */
final class BalanceBook {
    private static final double KEPT_MIN = 120;
    private static final double FILLING_MIN = 120;
    private static final double FOUND_WITHIN_MIN = 30;

    private final Map<String, VesselFlow> flows;
    private final ArrayDeque<Declared> declared = new ArrayDeque<>();
    private final Map<String, Filling> fillings = new LinkedHashMap<>();
    private @Nullable TopUpWatch watch;
    private double bookedL;

    /** So many litres in, as declared, at that minute. */
    private record Declared(double tMin, String vessel, double litres) {}

    /** A reserve that is being filled: up to so many litres of its rise are declared. */
    private record Filling(double fromMin, double fromL, double mostL, double bookedL) {}

    BalanceBook(Map<String, VesselFlow> flows) {
        this.flows = flows;
    }

    /** A vessel is being filled with that many litres from now on. */
    void filling(String vessel, double nowMin, double litres) {
        VesselFlow flow = flows.get(vessel);
        if (flow != null && !Double.isNaN(flow.volumeL())) {
            fillings.put(vessel, new Filling(nowMin, flow.volumeL(), litres, 0));
        }
    }

    /** Books what has come in as declared since the last tick. */
    void tick(double nowMin, @Nullable TopUpWatch topUp) {
        while (!declared.isEmpty() && declared.getFirst().tMin() < nowMin - KEPT_MIN) {
            declared.removeFirst();
        }
        if (topUp != null) {
            if (topUp != watch) {
                watch = topUp;
                bookedL = 0;
            }
            double entered = StrictMath.min(topUp.enteredL(), topUp.plannedL());
            book(nowMin, topUp.vessel(), entered - bookedL);
            book(nowMin, topUp.source(), bookedL - entered);
            bookedL = entered;
        }
        fillings.replaceAll((vessel, filling) -> filled(vessel, filling, nowMin));
        fillings.values().removeIf(f -> nowMin - f.fromMin() > FILLING_MIN || f.bookedL() >= f.mostL());
    }

    private Filling filled(String vessel, Filling f, double nowMin) {
        VesselFlow flow = flows.get(vessel);
        double rise = flow == null ? 0 : flow.volumeL() - f.fromL();
        double total = StrictMath.max(f.bookedL(), StrictMath.min(f.mostL(), rise));
        book(nowMin, vessel, total - f.bookedL());
        return new Filling(f.fromMin(), f.fromL(), f.mostL(), total);
    }

    private void book(double nowMin, String vessel, double litres) {
        if (litres != 0 && flows.containsKey(vessel)) {
            declared.addLast(new Declared(nowMin, vessel, litres));
        }
    }

    private double declaredL(String vessel, double fromMin, double toMin) {
        double total = 0;
        for (Declared each : declared) {
            if (each.vessel().equals(vessel) && each.tMin() > fromMin && each.tMin() <= toMin) {
                total += each.litres();
            }
        }
        return total;
    }

    /** A line for each vessel, and one for all where there are several. */
    List<BalanceLine> lines(double nowMin) {
        List<BalanceLine> lines = new ArrayList<>();
        for (Map.Entry<String, VesselFlow> entry : flows.entrySet()) {
            HourlyChange hour = entry.getValue().hour();
            double to = nowMin - hour.middleMin();
            lines.add(new BalanceLine(
                    entry.getKey(),
                    entry.getValue().volumeL(),
                    hour.changeL(),
                    declaredL(entry.getKey(), to - HourlyChange.APART_MIN, to),
                    hour.usualL(),
                    hour.seL(),
                    entry.getValue().findsLMin(FOUND_WITHIN_MIN)));
        }
        if (lines.size() > 1) {
            lines.add(together(lines));
        }
        return lines;
    }

    private static BalanceLine together(List<BalanceLine> lines) {
        double variance = 0;
        double litres = 0;
        double change = 0;
        double known = 0;
        double usual = 0;
        double finds = 0;
        for (BalanceLine each : lines) {
            litres += each.litres();
            change += each.changeL();
            known += each.declaredL();
            usual += each.usualL();
            variance += each.seL() * each.seL();
            finds = StrictMath.max(finds, each.findsLMin());
        }
        double se = StrictMath.sqrt(variance);
        return new BalanceLine(BalanceLine.SYSTEM, litres, change, known, usual, se, finds);
    }
}
