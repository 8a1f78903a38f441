package bywash.tui.attach;

import bywash.ingest.recording.EntryJson;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.event.OperatorEntry;
import bywash.rules.site.Site;
import bywash.tui.view.Frame;
import bywash.tui.view.SeasonCheck;
import bywash.tui.view.Withdrawals;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.stream.Stream;

/** Whether what an entry names is there: its vessel, its probe, its alarm, its cohort. */
final class EntryCheck {
    private static final List<String> BESIDE_VESSELS = List.of(OperatorEntry.FishMove.AWAY);

    private EntryCheck() {}

    /** What is wrong and what would be right; empty where nothing is. */
    static String problem(Frame frame, OperatorEntry entry) {
        String named = problem(frame.snapshot().site(), entry);
        if (!named.isEmpty()) {
            return named;
        }
        return entry instanceof OperatorEntry.Withdraw withdraw
                ? Withdrawals.problem(frame, withdraw)
                : SeasonCheck.problem(frame.snapshot(), entry);
    }

    private static String problem(Site site, OperatorEntry entry) {
        JsonNode fields;
        try {
            fields = Request.JSON.readTree(EntryJson.toJson(entry));
        } catch (JsonProcessingException e) {
            return "the entry cannot be read: " + e.getOriginalMessage();
        }
        List<String> vessels = Stream.concat(site.vessels().stream().map(v -> v.id()), BESIDE_VESSELS.stream())
                .toList();
        List<String> probes = site.probes().stream().map(p -> p.id()).toList();
        String vessel = named(
                fields,
                "vessel",
                vessels,
                site.vessels().stream().map(v -> v.id()).toList());
        if (!vessel.isEmpty()) {
            return vessel;
        }
        String probe = named(fields, "probe", probes, probes);
        if (!probe.isEmpty()) {
            return probe;
        }
        String alarm = fields.path("alarm").asText("");
        return alarm.isEmpty() || AlarmKind.of(alarm).isPresent()
                ? ""
                : "alarm \"" + alarm + "\" is not known; give one such as " + AlarmKind.LOW_OXYGEN.word();
    }

    private static String named(JsonNode fields, String key, List<String> known, List<String> shown) {
        String name = fields.path(key).asText("");
        return name.isEmpty() || known.contains(name)
                ? ""
                : key + " \"" + name + "\" is not in the site file; it has " + String.join(", ", shown);
    }
}
