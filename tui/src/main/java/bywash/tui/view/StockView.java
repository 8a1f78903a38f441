package bywash.tui.view;

import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.husbandry.stock.CohortStatus;
import bywash.rules.husbandry.stock.Density;
import bywash.rules.husbandry.stock.Growth;
import bywash.rules.husbandry.stock.GrowthPeriod;
import bywash.rules.husbandry.stock.MassStatistics;
import bywash.rules.text.Names;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Every cohort in words: how many, how heavy, how fast they grow, on how much feed, and what was harvested. */
public final class StockView {
    private static final int SHOWN_REMARKS = 5;

    private StockView() {}

    public static List<Passage> from(Frame frame) {
        return UsWords.of(passages(frame), frame.snapshot().site().units());
    }

    private static List<Passage> passages(Frame frame) {
        List<Passage> out = new ArrayList<>();
        SeasonStatus season = frame.snapshot().season();
        if (season == null || season.cohorts().isEmpty()) {
            out.add(Passage.plain("", "No fish on record. Press n and enter the fish that went in."));
        } else {
            season.cohorts().forEach(c -> cohort(out, c, frame));
            out.addAll(SpeciesView.from(frame, season.cohorts()));
            out.add(Passage.plain("", ""));
        }
        if (season != null && !season.remarks().isEmpty()) {
            List<String> remarks = season.remarks();
            out.add(new Passage("", "! Entries that could not be booked:", Tone.WARNING));
            remarks.subList(Math.max(0, remarks.size() - SHOWN_REMARKS), remarks.size())
                    .forEach(r -> out.add(new Passage("", r, Tone.WARNING)));
        }
        return out;
    }

    private static void cohort(List<Passage> out, CohortStatus c, Frame frame) {
        out.add(Passage.plain(c.id(), head(c)));
        if (c.count() > 0) {
            out.add(Passage.plain("Known by", c.mean().evidence()));
        }
        if (!c.periods().isEmpty()) {
            out.add(Passage.plain("Growth", growth(c.periods().get(c.periods().size() - 1), frame)));
        }
        out.add(Passage.plain(
                "Feed",
                kg(c.feedG()) + " so far, conversion " + Words.number(c.whole().economic(), 2) + ", "
                        + Words.number(c.whole().biological(), 2) + " with the dead"));
        out.add(Passage.plain(
                "Alive",
                Words.number(c.survivalPercent(), 1) + " %: " + c.lost() + " lost of " + c.stocked()
                        + (c.movedOut() > 0 ? ", " + c.movedOut() + " moved out" : "")));
        Density density = c.density();
        if (density != null) {
            Tone tone = density.overGuide() ? Tone.WARNING : Tone.PLAIN;
            out.add(new Passage(
                    "Density", (density.overGuide() ? "! " : "") + density.words() + source(density), tone));
        }
        if (!c.harvests().isEmpty()) {
            out.add(Passage.plain("Harvest", harvest(c)));
        }
        out.add(Passage.plain("", ""));
    }

    private static String source(Density density) {
        return density.source().isEmpty() ? "" : " (" + density.source() + ")";
    }

    private static String head(CohortStatus c) {
        if (c.count() == 0) {
            return Names.species(c.species()) + ", all " + c.stocked() + " gone";
        }
        return String.format(
                Locale.ROOT,
                "%d %s in %s, %.0f g each (%.0f to %.0f), %s",
                c.count(),
                Names.species(c.species()),
                c.vessel(),
                c.mean().likelyG(),
                c.mean().lowG(),
                c.mean().highG(),
                kg(c.biomass().likelyG()));
    }

    private static String growth(GrowthPeriod p, Frame frame) {
        Growth g = p.growth();
        String range =
                Double.isNaN(p.halfWidthPercentPerDay()) ? "" : " +/- " + Words.number(p.halfWidthPercentPerDay(), 2);
        return String.format(
                Locale.ROOT,
                "%.2f%s %% a day, %sconversion %s, %s to %s",
                g.specificPercentPerDay(),
                range,
                Double.isNaN(g.thermalCoefficient())
                        ? ""
                        : "thermal coefficient " + Words.number(g.thermalCoefficient(), 2) + ", ",
                Words.number(p.conversion().economic(), 2),
                day(p.from(), frame),
                day(p.to(), frame));
    }

    private static String harvest(CohortStatus c) {
        String all = c.harvested() + " fish, " + kg(c.harvestG());
        List<Double> masses = c.harvestMassesG();
        if (masses.size() < 2) {
            return all;
        }
        MassStatistics s = MassStatistics.of(masses);
        return all
                + String.format(
                        Locale.ROOT,
                        "; %d weighed: mean %.0f g, spread %.0f g, %.0f to %.0f g",
                        s.count(),
                        s.meanG(),
                        s.spreadG(),
                        s.smallestG(),
                        s.largestG());
    }

    private static String kg(double g) {
        return Words.number(g / 1000, 1) + " kg";
    }

    static String day(Instant at, Frame frame) {
        return at.atZone(frame.snapshot().site().timeZone()).toLocalDate().toString();
    }
}
