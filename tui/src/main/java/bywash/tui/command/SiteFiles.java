package bywash.tui.command;

import bywash.ingest.site.SiteFile;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import bywash.ingest.site.SiteProblem;
import java.io.PrintWriter;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Reads a site file and prints what is wrong with it. */
final class SiteFiles {
    private SiteFiles() {}

    /** The site, or null when it is faulty and every fault has been printed. */
    static @Nullable SiteFile read(Path path, PrintWriter err) {
        SiteFileResult result = SiteFileReader.read(path);
        if (result instanceof SiteFileResult.Good good) {
            return good.siteFile();
        }
        if (result instanceof SiteFileResult.Faulty faulty) {
            for (SiteProblem problem : faulty.problems()) {
                err.println(problem);
            }
        }
        err.flush();
        return null;
    }
}
