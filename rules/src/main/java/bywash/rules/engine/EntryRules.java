package bywash.rules.engine;

import bywash.rules.alarm.AlarmBoard;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.Condition;
import bywash.rules.chlorine.ReserveBatch;
import bywash.rules.chlorine.ResidualTracker;
import bywash.rules.chlorine.Treatment;
import bywash.rules.detect.TopUp;
import bywash.rules.detect.WaterBalance;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Acknowledge;
import bywash.rules.event.OperatorEntry.BatchFill;
import bywash.rules.event.OperatorEntry.BatchTreat;
import bywash.rules.event.OperatorEntry.Dose;
import bywash.rules.event.OperatorEntry.MaintenanceEnd;
import bywash.rules.event.OperatorEntry.MaintenanceStart;
import bywash.rules.event.OperatorEntry.OutOfService;
import bywash.rules.event.OperatorEntry.ReturnToService;
import bywash.rules.event.OperatorEntry.Shelve;
import bywash.rules.event.OperatorEntry.StockingChange;
import bywash.rules.event.OperatorEntry.TopUpEnd;
import bywash.rules.event.OperatorEntry.TopUpStart;
import bywash.rules.event.OperatorEntry.Unshelve;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.husbandry.season.SeasonLedger;
import bywash.rules.site.Stocking;
import bywash.rules.text.Figures;
import bywash.rules.water.Dechlorinator;
import bywash.rules.water.LabelStrength;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** What each operator entry changes. Entries that only stand on record change nothing here. */
final class EntryRules {
    /** Upper limit for nitrite with fish, mg/L. FAO Technical Paper 589 (2014), table 3.1, warm water, read in a public copy. */
    private static final double NITRITE_MG_L = 1.0;

    private final AlarmBoard board;
    private final Suppression suppression;
    private final WaterBalance balance;
    private final ResidualTracker residual;
    private final NitrogenRules nitrogen;
    private final TreeMap<String, Instant> tested = new TreeMap<>();

    EntryRules(
            AlarmBoard board,
            Suppression suppression,
            WaterBalance balance,
            ResidualTracker residual,
            NitrogenRules nitrogen) {
        this.board = board;
        this.suppression = suppression;
        this.balance = balance;
        this.residual = residual;
        this.nitrogen = nitrogen;
    }

    /** Applies the entry and returns the stocking from here on. */
    Stocking apply(OperatorEntry entry, Stocking stocking) {
        switch (entry.kind()) {
            case TOP_UP_START -> balance.topUpStarted((TopUpStart) entry);
            case TOP_UP_END -> {
                balance.topUpEnded((TopUpEnd) entry);
                released();
            }
            case BATCH_FILL -> filled((BatchFill) entry);
            case BATCH_TREAT -> treat((BatchTreat) entry);
            case DOSE -> dosed((Dose) entry);
            case TEST -> test((WaterTest) entry);
            case ACKNOWLEDGE -> board.acknowledge((Acknowledge) entry);
            case SHELVE -> board.shelve((Shelve) entry);
            case UNSHELVE -> board.unshelve((Unshelve) entry);
            case MAINTENANCE_START -> suppression.started((MaintenanceStart) entry);
            case MAINTENANCE_END -> suppression.ended((MaintenanceEnd) entry);
            case OUT_OF_SERVICE -> board.removeFromService((OutOfService) entry);
            case RETURN_TO_SERVICE -> board.returnToService((ReturnToService) entry);
            case STOCKING -> {
                return ((StockingChange) entry).stocking();
            }
            case FEED, FISH_IN, HARVEST, WEIGH, FISH_LOSS, FISH_MOVE, PLANT, CROP_HARVEST, BED, PH_PLAN -> {
                // the season's books
            }
            case CALIBRATE, PROBE_CARE, NOTE, STEP_DONE, WITHDRAW -> {
                // the books of the probes, of incidents and of what counts
            }
        }
        return stocking;
    }

    private void filled(BatchFill fill) {
        balance.batchFilled(fill);
        batch(fill.vessel(), batch -> batch.filled(fill.at(), fill.volumeL()));
    }

    private void batch(String reserve, Consumer<ReserveBatch> change) {
        ReserveBatch batch = residual.batch(reserve);
        if (batch != null) {
            change.accept(batch);
        }
    }

    private void released() {
        TopUp topUp = balance.topUp();
        if (topUp != null) {
            batch(topUp.source(), batch -> batch.released(topUp.enteredL()));
        }
    }

    /** A treatment by another word stands on record only. */
    private void treat(BatchTreat treat) {
        Treatment.of(treat.treatment())
                .ifPresent(how -> batch(treat.vessel(), batch -> batch.treated(treat.at(), how, treat.pureG())));
    }

    /** A dechlorinator by the name on its label; every other reagent is no matter of chlorine. */
    private void dosed(Dose dose) {
        for (Dechlorinator agent : agents(dose)) {
            residual.dosed(dose.at(), agent, pureG(dose));
        }
    }

    private void undosed(Dose dose) {
        for (Dechlorinator agent : agents(dose)) {
            residual.undosed(dose.at(), agent, pureG(dose));
        }
    }

    private List<Dechlorinator> agents(Dose dose) {
        boolean system = residual.batch(dose.vessel()) == null;
        return Arrays.stream(Dechlorinator.values())
                .filter(agent -> system && agent.word().equals(dose.reagent()))
                .toList();
    }

    private static double pureG(Dose dose) {
        return dose.massG() * LabelStrength.percent(dose.reagent(), dose.strengthPercent()) / 100;
    }

    /** One entered late, behind a newer test of the same, stands on record only. */
    private void test(WaterTest test) {
        Instant last = tested.get(test.vessel() + " " + test.quantity());
        if (last != null && last.isAfter(test.at())) {
            return;
        }
        tested.put(test.vessel() + " " + test.quantity(), test.at());
        nitrogen.test(test);
        if (test.quantity().equals("total-chlorine")) {
            residual.tested(test.vessel(), test.at(), test.value());
        } else if (test.quantity().equals("free-chlorine")) {
            batch(test.vessel(), batch -> batch.testedFree(test.at(), test.value()));
        } else if (test.quantity().equals("nitrite")) {
            nitrite(test.vessel(), test.at(), test);
        }
    }

    private void nitrite(String vessel, Instant at, @Nullable WaterTest test) {
        board.set(
                AlarmKind.NITRITE_HIGH,
                vessel,
                at,
                test != null && test.value() > NITRITE_MG_L
                        ? Condition.of(
                                "nitrite in " + vessel + " is " + Figures.of(test.value(), 2) + " mg/L, above 1",
                                "Manual test.",
                                null,
                                "nitrite_mg_l",
                                test.value())
                        : null);
    }

    /**
     * An entry was taken back: what it changed here is put back to the entry before it, or to the safe side where that cannot
     * be done. Returns the stocking from here on.
     *
     * @param season with the entry taken out already
     */
    Stocking withdrawn(Instant at, OperatorEntry undone, SeasonLedger season, Stocking stocking) {
        switch (undone.kind()) {
            case TEST -> testWithdrawn(at, (WaterTest) undone, season);
            case BATCH_FILL -> batch(((BatchFill) undone).vessel(), batch -> batch.doubted(at));
            case BATCH_TREAT -> batch(((BatchTreat) undone).vessel(), batch -> batch.doubted(at));
            case STOCKING -> {
                return season.stocking();
            }
            case DOSE -> undosed((Dose) undone);
            case FEED, FISH_IN, HARVEST, WEIGH, FISH_LOSS, FISH_MOVE, PLANT, CROP_HARVEST, BED, PH_PLAN -> {
                // the season's books are begun anew without it
            }
            case CALIBRATE, PROBE_CARE, NOTE -> {
                // so are the books of the probes; a note changed nothing
            }
            case TOP_UP_START, TOP_UP_END, ACKNOWLEDGE, SHELVE, UNSHELVE, STEP_DONE, WITHDRAW -> {
                // not taken back, but answered by another entry
            }
            case MAINTENANCE_START, MAINTENANCE_END, OUT_OF_SERVICE, RETURN_TO_SERVICE -> {
                // so are these
            }
        }
        return stocking;
    }

    private void testWithdrawn(Instant at, WaterTest undone, SeasonLedger season) {
        String vessel = undone.vessel();
        tested.remove(vessel + " " + undone.quantity());
        if (undone.quantity().equals("total-chlorine")
                || residual.batch(vessel) != null && undone.quantity().equals("free-chlorine")) {
            residual.withdrawn(at, vessel, undone.at(), undone.value());
            return;
        }
        WaterTest before = season.test(vessel, undone.quantity());
        nitrogen.withdrawn(at, undone, season.loopTest(undone.quantity()));
        if (undone.quantity().equals("nitrite")) {
            nitrite(vessel, at, before);
        }
    }
}
