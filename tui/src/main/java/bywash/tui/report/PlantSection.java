package bywash.tui.report;

import bywash.rules.event.OperatorEntry.CropHarvest;
import bywash.rules.husbandry.feed.FeedBook;
import bywash.rules.husbandry.plants.BedStatus;
import bywash.rules.husbandry.plants.Crop;
import bywash.rules.husbandry.plants.NitrogenBalance;
import bywash.rules.husbandry.plants.Range;
import bywash.rules.husbandry.stock.CohortStatus;
import bywash.rules.site.SystemVolume;
import bywash.rules.text.Names;
import bywash.tui.report.Block.Grid;
import bywash.tui.report.Block.Heading;
import bywash.tui.report.Block.Paragraph;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** Crops, and where the season's nitrogen went. */
final class PlantSection {
    /** Nitrogen in protein, and in a whole fish, g/g. The second: about 16 % protein, common practice, no source. */
    private static final double N_PER_PROTEIN = 0.16;

    private static final double N_PER_FISH = 0.026;

    private final SeasonData data;

    PlantSection(SeasonData data) {
        this.data = data;
    }

    List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Heading("Plants"));
        Table crops = crops();
        if (crops.rows().isEmpty()) {
            blocks.add(new Paragraph("No crop harvested on record."));
        } else {
            blocks.add(new Grid(crops));
        }
        blocks.add(new Grid(beds()));
        blocks.add(new Heading("Nitrogen"));
        blocks.add(new Paragraph(data.status().nitrogen().words()));
        blocks.add(new Paragraph(budget()));
        double volumeL = SystemVolume.of(data.site()).likelyL();
        for (BedStatus bed : data.status().beds()) {
            if (bed.plantedM2() > 0) {
                blocks.add(new Paragraph(NitrogenBalance.without(data.status().nitrogen(), bed, volumeL)));
            }
        }
        return blocks;
    }

    private Table crops() {
        Map<String, double[]> sums = new TreeMap<>();
        data.entries().stream()
                .filter(CropHarvest.class::isInstance)
                .map(CropHarvest.class::cast)
                .forEach(h -> {
                    double[] sum = sums.computeIfAbsent(Cells.text(Names.words(h.crop())), c -> new double[2]);
                    sum[0]++;
                    sum[1] += h.massG();
                });
        Table.Builder table =
                new Table.Builder("crops", "crop", "harvests", "fresh kg", "nitrogen g, low", "nitrogen g, high");
        sums.forEach((crop, s) -> {
            Range n = Crop.of(crop).contentGPerKg().times(s[1] / 1000);
            table.row(
                    crop,
                    Cells.count((long) s[0]),
                    Cells.number(s[1] / 1000, 2),
                    Cells.number(n.low(), 1),
                    Cells.number(n.high(), 1));
        });
        return table.build();
    }

    private Table beds() {
        Table.Builder table = new Table.Builder("beds", "bed", "in the loop", "planted m2", "grows", "harvested kg");
        for (BedStatus bed : data.status().beds()) {
            List<String> words = bed.stands().stream()
                    .map(s -> Cells.text(Names.words(s.word())))
                    .distinct()
                    .toList();
            table.row(
                    bed.vessel(),
                    bed.on() ? "yes" : "no",
                    Cells.number(bed.plantedM2(), 2),
                    String.join(", ", words),
                    Cells.number(bed.harvestedG() / 1000, 2));
        }
        return table.build();
    }

    /** Nitrogen fed, and where it is known to have gone. */
    private String budget() {
        double fed = N_PER_PROTEIN
                * data.status().feed().days().stream()
                        .mapToDouble(FeedBook.Day::proteinG)
                        .sum();
        double fish = 0;
        for (CohortStatus c : data.status().cohorts()) {
            fish += N_PER_FISH * Math.max(0, c.whole().gainG());
        }
        Range plants = Range.NOTHING;
        for (BedStatus bed : data.status().beds()) {
            plants = plants.plus(bed.removedN());
        }
        double low = Math.max(0, fed - fish - plants.high());
        double high = Math.max(0, fed - fish - plants.low());
        return String.format(
                Locale.ROOT,
                "Of %.0f g of nitrogen fed, about %.0f g of it went into fish and %.0f to %.0f g of it left with the crops; the other %.0f to %.0f g of it are in"
                        + " the water, in roots and leaves, in sludge, or gone as gas.",
                fed,
                fish,
                plants.low(),
                plants.high(),
                low,
                high);
    }
}
