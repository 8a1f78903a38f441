package bywash.tui.watch;

import bywash.ingest.recording.IsoTime;
import bywash.rules.chlorine.ChlorineMemory;
import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import java.time.Instant;
import java.util.Optional;

/** What the journal keeps of chlorine, as a JSON object with the names of the records, and back. */
final class ChlorineMemoryJson {
    private static final ObjectMapper JSON = new ObjectMapper()
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .registerModule(new SimpleModule()
                    .addSerializer(Instant.class, new TimeOut())
                    .addDeserializer(Instant.class, new TimeIn()));

    private ChlorineMemoryJson() {}

    static String of(ChlorineMemory memory) {
        try {
            return JSON.writeValueAsString(memory);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("numbers, words and times can always be written", e);
        }
    }

    /** Empty where the text is no such object, or spoilt. */
    static Optional<ChlorineMemory> read(String text) {
        try {
            return Optional.ofNullable(JSON.readValue(text, ChlorineMemory.class));
        } catch (JsonProcessingException | RuntimeException e) {
            return Optional.empty();
        }
    }

    private static final class TimeOut extends StdSerializer<Instant> {
        private static final long serialVersionUID = 1L;

        TimeOut() {
            super(Instant.class);
        }

        @Override
        public void serialize(Instant at, JsonGenerator to, SerializerProvider provider) throws IOException {
            to.writeString(IsoTime.format(at));
        }
    }

    private static final class TimeIn extends StdDeserializer<Instant> {
        private static final long serialVersionUID = 1L;

        TimeIn() {
            super(Instant.class);
        }

        @Override
        public Instant deserialize(JsonParser from, DeserializationContext context)
                throws IOException, JacksonException {
            Instant at = IsoTime.parse(from.getText());
            if (at == null) {
                throw context.weirdStringException(from.getText(), Instant.class, "no time");
            }
            return at;
        }
    }
}
