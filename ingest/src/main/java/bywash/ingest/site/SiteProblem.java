package bywash.ingest.site;

/**
 * One fault of a site file.
 *
 * @param file name as it was given
 * @param line from 1
 * @param what what is wrong
 * @param right what would be right
 */
public record SiteProblem(String file, int line, String what, String right) {
    @Override
    public String toString() {
        return file + ":" + line + ": " + what + "; " + right;
    }
}
