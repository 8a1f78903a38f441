package bywash.tui.watch;

import bywash.ingest.recording.RecordedLine;
import bywash.rules.event.OperatorEntry;
import bywash.samples.SampleRecordings;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;

/** A watch with a journal that has seen a sample, with what a grower did meanwhile; it is still open. */
public final class JournalOfASample implements AutoCloseable {
    public static final Path SITE = Path.of("..", "sample-feeds", "sites", "larkfield.yaml");

    private final Station station;
    private Instant now = SampleRecordings.start();

    /** @param deeds what the grower does, in order of time */
    public JournalOfASample(Path state, SampleRecordings sample, List<OperatorEntry> deeds) throws Exception {
        station = Station.open(Larkfield.site(), state, () -> now);
        station.record().site(now, Files.readString(SITE));
        int next = 0;
        var lines = sample.simulation();
        for (RecordedLine line = lines.next(); line != null; line = lines.next()) {
            while (next < deeds.size() && !deeds.get(next).at().isAfter(line.time())) {
                enter(deeds.get(next++));
            }
            now = line.time();
            if (line instanceof RecordedLine.Message message) {
                station.watch().step(List.of(message));
            } else if (line instanceof RecordedLine.Entry entry) {
                enter(entry.entry());
            }
        }
        now = now.plusSeconds(10);
        station.watch().step(List.of());
    }

    private void enter(OperatorEntry entry) {
        now = entry.at();
        station.watch().enter(entry);
        station.watch().step(List.of());
    }

    public Station station() {
        return station;
    }

    @Override
    public void close() {
        station.watch().end();
    }
}
