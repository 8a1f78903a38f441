package bywash.rules.chlorine;

import bywash.rules.detect.FlowFinding;
import bywash.rules.site.Mains;
import java.time.Instant;
import java.util.Map;
import java.util.TreeMap;

/** What a found flow brings: its litres as its alarm has them, and what its source makes of them. */
final class FlowSources {
    private final Mains mains;
    private final Map<String, ReserveBatch> batches;
    private final TreeMap<String, Named> named = new TreeMap<>();

    /** @param batches by reserve; read, never changed */
    FlowSources(Mains mains, Map<String, ReserveBatch> batches) {
        this.mains = mains;
        this.batches = batches;
    }

    /**
     * Where a flow comes from.
     *
     * @param source as it was named last
     * @param reserve that was named at all; empty where none was
     */
    private record Named(Instant since, String source, String reserve) {}

    Inflow inflow(Instant at, String vessel, Instant since, FlowFinding finding) {
        Litres litres = Litres.of(finding.moved());
        double rate = StrictMath.max(0, finding.rateLMin());
        String source = source(vessel, since, finding);
        ReserveBatch batch = batches.get(source);
        Residual ifMains = batch != null ? batch.residual(at) : Residual.ofMains(mains);
        Residual ifOther = batch != null ? ifMains : other(at, vessel, since);
        Instant over = finding.until();
        Instant until = over == null || over.isBefore(since) ? at : over;
        return new Inflow(since, until, litres, rate, ifMains, ifOther, source);
    }

    /** The last figures of a flow, when it is over, name no source any more: the one that was named while it ran holds. */
    private String source(String vessel, Instant since, FlowFinding finding) {
        Named before = named.get(vessel);
        if (before == null || !before.since.equals(since)) {
            before = new Named(since, finding.source(), "");
        }
        if (finding.rateLMin() > 0 && finding.until() == null) {
            String reserve = batches.containsKey(finding.source()) ? finding.source() : before.reserve;
            before = new Named(since, finding.source(), reserve);
            named.put(vessel, before);
        }
        return before.source;
    }

    /** A reserve that was named as the source of this flow, and no longer is for sure, is what it may be if it is not mains water. */
    private Residual other(Instant at, String vessel, Instant since) {
        Named before = named.get(vessel);
        ReserveBatch batch = before == null || !before.since.equals(since) ? null : batches.get(before.reserve);
        return batch == null ? Residual.ofOtherWater(mains) : batch.residual(at);
    }
}
