package bywash.tui.command;

import bywash.ingest.feed.SteadyClock;
import bywash.ingest.journal.JournalReader;
import bywash.ingest.mqtt.InboundQueue;
import bywash.ingest.mqtt.MqttFeed;
import bywash.ingest.recording.IsoTime;
import bywash.ingest.recording.RecordedLine.Message;
import bywash.ingest.recording.RecordingWriter;
import bywash.ingest.site.ProbeBinding;
import bywash.ingest.site.SiteFile;
import bywash.ingest.text.OwnFiles;
import bywash.ingest.text.PlainText;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.zip.GZIPOutputStream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes a recording. */
@Command(
        name = "record",
        mixinStandardHelpOptions = true,
        description =
                "Writes a recording: with --site of what comes in from now on until Ctrl-C, else out of the journal.",
        footer = {"", "Exit codes: 0 good, 2 usage, 3 site file, 4 the recording cannot be written."})
final class RecordCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "The recording (.jsonl or .jsonl.gz); must not stand already.")
    private Path file;

    @Option(names = "--site", paramLabel = "SITE", description = "The site file, to record from its broker.")
    private @Nullable Path site;

    @Option(names = "--from", paramLabel = "TIME", description = "Of the journal, from 2026-05-04T06:00:00Z on.")
    private @Nullable String from;

    @Option(names = "--to", paramLabel = "TIME", description = "Of the journal, up to a time.")
    private @Nullable String to;

    @Mixin
    private final WhichSite which = new WhichSite();

    private final CountDownLatch done = new CountDownLatch(1);
    private volatile boolean stop;

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        SiteFile live = null;
        if (site != null) {
            live = SiteFiles.read(site, err);
            if (live == null) {
                return ExitCode.SITE_FILE;
            }
        }
        Instant first;
        Instant last;
        try {
            first = time("--from", from, Instant.EPOCH);
            last = time("--to", to, Instant.parse("9999-01-01T00:00:00Z"));
        } catch (IOException e) {
            err.println(PlainText.of(String.valueOf(e.getMessage()), 800));
            err.flush();
            return ExitCode.USAGE;
        }
        try {
            if (live != null) {
                try (RecordingWriter writer = new RecordingWriter(open())) {
                    live(live, writer);
                }
            } else {
                journal(first, last);
            }
            return ExitCode.GOOD;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return ExitCode.GOOD; // told to end
        } catch (UncheckedIOException e) {
            return fault(err, Objects.requireNonNull(e.getCause()));
        } catch (IOException e) {
            return fault(err, e);
        } finally {
            done.countDown();
        }
    }

    private static int fault(PrintWriter err, IOException e) {
        err.println(PlainText.of(FileFault.words(e), 800));
        err.flush();
        return ExitCode.RECORDING;
    }

    private OutputStream open() throws IOException {
        if (Files.exists(file)) {
            throw new IOException(file + " stands already; name a new file");
        }
        OwnFiles.file(file);
        OutputStream out = Files.newOutputStream(file, StandardOpenOption.WRITE);
        return file.toString().endsWith(".gz") ? new GZIPOutputStream(out, 8192, true) : out;
    }

    private void journal(Instant first, Instant last) throws IOException {
        long[] lines = {0};
        try (JournalReader journal = JournalReader.open(which.folder(), which.id())) {
            try (RecordingWriter writer = new RecordingWriter(open())) {
                journal.lines(first, last, line -> {
                    lines[0]++;
                    try {
                        writer.write(line);
                    } catch (IOException e) {
                        throw new UncheckedIOException(e);
                    }
                });
            }
            if (lines[0] == 0) {
                Files.delete(file);
                throw new IOException("nothing is on record from then to then; the journal reaches from "
                        + words(journal.firstMessage()) + " to " + words(journal.lastSeen()));
            }
        }
    }

    private static String words(@Nullable Instant at) {
        return at == null ? "nowhere" : IsoTime.format(at);
    }

    private static Instant time(String option, @Nullable String text, Instant otherwise) throws IOException {
        if (text == null) {
            return otherwise;
        }
        Instant time = IsoTime.parse(text);
        if (time == null) {
            throw new IOException(option + " " + text + ": no time; give one such as 2026-05-04T06:00:00Z");
        }
        return time;
    }

    private void live(SiteFile live, RecordingWriter writer) throws IOException, InterruptedException {
        Runtime.getRuntime().addShutdownHook(new Thread(this::end, "stop recording"));
        InboundQueue queue = new InboundQueue();
        InstantSource clock = new SteadyClock();
        List<String> topics =
                live.bindings().stream().map(ProbeBinding::topic).distinct().toList();
        PrintWriter err = spec.commandLine().getErr();
        List<Message> batch = new ArrayList<>();
        try (MqttFeed feed = new MqttFeed(live.broker(), topics, queue, clock, state -> {
            err.println(PlainText.of(state.detail(), 400));
            err.flush();
        })) {
            feed.start();
            while (!stop) {
                queue.drain(batch, 500);
                write(batch, writer);
            }
        }
        queue.drain(batch, 0);
        write(batch, writer);
        if (queue.dropped() > 0) {
            err.println(queue.dropped() + " messages came faster than they could be written, and are not in it");
        }
    }

    private static void write(List<Message> batch, RecordingWriter writer) throws IOException {
        for (Message message : batch) {
            writer.write(message);
        }
        batch.clear();
        writer.flush();
    }

    /** Lets the recording come to its end before the program does. */
    private void end() {
        stop = true;
        try {
            if (!done.await(3, TimeUnit.SECONDS)) {
                spec.commandLine().getErr().println("the recording may lack its end");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        LogFile.end();
    }
}
