package bywash.tui.command;

import bywash.ingest.journal.Journal;
import bywash.ingest.journal.JournalInUse;
import bywash.ingest.journal.JournalReader;
import bywash.ingest.recording.BrokenEntry;
import bywash.ingest.recording.EntryJson;
import bywash.ingest.recording.IsoTime;
import bywash.ingest.recording.RecordedLine;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import bywash.ingest.text.PlainText;
import bywash.rules.event.OperatorEntry;
import bywash.tui.attach.SocketPlace;
import bywash.tui.attach.WatchClient;
import bywash.tui.view.DoseForms;
import bywash.tui.view.EntryCheck;
import bywash.tui.view.SeasonCheck;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Operator entries from the shell. */
@Command(
        name = "log",
        mixinStandardHelpOptions = true,
        description = "Takes down what was done, or lists what was entered, one JSON object a line.",
        footer = {
            "",
            "Examples, each after bywash log:",
            "  test vessel=reserve quantity=total-chlorine value='0.02 mg/L'",
            "  top-up-start vessel=sump source=reserve volume='160 L' duration='40 min'",
            "  maintenance-start subject=fish-ph duration='20 min' detail=cleaning",
            "  harvest cohort=spring masses='412 g,398 g'",
            "  calibrate probe=fish-ph standards=4.01,6.86 readings='171 mV,4 mV'",
            "  dose vessel=sump reagent=phosphoric-acid amount='20 g' strength='85 %%'",
            "  withdraw entry=feed entered=2026-05-04T06:00:00.000Z why='typed twice'",
            "An entry that lacks a field names it; an unknown one names all there are.",
            "A list is written with commas. An entry is named by its time as 'bywash log' lists it.",
            "",
            "Exit codes: 0 good, 2 usage."
        })
final class LogCommand implements Callable<Integer> {
    private static final Logger LOG = LoggerFactory.getLogger(LogCommand.class);
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final List<String> LISTS = List.of("masses", "standards", "readings");

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", arity = "0..1", paramLabel = "ENTRY", description = "What was done; without it, lists.")
    private @Nullable String word;

    @Parameters(index = "1..*", arity = "0..*", paramLabel = "FIELD=VALUE", description = "Values with their units.")
    private Map<String, String> fields = Map.of();

    @Option(names = "--at", paramLabel = "TIME", description = "When, such as 2026-05-04T06:00:00Z. Default: now.")
    private @Nullable String at;

    @Option(names = "--days", defaultValue = "30", paramLabel = "N", description = "Days to list. Default: 30.")
    private int days;

    @Mixin
    private final WhichSite which = new WhichSite();

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        try {
            if (word == null) {
                list();
            } else {
                enter(entry(word));
            }
            return ExitCode.GOOD;
        } catch (IOException e) {
            err.println(PlainText.of(String.valueOf(e.getMessage()), 800));
            err.flush();
            return ExitCode.USAGE;
        }
    }

    private void list() throws IOException {
        Instant now = InstantSource.system().instant();
        PrintWriter out = spec.commandLine().getOut();
        try (JournalReader journal = JournalReader.open(which.folder(), which.id())) {
            for (RecordedLine.Entry line :
                    journal.entries(now.minus(Duration.ofDays(days)), now.plus(Duration.ofDays(1)))) {
                out.print(EntryJson.toJson(line.entry()) + "\n");
            }
        }
        out.flush();
    }

    private OperatorEntry entry(String kind) throws IOException {
        Instant now = Clock.tickMillis(ZoneOffset.UTC).instant();
        ObjectNode node = JSON.createObjectNode();
        node.put("time", at == null ? IsoTime.format(now) : at).put("operator", kind);
        fields.forEach((key, value) -> {
            if (LISTS.contains(key)) {
                ArrayNode list = node.putArray(key);
                for (String part : value.split(",")) {
                    list.add(part.strip());
                }
            } else if (value.matches("\\d{1,9}")) {
                node.put(key, Long.parseLong(value));
            } else {
                node.put(key, value);
            }
        });
        try {
            OperatorEntry entry = EntryJson.fromJson(node.toString());
            if (entry.at().isAfter(now.plusSeconds(60))) {
                throw new IOException("--at " + at + " is in the future; give a time that has been");
            }
            String strength = SeasonCheck.strength(entry);
            if (!strength.isEmpty()) {
                throw new IOException(strength);
            }
            return entry;
        } catch (BrokenEntry e) {
            throw new IOException(e.getMessage() + "; give " + e.right(), e);
        }
    }

    /** What the site, as the last watch was told of it, does not have; empty where no watch has run. */
    private String named(OperatorEntry entry) {
        try (JournalReader journal = JournalReader.open(which.folder(), which.id())) {
            String text = journal.site();
            return text != null && SiteFileReader.read(text, "site in the journal") instanceof SiteFileResult.Good good
                    ? EntryCheck.problem(good.siteFile().site(), List.of(), entry)
                    : "";
        } catch (IOException e) {
            LOG.debug("no journal yet, or none that can be read: the entry is taken as it is", e);
            return "";
        }
    }

    /** Through the watch where one runs; else into its journal, from which its next start takes it. */
    private void enter(OperatorEntry entry) throws IOException {
        String id = which.id();
        String doubt = "";
        try {
            doubt = new WatchClient(which.folder(), id).enter(entry);
        } catch (SocketPlace.NoWatch e) {
            String problem = named(entry);
            if (!problem.isEmpty()) {
                throw new IOException(problem, e);
            }
            try (Journal journal = Journal.open(which.folder(), id, InstantSource.system())) {
                if (!journal.appendEntry(entry)) {
                    throw new IOException(journal.state().detail(), e);
                }
            } catch (JournalInUse busy) {
                throw new IOException("the watch of " + id + " runs but does not answer; look at its log", busy);
            }
        }
        spec.commandLine().getOut().print(EntryJson.toJson(entry) + "\n");
        spec.commandLine().getOut().flush();
        for (String words : List.of(doubt, DoseForms.cautions(entry))) {
            if (!words.isEmpty()) {
                spec.commandLine().getErr().println(words);
            }
        }
        spec.commandLine().getErr().flush();
    }
}
