package bywash.ingest.site;

import java.util.List;

/** What reading a site file gives: the site, or every fault of the file. */
public sealed interface SiteFileResult {
    record Good(SiteFile siteFile) implements SiteFileResult {}

    /**
     * The file has faults.
     *
     * @param problems at least one, in the order of lines
     */
    record Faulty(List<SiteProblem> problems) implements SiteFileResult {
        public Faulty {
            problems = List.copyOf(problems);
        }
    }
}
