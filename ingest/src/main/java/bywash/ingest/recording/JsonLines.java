package bywash.ingest.recording;

import bywash.ingest.text.PlainText;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.StreamWriteFeature;

/** What the classes of this package share: one bounded JSON factory, and text made fit to be shown. */
final class JsonLines {
    /** Lines are at most this long, bytes. */
    static final int LONGEST_LINE = 1_000_000;

    static final JsonFactory FACTORY = JsonFactory.builder()
            .streamReadConstraints(StreamReadConstraints.builder()
                    .maxNestingDepth(50)
                    .maxStringLength(LONGEST_LINE)
                    .maxNumberLength(200)
                    .build())
            .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
            .disable(StreamWriteFeature.AUTO_CLOSE_CONTENT)
            .build();

    private JsonLines() {}

    /** Without control characters, and cut short. */
    static String shown(String text) {
        return PlainText.of(text, 60);
    }
}
