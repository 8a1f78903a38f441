package bywash.tui.attach;

import bywash.ingest.recording.BrokenEntry;
import bywash.ingest.recording.EntryJson;
import bywash.rules.event.OperatorEntry;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;

/** What a caller wants of a watch: the first line it sends, {@code {"do":"attach",...}}. */
sealed interface Request {
    /** Which of the family it is, so that a switch over it is complete; each kind is one record. */
    enum Kind {
        ATTACH,
        ENTER
    }

    Kind kind();

    /** Draw the screen here. */
    record Attach(int columns, int rows, boolean unicode, boolean colour) implements Request {
        @Override
        public Kind kind() {
            return Kind.ATTACH;
        }
    }

    /** Take this down. */
    record Enter(OperatorEntry entry) implements Request {
        @Override
        public Kind kind() {
            return Kind.ENTER;
        }
    }

    ObjectMapper JSON = new ObjectMapper();

    /** One line, without its end. */
    static String toJson(Request request) {
        ObjectNode node = JSON.createObjectNode();
        switch (request.kind()) {
            case ATTACH -> {
                Attach a = (Attach) request;
                node.put("do", "attach").put("columns", a.columns()).put("rows", a.rows());
                node.put("unicode", a.unicode()).put("colour", a.colour());
            }
            case ENTER -> node.put("do", "enter").put("entry", EntryJson.toJson(((Enter) request).entry()));
        }
        return node.toString();
    }

    /**
     * Reads a line.
     *
     * @throws IOException in words, where it is no request
     */
    static Request read(String line) throws IOException {
        JsonNode node;
        try {
            node = JSON.readTree(line);
        } catch (JsonProcessingException e) {
            throw new IOException("the request is not JSON", e);
        }
        return switch (node.path("do").asText()) {
            case "attach" ->
                new Attach(
                        node.path("columns").asInt(80),
                        node.path("rows").asInt(24),
                        node.path("unicode").asBoolean(),
                        node.path("colour").asBoolean());
            case "enter" -> {
                try {
                    yield new Enter(EntryJson.fromJson(node.path("entry").asText()));
                } catch (BrokenEntry e) {
                    throw new IOException(e.getMessage(), e);
                }
            }
            default -> throw new IOException("the request is not known; is the watch of an older version?");
        };
    }
}
