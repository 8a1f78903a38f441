package bywash.tui.view;

import bywash.rules.husbandry.bacteria.AmmoniaSource;
import bywash.rules.husbandry.bacteria.CheckItem;
import bywash.rules.husbandry.bacteria.CheckItem.Answer;
import bywash.rules.husbandry.feed.CohortRation;
import bywash.rules.husbandry.feed.FeedLoad;
import bywash.rules.husbandry.feed.FeedWarning;
import bywash.rules.husbandry.ph.PhPlan;
import bywash.rules.husbandry.plants.BedStatus;
import bywash.rules.husbandry.plants.NitrogenBalance;
import bywash.rules.husbandry.plants.NitrogenStatus.Verdict;
import bywash.rules.husbandry.season.FeedStatus;
import bywash.rules.husbandry.season.FishlessStatus;
import bywash.rules.husbandry.season.PhStatus;
import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.text.Names;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Feed, and what follows from it for plants, bacteria and pH; without fish, the bacteria's meal and the way to fish again. */
public final class FeedView {
    private FeedView() {}

    public static List<Passage> from(Frame frame) {
        return UsWords.of(passages(frame), frame.snapshot().site().units());
    }

    private static List<Passage> passages(Frame frame) {
        List<Passage> out = new ArrayList<>();
        SeasonStatus season = frame.snapshot().season();
        if (season == null) {
            out.add(Passage.plain("", "Nothing on record yet."));
            return out;
        }
        if (season.fishless() == null) {
            feed(out, season.feed(), FeedHold.words(frame));
        } else {
            fishless(out, season.fishless());
        }
        out.add(Passage.plain("", ""));
        nitrogen(out, season, frame);
        out.add(Passage.plain("", ""));
        ph(out, season.ph(), frame);
        return out;
    }

    private static void feed(List<Passage> out, FeedStatus feed, String hold) {
        if (!hold.isEmpty()) {
            out.add(new Passage("! Now", hold, Tone.WARNING));
        }
        out.add(Passage.plain("Plan", feed.plan().words()));
        for (CohortRation r : feed.plan().cohorts()) {
            out.add(Passage.plain(
                    r.cohort(), String.format(Locale.ROOT, "%.0f to %.0f g: %s", r.lowG(), r.highG(), r.words())));
        }
        FeedLoad recent = feed.recent();
        out.add(Passage.plain("Fed", recent == null ? "no feed on record" : load(recent)));
        for (FeedWarning w : feed.warnings()) {
            out.add(new Passage("! Warning", w.what() + " " + w.why() + " " + w.act(), Tone.WARNING));
        }
    }

    private static String load(FeedLoad load) {
        return String.format(
                Locale.ROOT,
                "%.0f g a day in the last week: %.1f g of ammonia nitrogen, %.0f to %.0f g of oxygen, %.0f g of alkalinity a day",
                load.feedGPerDay(),
                load.tanGPerDay(),
                load.oxygenLowGPerDay(),
                load.oxygenHighGPerDay(),
                load.alkalinityGPerDay());
    }

    private static void fishless(List<Passage> out, FishlessStatus status) {
        out.add(Passage.plain("Bacteria", status.plan().words()));
        if (!status.products().isEmpty()) {
            out.add(Passage.plain("That is", String.join(", or ", status.products())));
            out.add(Passage.plain("Cautions", AmmoniaSource.AMMONIA_SOLUTION.cautions()));
        }
        if (!status.plan().testsDue().isEmpty()) {
            out.add(new Passage(
                    "Tests due", "! " + String.join(", ", status.plan().testsDue()), Tone.WARNING));
        }
        out.add(Passage.plain("", ""));
        out.add(Passage.plain(
                "Fish back",
                (status.ready() ? "Nothing that is measured speaks against " : "Not yet ready for ")
                        + Names.species(status.species()) + "."));
        for (CheckItem item : status.checklist()) {
            boolean bad = item.answer() == Answer.NO || item.answer() == Answer.NOT_KNOWN;
            out.add(new Passage(
                    label(item.answer()),
                    item.what() + ": " + item.need() + "; " + item.present(),
                    bad ? Tone.WARNING : Tone.PLAIN));
        }
    }

    private static String label(Answer answer) {
        return switch (answer) {
            case YES -> "  yes";
            case NO -> "! no";
            case NOT_KNOWN -> "! unknown";
            case ASK -> "  you say";
        };
    }

    private static void nitrogen(List<Passage> out, SeasonStatus season, Frame frame) {
        boolean shortOf = season.nitrogen().verdict() == Verdict.SHORT;
        out.add(new Passage(
                "Nitrogen", (shortOf ? "! " : "") + season.nitrogen().words(), shortOf ? Tone.WARNING : Tone.PLAIN));
        for (BedStatus bed : season.beds()) {
            if (bed.plantedM2() > 0) {
                out.add(Passage.plain(
                        bed.vessel(),
                        NitrogenBalance.without(
                                season.nitrogen(),
                                bed,
                                frame.snapshot().systemVolume().likelyL())));
            } else {
                out.add(Passage.plain(bed.vessel(), bed.on() ? "nothing planted on record" : "out of the loop"));
            }
        }
    }

    private static void ph(List<Passage> out, PhStatus ph, Frame frame) {
        out.add(Passage.plain("pH", ph.words()));
        PhPlan plan = ph.plan();
        if (plan == null) {
            return;
        }
        String all = plan.productG() > 0
                ? String.format(Locale.ROOT, ", %.0f g in all, a step a day:", plan.productG())
                : ", in steps as they come:";
        out.add(Passage.plain("Plan", plan.means() + all));
        for (PhPlan.Step step : plan.steps()) {
            out.add(Passage.plain(StockView.day(step.doseAt(), frame), step.words()));
        }
        if (!plan.after().isEmpty()) {
            out.add(Passage.plain("Then", plan.after()));
        }
        out.add(Passage.plain("Mains", plan.mains()));
        out.add(Passage.plain("Cautions", plan.cautions()));
    }
}
