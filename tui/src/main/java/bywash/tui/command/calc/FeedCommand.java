package bywash.tui.command.calc;

import bywash.rules.water.FeedRate;
import bywash.rules.water.Nitrification;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What a day's feed does to the water, and what the fish and the beds can take. */
@Command(
        name = "feed",
        description = "Ammonia, oxygen and alkalinity of a day's feed; feed by weight of fish and area of beds.")
final class FeedCommand extends Calculation {
    @Option(names = "--feed", description = "Feed, as in \"250 g/d\"; by weight of fish without it.")
    private @Nullable String feed;

    @Option(names = "--protein", description = "Crude protein of the feed, as in \"32 %%\".")
    private @Nullable String protein;

    @Option(names = "--fish", description = "Weight of all fish, as in \"12 kg\".")
    private @Nullable String fish;

    @Option(names = "--share", description = "Feed a day as share of body weight, as in \"1.5 %%\".")
    private @Nullable String share;

    @Option(names = "--bed-area", description = "Area of all beds, as in \"6 m2\".")
    private @Nullable String bedArea;

    @Option(names = "--crop", description = "leafy or fruiting; leafy without it.")
    private @Nullable String crop;

    @Override
    Answer answer() {
        if ((feed == null) == (fish == null)) {
            throw new IllegalArgumentException("give either --feed or --fish with --share");
        }
        double grams = feed != null
                ? Typed.measure("--feed", feed, Dimension.DAILY_MASS)
                : FeedRate.byBodyWeightGPerDay(
                        Typed.measure("--fish", fish, Dimension.MASS) / 1000,
                        Typed.measure("--share", share, Dimension.PERCENT));
        double tan = Nitrification.tanGPerDay(grams, Typed.measure("--protein", protein, Dimension.PERCENT));
        Answer answer = new Answer("A day's feed")
                .number("feed", grams, "g/d")
                .number("ammonia nitrogen", tan, "g/d")
                .number("oxygen to nitrify it", Nitrification.oxygenGPerDay(tan), "g/d")
                .number("alkalinity to nitrify it, as CaCO3", Nitrification.alkalinityGPerDay(tan), "g/d");
        if (bedArea != null) {
            FeedRate.Crop grown = crop == null
                    ? FeedRate.Crop.LEAFY
                    : Typed.word("--crop", crop, FeedRate.Crop.values(), FeedRate.Crop::word);
            FeedRate.Range range = FeedRate.byBedArea(Typed.measure("--bed-area", bedArea, Dimension.AREA), grown);
            answer.number("feed the beds can use, low end", range.lowGPerDay(), "g/d")
                    .number("feed the beds can use, high end", range.highGPerDay(), "g/d");
        }
        return answer.source(
                        "Timmons and Ebeling, factor 0.092 (from memory: to be confirmed against the source); stoichiometry")
                .source("FAO technical paper 589 (2014) for beds (from memory: to be confirmed against the source)")
                .caution("appetite and water tests decide, not this figure");
    }
}
