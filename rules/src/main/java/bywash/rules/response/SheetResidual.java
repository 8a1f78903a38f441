package bywash.rules.response;

import bywash.rules.chlorine.ResidualEstimate;
import bywash.rules.response.IncidentFigures.Peak;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The lines of a sheet on chlorine: now, at its highest, and the evidence for it. */
final class SheetResidual {
    private SheetResidual() {}

    /** @param peak the highest so far; null before there was one */
    static List<String> words(ResidualEstimate estimate, Instant at, @Nullable Peak peak, ZoneId zone) {
        List<String> words = new ArrayList<>();
        words.add("At " + SiteTime.words(at, zone) + ": " + range(Peak.of(estimate, at)));
        if (peak != null) {
            words.add("Peak at " + SiteTime.words(peak.at(), zone) + ": " + range(peak));
        }
        words.addAll(estimate.evidence());
        return words;
    }

    private static String range(Peak p) {
        return String.format(
                Locale.ROOT,
                "%.0f ug/L likely, %.0f to %.0f; chance above the acute %.0f ug/L (%s) %.0f %%",
                p.likelyUgL(),
                p.lowUgL(),
                p.highUgL(),
                p.acuteUgL(),
                p.acuteUgL() == ResidualEstimate.ACUTE_UG_L ? "US EPA 1985" : "of the species here",
                100 * p.probability());
    }
}
