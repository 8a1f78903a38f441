package bywash.samples;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.recording.RecordingWriter;
import bywash.samples.season.SeasonSimulation;
import bywash.samples.simulation.SimulatedSite;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.GZIPOutputStream;

/** Writes the sample recordings anew from their seeds: {@code java ... bywash.samples.MakeRecordings FOLDER}. */
public final class MakeRecordings {
    private MakeRecordings() {}

    public static void main(String[] args) throws IOException {
        Path folder = Path.of(args.length > 0 ? args[0] : "sample-feeds/recordings");
        Files.createDirectories(folder);
        for (SampleRecordings sample : SampleRecordings.values()) {
            try (OutputStream file = new GZIPOutputStream(Files.newOutputStream(folder.resolve(sample.fileName())))) {
                write(sample, file);
            }
        }
        try (OutputStream file = new GZIPOutputStream(Files.newOutputStream(folder.resolve(SEASON)))) {
            writeSeason(file);
        }
    }

    /** File name of the season in recordings/. */
    public static final String SEASON = "season.jsonl.gz";

    /** Of the season, wherever it is made. */
    public static final long SEASON_SEED = 26;

    /** Writes the season as plain JSON Lines. */
    public static void writeSeason(OutputStream to) throws IOException {
        RecordingWriter writer = new RecordingWriter(to);
        for (RecordedLine line : new SeasonSimulation(SEASON_SEED).lines()) {
            writer.write(line);
        }
        writer.flush();
    }

    /** Writes one recording as plain JSON Lines. */
    public static void write(SampleRecordings sample, OutputStream to) throws IOException {
        SimulatedSite site = sample.simulation();
        RecordingWriter writer = new RecordingWriter(to);
        for (RecordedLine line = site.next(); line != null; line = site.next()) {
            writer.write(line);
        }
        writer.flush();
    }
}
