package bywash.rules.chlorine;

import bywash.rules.detect.FlowFinding;
import bywash.rules.detect.FlowFinding.Part;
import bywash.rules.site.Mains;
import java.time.Instant;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

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
     * @param part what of it came from that reserve, by its own level, since it is not named any more; null while all may have
     */
    private record Named(
            Instant since,
            String source,
            String reserve,
            @Nullable Part part) {}

    /** What a flow brings, and what of it came from a reserve where the rest came from elsewhere; null without. */
    record Brought(Inflow inflow, @Nullable Inflow ofReserve) {}

    Brought brought(Instant at, String vessel, Instant since, FlowFinding finding) {
        Inflow whole = inflow(at, vessel, since, finding);
        Named name = named.get(vessel);
        Part part = name == null || !name.since.equals(since) ? null : name.part;
        ReserveBatch batch = part == null ? null : batches.get(part.reserve());
        if (part == null || batch == null) {
            return new Brought(whole, null);
        }
        Instant stopped = part.until();
        Instant until = stopped == null || stopped.isAfter(whole.until()) ? whole.until() : stopped;
        Litres lent = Litres.within(part.litres(), 2 * part.se(), whole.litres());
        Residual residual = batch.residual(at);
        Inflow ofReserve =
                new Inflow(since, until.isBefore(since) ? since : until, lent, 0, residual, residual, part.reserve());
        return new Brought(whole.with(since, whole.litres().less(lent)), ofReserve);
    }

    private Inflow inflow(Instant at, String vessel, Instant since, FlowFinding finding) {
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
            before = new Named(since, finding.source(), "", null);
        }
        if (finding.rateLMin() > 0 && finding.until() == null) {
            String reserve = batches.containsKey(finding.source()) ? finding.source() : before.reserve;
            Part part = finding.part();
            boolean named = part != null && part.reserve().equals(reserve) && !reserve.equals(finding.source());
            before = new Named(since, finding.source(), reserve, named ? part : null);
            this.named.put(vessel, before);
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
