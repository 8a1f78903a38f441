package bywash.ingest.payload;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.ObjectMapper;

/** JSON from outside, with bounds on depth and sizes. */
final class BoundedJson {
    static final int LARGEST_PAYLOAD = 65_536;

    static final JsonFactory FACTORY = JsonFactory.builder()
            .streamReadConstraints(StreamReadConstraints.builder()
                    .maxNestingDepth(50)
                    .maxStringLength(LARGEST_PAYLOAD)
                    .maxNumberLength(100)
                    .build())
            .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
            .build();

    static final ObjectMapper MAPPER = new ObjectMapper(FACTORY);

    private BoundedJson() {}
}
