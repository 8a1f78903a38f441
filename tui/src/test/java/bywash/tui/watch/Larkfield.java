package bywash.tui.watch;

import bywash.ingest.site.SiteFile;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import bywash.samples.SampleRecordings;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;

/** The invented site, for tests. */
public final class Larkfield {
    private Larkfield() {}

    public static SiteFile site() throws IOException {
        return site("larkfield.yaml");
    }

    /** The text of its site file. */
    public static String text() throws IOException {
        return text("larkfield.yaml");
    }

    /** @param name of one of the site files that go with the samples */
    static SiteFile site(String name) throws IOException {
        if (SiteFileReader.read(text(name), name) instanceof SiteFileResult.Good good) {
            return good.siteFile();
        }
        throw new AssertionError("the demo site is faulty");
    }

    private static String text(String name) throws IOException {
        try (InputStream in = SampleRecordings.class.getResourceAsStream("/bywash/samples/sites/" + name)) {
            if (in == null) {
                throw new AssertionError(name + " is missing");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
