package bywash.rules.husbandry.stock;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.FishIn;
import bywash.rules.event.OperatorEntry.FishLoss;
import bywash.rules.event.OperatorEntry.FishMove;
import bywash.rules.event.OperatorEntry.Harvest;
import bywash.rules.event.OperatorEntry.Weigh;
import bywash.rules.site.Need;
import bywash.rules.site.Site;
import bywash.rules.site.Species;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Keeps the books of all cohorts. An entry that cannot be booked is left out and told, with what would be right. */
public final class StockLedger {
    private final Site site;
    private final WaterHistory water;
    private final Consumer<String> remarks;
    private final Map<String, CohortLedger> cohorts = new LinkedHashMap<>();

    /** @param remarks told what could not be booked */
    public StockLedger(Site site, WaterHistory water, Consumer<String> remarks) {
        this.site = site;
        this.water = water;
        this.remarks = remarks;
    }

    /** Fish were lost. */
    public void book(FishLoss loss) {
        CohortLedger ledger = cohort(loss, loss.cohort(), loss.count());
        if (ledger != null) {
            ledger.lose(loss.count());
        }
    }

    /** Fish were taken out to eat or to sell. */
    public void book(Harvest harvest) {
        CohortLedger ledger = cohort(harvest, harvest.cohort(), harvest.count());
        if (ledger != null) {
            ledger.harvest(harvest);
        }
    }

    /** A cohort came in, or more of one that is there. */
    public void book(FishIn in) {
        CohortLedger there = cohorts.get(in.cohort());
        if (in.count() < 1 || !(in.meanMassG() > 0)) {
            remark(in, "has no fish or no mass; a count and a mean mass above 0");
        } else if (there == null) {
            cohorts.put(in.cohort(), new CohortLedger(in, tank(in)));
            if (SpeciesTable.find(site, in.species()).isEmpty()) {
                remark(
                        in,
                        "species " + in.species() + " is not known, so nothing is checked for it; one of "
                                + SpeciesTable.words(site)
                                + ", or a species in the site file");
            }
        } else if (!there.species().equals(in.species())) {
            remark(in, "cohort " + in.cohort() + " is " + there.species() + "; another name for the " + in.species());
        } else {
            there.add(in.at(), in.count(), in.meanMassG());
        }
    }

    private String tank(FishIn in) {
        if (in.vessel() != null) {
            if (site.vessel(in.vessel()).isEmpty()) {
                remark(in, "vessel " + in.vessel() + " is not in the site file; its density cannot be told");
            }
            return in.vessel();
        }
        List<Vessel> tanks = site.vessels(VesselRole.FISH_TANK);
        return tanks.isEmpty() ? "" : tanks.get(0).id();
    }

    /** Fish were weighed. */
    public void book(Weigh weigh) {
        CohortLedger ledger = cohort(weigh, weigh.cohort(), 0);
        if (ledger == null) {
            return;
        }
        if (weigh.count() < 1 || !(weigh.totalG() > 0)) {
            remark(weigh, "has no fish or no mass; masses, or a count and a total above 0");
        } else if (!weigh.all() && weigh.count() > ledger.count()) {
            remark(
                    weigh,
                    weigh.count() + " weighed of " + ledger.count()
                            + " in the cohort; \"of\": \"all\" where the count has to be put right");
        } else {
            ledger.weigh(weigh);
        }
    }

    /** Fish went to another vessel, or away. */
    public void book(FishMove move) {
        CohortLedger from = cohort(move, move.cohort(), move.count());
        if (from == null) {
            return;
        }
        boolean away = move.vessel().equals(FishMove.AWAY);
        if (!away && site.vessel(move.vessel()).isEmpty()) {
            remark(move, "vessel " + move.vessel() + " is not in the site file; a vessel of it, or away");
        } else if (away) {
            from.moveOut(move.count());
        } else if (move.into() == null || move.into().equals(move.cohort())) {
            if (move.count() == from.count()) {
                from.moveTo(move.vessel());
            } else {
                remark(
                        move,
                        "moves " + move.count() + " of " + from.count()
                                + " and no \"into\"; the cohort that those become or join");
            }
        } else {
            into(move, move.into(), from);
        }
    }

    private void into(FishMove move, String name, CohortLedger from) {
        CohortLedger to = cohorts.get(name);
        if (to != null && !to.species().equals(from.species())) {
            remark(move, "cohort " + name + " is " + to.species() + "; a cohort of " + from.species());
            return;
        }
        double meanG = from.moveOut(move.count());
        if (to == null) {
            FishIn in = new FishIn(move.at(), name, from.species(), move.count(), meanG, move.vessel());
            cohorts.put(name, new CohortLedger(in, move.vessel()));
        } else {
            to.add(move.at(), move.count(), meanG);
        }
    }

    /** Feed for no cohort in particular is shared out by what the fish would eat. */
    public void book(Feed feed) {
        if (feed.cohort() != null) {
            CohortLedger ledger = cohort(feed, feed.cohort(), 0);
            if (ledger != null) {
                ledger.fed(feed.massG());
            }
            return;
        }
        double all = 0;
        for (CohortLedger ledger : cohorts.values()) {
            all += hunger(ledger);
        }
        for (CohortLedger ledger : cohorts.values()) {
            if (all > 0) {
                ledger.fed(feed.massG() * hunger(ledger) / all);
            }
        }
    }

    /** Fish eat in proportion to their mass to the power 0.8 (M. Jobling, 1994, Fish Bioenergetics, from memory). */
    private static double hunger(CohortLedger ledger) {
        return ledger.count() * StrictMath.pow(ledger.likelyG(), 0.8);
    }

    private @Nullable CohortLedger cohort(OperatorEntry entry, String name, int atLeast) {
        CohortLedger ledger = cohorts.get(name);
        if (ledger == null) {
            remark(
                    entry,
                    "cohort " + name + " is not known; "
                            + (cohorts.isEmpty() ? "fish-in first" : "one of " + String.join(", ", cohorts.keySet())));
        } else if (ledger.count() < atLeast) {
            remark(
                    entry,
                    atLeast + " fish of " + ledger.count() + " in cohort " + name
                            + "; a count that it has, or a weighing of all to put it right");
            return null;
        }
        return ledger;
    }

    private void remark(OperatorEntry entry, String what) {
        remarks.accept(entry.at() + " " + entry.word() + ": " + what);
    }

    /** Fish in the water. */
    public int fish() {
        return cohorts.values().stream().mapToInt(CohortLedger::count).sum();
    }

    /** Ids of the species with fish in the water, in the order they came. */
    public List<String> species() {
        return cohorts.values().stream()
                .filter(c -> c.count() > 0)
                .map(CohortLedger::species)
                .distinct()
                .toList();
    }

    /** All cohorts in the order they came, those gone too. */
    public List<CohortStatus> status() {
        List<CohortStatus> all =
                cohorts.values().stream().map(c -> c.status(water)).toList();
        return all.stream().map(c -> withDensity(c, all)).toList();
    }

    /** The tank carries every cohort in it; the strictest guide of these counts. */
    private CohortStatus withDensity(CohortStatus cohort, List<CohortStatus> all) {
        Vessel tank = site.vessel(cohort.vessel()).orElse(null);
        if (tank == null || !(tank.volumeL() > 0) || cohort.count() == 0) {
            return cohort;
        }
        double low = 0;
        double likely = 0;
        double high = 0;
        double guide = Double.POSITIVE_INFINITY;
        String source = "";
        for (CohortStatus other : all) {
            if (!other.vessel().equals(cohort.vessel()) || other.count() == 0) {
                continue;
            }
            MassEstimate mass = other.biomass();
            low += mass.lowG();
            likely += mass.likelyG();
            high += mass.highG();
            Species species = SpeciesTable.find(site, other.species()).orElse(null);
            if (species != null && species.most(Need.DENSITY) < guide) {
                guide = species.most(Need.DENSITY);
                source = species.band(Need.DENSITY).orElseThrow().source();
            }
        }
        MassEstimate sum = new MassEstimate(low, likely, high, cohort.mean().evidence());
        return cohort.withDensity(Density.of(sum, tank.volumeL(), guide, source));
    }
}
