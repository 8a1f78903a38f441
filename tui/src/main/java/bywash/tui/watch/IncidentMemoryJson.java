package bywash.tui.watch;

import bywash.ingest.recording.IsoTime;
import bywash.rules.chlorine.Litres;
import bywash.rules.engine.IncidentMemory;
import bywash.rules.recovery.FeedStage;
import bywash.rules.recovery.RecoveryMemory;
import bywash.rules.response.IncidentFigures;
import bywash.rules.response.IncidentFigures.Peak;
import bywash.rules.response.IncidentFigures.Written;
import bywash.rules.response.SheetStep;
import bywash.rules.response.WaterRun;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What the journal keeps of one incident beside its alarm lines, as a JSON object, and back. */
final class IncidentMemoryJson {
    private static final ObjectMapper JSON = new ObjectMapper();

    private IncidentMemoryJson() {}

    static String of(IncidentMemory memory) {
        IncidentFigures figures = memory.figures();
        ObjectNode node = JSON.createObjectNode();
        node.put("incident", figures.incident());
        Peak peak = figures.peak();
        if (peak != null) {
            node.putObject("peak")
                    .put("at", IsoTime.format(peak.at()))
                    .put("low_ug_l", peak.lowUgL())
                    .put("likely_ug_l", peak.likelyUgL())
                    .put("high_ug_l", peak.highUgL())
                    .put("probability", peak.probability())
                    .put("acute_ug_l", peak.acuteUgL());
        }
        ArrayNode water = node.putArray("water");
        for (WaterRun run : figures.water()) {
            water.addObject()
                    .put("vessel", run.vessel())
                    .put("since", IsoTime.format(run.since()))
                    .put("in", run.in())
                    .put("low_l", run.litres().lowL())
                    .put("likely_l", run.litres().likelyL())
                    .put("high_l", run.litres().highL())
                    .put("source", run.source())
                    .put("declared", run.declared())
                    .put("declared_l", run.declaredL());
        }
        Written sheet = figures.sheet();
        if (sheet != null) {
            put(node.putObject("sheet"), sheet);
        }
        RecoveryMemory recovery = memory.recovery();
        if (recovery != null) {
            node.putObject("recovery")
                    .put("began", IsoTime.format(recovery.began()))
                    .put("feed", word(recovery.feed()))
                    .put("since", IsoTime.format(recovery.since()));
        }
        return node.toString();
    }

    private static void put(ObjectNode node, Written sheet) {
        node.put("as-of", IsoTime.format(sheet.asOf()));
        sheet.water().forEach(node.putArray("water")::add);
        sheet.residual().forEach(node.putArray("residual")::add);
        sheet.rulesOut().forEach(node.putArray("rules-out")::add);
        ArrayNode steps = node.putArray("steps");
        for (SheetStep step : sheet.steps()) {
            steps.addObject().put("id", step.id()).put("words", step.words()).put("caution", step.caution());
        }
    }

    /** Empty where the text is no such object, or spoilt. */
    static Optional<IncidentMemory> read(@Nullable String text) {
        if (text == null) {
            return Optional.empty();
        }
        try {
            JsonNode node = JSON.readTree(text);
            String id = node.path("incident").asText();
            if (id.isEmpty()) {
                return Optional.empty();
            }
            List<WaterRun> water = new ArrayList<>();
            for (JsonNode run : node.path("water")) {
                water.add(new WaterRun(
                        run.path("vessel").asText(),
                        time(run, "since"),
                        run.path("in").asBoolean(),
                        new Litres(number(run, "low_l"), number(run, "likely_l"), number(run, "high_l")),
                        run.path("source").asText(),
                        run.path("declared").asBoolean(),
                        run.path("declared_l").asDouble(0)));
            }
            IncidentFigures figures = new IncidentFigures(
                    id,
                    node.has("peak") ? peak(node.path("peak")) : null,
                    water,
                    node.has("sheet") ? sheet(node.path("sheet")) : null);
            return Optional.of(
                    new IncidentMemory(figures, node.has("recovery") ? recovery(id, node.path("recovery")) : null));
        } catch (JsonProcessingException | IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static Peak peak(JsonNode node) {
        return new Peak(
                time(node, "at"),
                number(node, "low_ug_l"),
                number(node, "likely_ug_l"),
                number(node, "high_ug_l"),
                number(node, "probability"),
                number(node, "acute_ug_l"));
    }

    private static Written sheet(JsonNode node) {
        List<SheetStep> steps = new ArrayList<>();
        for (JsonNode step : node.path("steps")) {
            steps.add(new SheetStep(
                    step.path("id").asText(),
                    step.path("words").asText(),
                    step.path("caution").asText(),
                    null,
                    ""));
        }
        return new Written(
                time(node, "as-of"), words(node, "water"), words(node, "residual"), words(node, "rules-out"), steps);
    }

    private static RecoveryMemory recovery(String id, JsonNode node) {
        for (FeedStage stage : FeedStage.values()) {
            if (word(stage).equals(node.path("feed").asText())) {
                return new RecoveryMemory(id, time(node, "began"), stage, time(node, "since"));
            }
        }
        throw new IllegalArgumentException("no stage of feeding");
    }

    private static String word(FeedStage stage) {
        return stage.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static List<String> words(JsonNode node, String key) {
        List<String> words = new ArrayList<>();
        node.path(key).forEach(word -> words.add(word.asText()));
        return words;
    }

    private static double number(JsonNode node, String key) {
        JsonNode value = node.path(key);
        if (!value.isNumber()) {
            throw new IllegalArgumentException(key + " is no number");
        }
        return value.doubleValue();
    }

    private static Instant time(JsonNode node, String key) {
        Instant at = IsoTime.parse(node.path(key).asText());
        if (at == null) {
            throw new IllegalArgumentException(key + " is no time");
        }
        return at;
    }
}
