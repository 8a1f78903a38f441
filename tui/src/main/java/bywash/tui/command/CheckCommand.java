package bywash.tui.command;

import bywash.ingest.mqtt.FloodLimits;
import bywash.ingest.site.SiteFile;
import bywash.rules.site.Site;
import bywash.rules.site.SystemVolume;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Checks a site file and tells every fault at once. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = "Checks a site file: every fault at once, each with line, what is wrong and what would be right.",
        footer = {"", "Exit codes: 0 good, 2 usage, 3 site file."})
final class CheckCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "SITE", description = "The site file.")
    private Path site;

    @Override
    public Integer call() {
        SiteFile file = SiteFiles.read(site, spec.commandLine().getErr());
        if (file == null) {
            return ExitCode.SITE_FILE;
        }
        Site good = file.site();
        spec.commandLine()
                .getOut()
                .printf(
                        Locale.ROOT,
                        "%s is good: %s, %d vessels, %d probes, about %.0f L in the system%n%s%n",
                        site,
                        good.name(),
                        good.vessels().size(),
                        good.probes().size(),
                        SystemVolume.of(good).likelyL(),
                        FloodLimits.of(file).words());
        return ExitCode.GOOD;
    }
}
