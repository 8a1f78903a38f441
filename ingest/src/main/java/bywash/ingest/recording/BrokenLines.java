package bywash.ingest.recording;

/** Told of each line of a recording that could not be read; the reader goes on with the next. */
@FunctionalInterface
public interface BrokenLines {
    /**
     * One line is broken.
     *
     * @param lineNumber from 1
     * @param what what is wrong
     * @param right what would be right
     */
    void broken(long lineNumber, String what, String right);
}
