package bywash.ingest.site;

import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads how a probe's payload is made: number, senml, or a pointer into JSON. */
final class PayloadReader {
    private static final String FORMS = "number, senml or {pointer: /...}";

    private final Problems problems;

    PayloadReader(Problems problems) {
        this.problems = problems;
    }

    ProbeBinding.@Nullable PayloadFormat read(YamlMap probe) {
        Node node = probe.node("payload");
        if (node == null) {
            probe.missing("payload", FORMS);
            return null;
        }
        if (node instanceof MappingNode) {
            noName(probe);
            return pointer(probe, node);
        }
        String word = probe.text("payload");
        if (word == null) {
            return null;
        }
        String name = probe.text("name");
        if (word.equals("senml")) {
            return new ProbeBinding.PayloadFormat.SenMl(name);
        }
        if (word.equals("number")) {
            noName(probe);
            return new ProbeBinding.PayloadFormat.Number();
        }
        probe.fault("payload", "payload " + YamlMap.quoted(word) + " is not known", FORMS);
        return null;
    }

    private static void noName(YamlMap probe) {
        if (probe.has("name")) {
            probe.fault("name", "name goes with payload senml only", "no name");
        }
    }

    private ProbeBinding.@Nullable PayloadFormat pointer(YamlMap probe, Node node) {
        YamlMap map = YamlMap.at(problems, "payload: ", probe.keyNode("payload"), node, "pointer");
        String pointer = map == null ? null : map.required("pointer", "pointer: /...");
        if (map == null || pointer == null) {
            return null;
        }
        if (!pointer.startsWith("/") || pointer.matches("(?s).*~([^01].*|$)")) {
            map.fault(
                    "pointer",
                    "pointer " + YamlMap.quoted(pointer) + " is not a JSON pointer",
                    "RFC 6901: /key/key, with ~1 for / and ~0 for ~");
            return null;
        }
        return new ProbeBinding.PayloadFormat.Pointer(pointer);
    }
}
