package bywash.tui.attach;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;

/**
 * What a watch answers to a request: the first line it sends.
 *
 * @param good whether it was done, or begins
 * @param words what stands in the way, or is doubtful about what was done; empty where nothing is
 */
record Answer(boolean good, String words) {
    static final Answer GOOD = new Answer(true, "");

    String toJson() {
        return Request.JSON
                .createObjectNode()
                .put("good", good)
                .put("words", words)
                .toString();
    }

    static Answer read(String line) {
        try {
            JsonNode node = Request.JSON.readTree(line);
            return new Answer(node.path("good").asBoolean(), node.path("words").asText());
        } catch (JsonProcessingException e) {
            return new Answer(false, "the watch did not answer in its own way");
        }
    }
}
