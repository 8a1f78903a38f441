package bywash.tui.view;

import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordingReader;
import bywash.ingest.site.SiteFile;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmTransition;
import bywash.samples.SampleRecordings;
import bywash.tui.watch.Larkfield;
import bywash.tui.watch.Pipeline;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Whatever the rules raise in the samples is about something that an entry may name. */
final class AlarmSubjectsTest {
    @Test
    void everyAlarmOfTheSamplesIsAboutOneOfItsSubjects() throws Exception {
        SiteFile file = Larkfield.site();
        List<AlarmTransition> all = new ArrayList<>();
        for (SampleRecordings sample : SampleRecordings.values()) {
            Pipeline pipeline = new Pipeline(file, all::add, reading -> {});
            InputStream in = Objects.requireNonNull(
                    SampleRecordings.class.getResourceAsStream("/bywash/samples/recordings/" + sample.fileName()));
            try (RecordingReader reader = new RecordingReader(in, (line, what, right) -> {})) {
                for (RecordedLine line = reader.next(); line != null; line = reader.next()) {
                    pipeline.accept(line);
                }
            }
            pipeline.finish();
        }
        Set<AlarmKind> seen = EnumSet.noneOf(AlarmKind.class);
        for (AlarmTransition t : all) {
            seen.add(t.kind());
            assertTrue(
                    AlarmSubjects.of(file.site(), t.kind()).contains(t.subject()),
                    t.kind().word() + " about " + t.subject());
        }
        assertTrue(seen.size() >= 6, "the samples raise " + seen);
    }
}
