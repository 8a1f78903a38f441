package bywash.rules.detect;

import bywash.rules.detect.PastFlows.Past;
import java.time.Instant;
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
    private final ArrayDeque<Declared> beyond = new ArrayDeque<>();
    private final Map<String, Filling> fillings = new LinkedHashMap<>();
    private @Nullable TopUpWatch watch;
    private double bookedL;
    private double beyondL;

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
        if (flow != null && !Double.isNaN(flow.views().volumeL())) {
            fillings.put(vessel, new Filling(nowMin, flow.views().volumeL(), litres, 0));
        }
    }

    /** Books what has come in as declared since the last tick. */
    void tick(double nowMin, @Nullable TopUpWatch topUp) {
        forget(declared, nowMin);
        forget(beyond, nowMin);
        if (topUp != null) {
            if (topUp != watch) {
                watch = topUp;
                bookedL = 0;
                beyondL = 0;
            }
            double entered = StrictMath.min(topUp.enteredL(), topUp.plannedL());
            book(nowMin, topUp.vessel(), entered - bookedL);
            book(nowMin, topUp.source(), bookedL - entered);
            bookedL = entered;
            double more = StrictMath.max(0, topUp.enteredL() - topUp.plannedL()) + topUp.openL(nowMin);
            if (topUp.line() != TopUpWatch.Line.SHUT) {
                put(beyond, nowMin, topUp.vessel(), more - beyondL);
                put(beyond, nowMin, topUp.source(), beyondL - more);
                beyondL = more;
            }
        }
        fillings.replaceAll((vessel, filling) -> filled(vessel, filling, nowMin));
        fillings.values().removeIf(f -> nowMin - f.fromMin() > FILLING_MIN + KEPT_MIN);
    }

    private Filling filled(String vessel, Filling f, double nowMin) {
        VesselFlow flow = flows.get(vessel);
        if (nowMin - f.fromMin() > FILLING_MIN) {
            return f;
        }
        double rise = flow == null ? 0 : flow.views().volumeL() - f.fromL();
        double total = StrictMath.max(f.bookedL(), StrictMath.min(f.mostL(), rise));
        book(nowMin, vessel, total - f.bookedL());
        return new Filling(f.fromMin(), f.fromL(), f.mostL(), total);
    }

    private static void forget(ArrayDeque<Declared> booked, double nowMin) {
        while (!booked.isEmpty() && booked.getFirst().tMin() < nowMin - KEPT_MIN) {
            booked.removeFirst();
        }
    }

    private void book(double nowMin, String vessel, double litres) {
        put(declared, nowMin, vessel, litres);
    }

    private void put(ArrayDeque<Declared> booked, double nowMin, String vessel, double litres) {
        if (litres != 0 && flows.containsKey(vessel)) {
            booked.addLast(new Declared(nowMin, vessel, litres));
        }
    }

    private static double shownL(ArrayDeque<Declared> booked, String vessel, HourlyChange hour) {
        double total = 0;
        for (Declared each : booked) {
            if (each.vessel().equals(vessel)) {
                total += each.litres() * hour.share(each.tMin());
            }
        }
        return total;
    }

    /** Undeclared water of a vessel, the running flow last. */
    private List<Past> found(String vessel, VesselFlow flow, double nowMin) {
        List<Past> found = new ArrayList<>();
        flow.pasts().forEach(found::add);
        if (flow.undeclared()) {
            found.add(flow.moved(nowMin));
        }
        found.removeIf(p -> p.untilMin() < nowMin - KEPT_MIN
                || p.litres() > 0 && fillings.containsKey(vessel)
                || ofOpenLine(p, vessel));
        return found;
    }

    /** What ran on after the last top-up is booked with the line, for both of its ends. */
    private boolean ofOpenLine(Past p, String vessel) {
        TopUpWatch topUp = watch;
        boolean end = topUp != null && (vessel.equals(topUp.vessel()) || vessel.equals(topUp.source()));
        return topUp != null && end && topUp.ranOn(p.fromMin(), p.untilMin());
    }

    private static double shownL(Past past, HourlyChange hour) {
        double minutes = past.untilMin() - past.fromMin();
        int pieces = (int) StrictMath.max(1, StrictMath.min(400, StrictMath.ceil(minutes)));
        double shown = 0;
        for (int i = 0; i < pieces; i++) {
            shown += hour.share(past.fromMin() + minutes * (i + 0.5) / pieces) / pieces;
        }
        return past.litres() * shown;
    }

    /** A line for each vessel, and one for all where there are several. */
    List<BalanceLine> lines(Instant start, double nowMin) {
        List<BalanceLine> lines = new ArrayList<>();
        flows.forEach((vessel, flow) -> lines.add(line(vessel, flow, start, nowMin)));
        if (lines.size() > 1) {
            lines.add(together(lines));
        }
        return lines;
    }

    private BalanceLine line(String vessel, VesselFlow flow, Instant start, double nowMin) {
        HourlyChange hour = flow.views().hour();
        double foundL = shownL(beyond, vessel, hour);
        double declaredL = shownL(declared, vessel, hour);
        double foundSe = watch == null || declaredL == 0 ? 0 : watch.bookedSeL(vessel);
        Past last = null;
        for (Past each : found(vessel, flow, nowMin)) {
            double shown = shownL(each, hour);
            foundL += shown;
            double share = each.litres() == 0 ? 0 : shown / each.litres();
            foundSe = StrictMath.hypot(foundSe, share * each.seL());
            last = each;
        }
        return new BalanceLine(
                vessel,
                flow.views().volumeL(),
                hour.changeL(),
                declaredL,
                foundL,
                hour.usualL(),
                StrictMath.hypot(hour.seL(), foundSe),
                flow.views().findsLMin(FOUND_WITHIN_MIN),
                last == null ? null : moved(last, flow, start),
                flow.views().ranOver(nowMin));
    }

    private static Moved moved(Past last, VesselFlow flow, Instant start) {
        boolean runs = flow.undeclared() && Double.isNaN(flow.endMin()) && last.fromMin() == flow.onsetMin();
        return new Moved(
                at(start, last.fromMin()), runs ? null : at(start, last.untilMin()), last.litres(), last.seL());
    }

    private static Instant at(Instant start, double minutes) {
        return start.plusSeconds(StrictMath.round(minutes * 60));
    }

    private static BalanceLine together(List<BalanceLine> lines) {
        boolean over = false;
        double variance = 0;
        double litres = 0;
        double change = 0;
        double known = 0;
        double found = 0;
        double usual = 0;
        double finds = 0;
        for (BalanceLine each : lines) {
            litres += each.litres();
            change += each.changeL();
            known += each.declaredL();
            found += each.foundL();
            usual += each.usualL();
            over |= each.ranOver();
            variance += each.seL() * each.seL();
            finds = StrictMath.max(finds, each.findsLMin());
        }
        double se = StrictMath.sqrt(variance);
        return new BalanceLine(BalanceLine.SYSTEM, litres, change, known, found, usual, se, finds, null, over);
    }
}
