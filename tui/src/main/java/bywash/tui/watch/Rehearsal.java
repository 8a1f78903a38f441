package bywash.tui.watch;

import bywash.ingest.journal.Journal;
import bywash.ingest.journal.KeptTransition;
import bywash.ingest.journal.Writing;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.ingest.site.SiteFile;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.event.OperatorEntry;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Takes alarms of a made-up tank through all that a real one goes through, from the payload to the journal, in memory and
 * where nobody sees it: else the first real alarm waits until classes are loaded and code is compiled, some 100 ms more
 * than the next. Some seconds after the start, so that the first screen does not wait for it.
 */
public final class Rehearsal {
    private static final Logger LOG = LoggerFactory.getLogger(Rehearsal.class);
    private static final long AFTER_S = 5;
    private static final int ALARMS = 40;
    private static final int LOW_UNTIL_S = 240;
    private static final int ROUND_S = 600;

    private static final String SITE = """
            name: rehearsal
            id: rehearsal
            time-zone: UTC
            elevation: 0 m
            stocking: fish
            units: metric
            broker: {url: "mqtt://127.0.0.1:1883"}
            mains: {disinfectant: chlorine, residual: 1 mg/L, ph: 7.5, alkalinity: 100 mg/L, temperature: 12 Cel}
            vessels:
              sump: {role: sump, volume: 500 L}
              tank: {role: fish-tank, volume: 1000 L}
            probes:
              - {id: oxygen, vessel: tank, quantity: dissolved-oxygen, topic: oxygen, payload: number, unit: mg/L, every: 10 s}
            """;

    private Rehearsal() {}

    /** On another processor, where there is one. */
    public static void later() {
        if (Runtime.getRuntime().availableProcessors() > 1) {
            CompletableFuture.delayedExecutor(AFTER_S, TimeUnit.SECONDS).execute(Rehearsal::run);
        }
    }

    /** Returns how many alarm lines it came to. */
    static int run() {
        if (!(SiteFileReader.read(SITE, "rehearsal") instanceof SiteFileResult.Good good)) {
            LOG.error("the rehearsal's own site file is faulty");
            return 0;
        }
        return run(good.siteFile());
    }

    private static int run(SiteFile file) {
        List<AlarmTransition> now = new ArrayList<>();
        List<Writing> all = new ArrayList<>();
        Pipeline pipeline = new Pipeline(file, now::add, reading -> {});
        for (int s = 0; s < ALARMS * ROUND_S; s += 10) {
            Instant at = Instant.EPOCH.plusSeconds(s);
            String value = s % ROUND_S < LOW_UNTIL_S ? "2.1" : "8.0";
            pipeline.accept(new Message(at, "oxygen", value.getBytes(StandardCharsets.US_ASCII), 0, false));
            if (s % ROUND_S == ROUND_S / 2) {
                pipeline.enter(new OperatorEntry.Acknowledge(at, null, null));
            }
            pipeline.advanceTo(at.plusSeconds(9));
            now.forEach(t -> all.add(new Writing.Transitions(List.of(new KeptTransition(
                    t.at(),
                    AlarmLines.of(file.site().id(), t),
                    t.kind().word(),
                    t.subject(),
                    AlarmMemoryJson.of(pipeline.memory(t.kind(), t.subject())))))));
            now.clear();
        }
        Journal.rehearse(all);
        return all.size();
    }
}
