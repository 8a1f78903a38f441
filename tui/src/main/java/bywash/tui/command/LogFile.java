package bywash.tui.command;

import bywash.ingest.text.OwnFiles;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.logging.FileHandler;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogManager;
import java.util.logging.Logger;
import java.util.stream.Stream;

/** Sends the log to a file, never to the screen: warnings of libraries, and our own from information up. */
final class LogFile {
    private static final int BYTES = 1 << 20;
    private static final int FILES = 3;

    private LogFile() {}

    static void begin() {
        LogManager.getLogManager().reset();
        Logger root = Logger.getLogger("");
        root.setLevel(Level.WARNING);
        OURS.setLevel(Level.INFO);
        try {
            Path folder = StateFolder.standard();
            OwnFiles.folder(folder);
            OwnFiles.close(folder);
            Handler file = new FileHandler(folder.resolve("bywash.log").toString(), BYTES, FILES, true);
            try (Stream<Path> all = Files.list(folder)) {
                for (Path log : all.filter(p -> p.getFileName().toString().startsWith("bywash.log"))
                        .toList()) {
                    OwnFiles.closeFile(log);
                }
            }
            file.setFormatter(new PlainLog());
            root.addHandler(file);
            if (LogManager.getLogManager() instanceof LastingLog lasting) {
                lasting.keep();
            }
        } catch (IOException e) {
            // Without a place for it there is no log; the watch itself does not need one.
        }
    }

    /** The last words are said: closes the file. */
    static void end() {
        if (LogManager.getLogManager() instanceof LastingLog lasting) {
            lasting.end();
        }
    }

    /** Kept, because the log manager holds loggers weakly. */
    private static final Logger OURS = Logger.getLogger("bywash");
}
