package bywash.ingest.mqtt;

/** A file the site file names cannot be used. The message is for the grower. */
final class FileFault extends Exception {
    private static final long serialVersionUID = 1L;

    FileFault(String message) {
        super(message);
    }
}
