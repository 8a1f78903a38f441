package bywash.tui.account;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.site.SiteFile;
import bywash.rules.alarm.AlarmTransition;
import bywash.tui.watch.Pipeline;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Recordings, played anew for each question. */
public final class RecordingChronicle implements Chronicle {
    /** Gives every line of the recordings, oldest first. */
    public interface Lines {
        /** @throws IOException in words, where one cannot be read */
        void play(Consumer<RecordedLine> to) throws IOException;
    }

    private final SiteFile file;
    private final Lines lines;
    private @Nullable Reach reach;
    private List<AlarmTransition> transitions = List.of();

    public RecordingChronicle(SiteFile file, Lines lines) {
        this.file = file;
        this.lines = lines;
    }

    @Override
    public String name() {
        return "the recording";
    }

    @Override
    public Reach reach() throws IOException {
        Reach known = reach;
        if (known != null) {
            return known;
        }
        Instant[] ends = {Instant.MAX, Instant.MIN};
        List<AlarmTransition> raised = new ArrayList<>();
        Pipeline pipeline = new Pipeline(file, raised::add, reading -> {});
        lines.play(line -> {
            ends[0] = line.time().isBefore(ends[0]) ? line.time() : ends[0];
            ends[1] = line.time().isAfter(ends[1]) ? line.time() : ends[1];
            pipeline.accept(line);
        });
        pipeline.finish();
        if (ends[0].isAfter(ends[1])) {
            throw new IOException("the recordings hold no line to report on; give one with readings or entries");
        }
        transitions = List.copyOf(raised);
        known = new Reach(ends[0], ends[1]);
        reach = known;
        return known;
    }

    @Override
    public List<AlarmTransition> transitions() throws IOException {
        reach();
        return transitions;
    }

    @Override
    public Account account(Instant from, Instant to) throws IOException {
        Instant end = reach().to();
        AccountRun run = new AccountRun(file, from, to);
        lines.play(line -> {
            if (line.time().isBefore(to)) {
                run.accept(line);
            }
        });
        return run.finish(end, transitions);
    }
}
