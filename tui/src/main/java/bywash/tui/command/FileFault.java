package bywash.tui.command;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;

/** Why a file could not be written, in words: the platform's own message is often its name alone. */
final class FileFault {
    private FileFault() {}

    static String words(IOException fault) {
        if (fault instanceof NoSuchFileException e) {
            return e.getFile() + ": its folder is not there; make it, or name another";
        }
        if (fault instanceof AccessDeniedException e) {
            return e.getFile() + ": you may not write there; name another place";
        }
        if (fault instanceof FileSystemException e && e.getReason() != null) {
            return e.getFile() + ": " + e.getReason();
        }
        return String.valueOf(fault.getMessage());
    }
}
