package bywash.tui.report;

import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmTransition;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Dose;
import bywash.rules.event.OperatorEntry.Note;
import bywash.rules.text.Names;
import bywash.tui.report.Block.Grid;
import bywash.tui.report.Block.Heading;
import bywash.tui.report.Block.Paragraph;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** What went wrong, what was added to the water, and what was noted. */
final class IncidentSection {
    /** One time that an alarm stood. */
    private record Standing(
            AlarmTransition raised, @Nullable Instant over) {}

    private final SeasonData data;

    IncidentSection(SeasonData data) {
        this.data = data;
    }

    List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Heading("Incidents"));
        Table table = incidents();
        blocks.add(table.rows().isEmpty() ? new Paragraph("No alarm stood in this time.") : new Grid(table));
        blocks.add(new Heading("Added to the water, and notes"));
        blocks.add(new Grid(added()));
        data.entries().stream()
                .filter(Note.class::isInstance)
                .map(Note.class::cast)
                .map(n -> new Paragraph(data.when(n.at()) + ": " + Cells.text(n.text())))
                .forEach(blocks::add);
        return blocks;
    }

    private List<Standing> standings() {
        Map<String, Integer> open = new LinkedHashMap<>();
        List<Standing> all = new ArrayList<>();
        for (AlarmTransition t : data.transitions()) {
            String key = t.kind() + " " + t.subject();
            Integer at = open.get(key);
            if (t.state() == AlarmState.UNACKNOWLEDGED && at == null) {
                open.put(key, all.size());
                all.add(new Standing(t, null));
            } else if (at != null && over(t.state())) {
                all.set(at, new Standing(all.get(at).raised(), t.at()));
                open.remove(key);
            }
        }
        return all;
    }

    private static boolean over(AlarmState state) {
        return switch (state) {
            case NORMAL, RETURNED_UNACKNOWLEDGED, SHELVED, SUPPRESSED, OUT_OF_SERVICE -> true;
            case UNACKNOWLEDGED, ACKNOWLEDGED -> false;
        };
    }

    private Table incidents() {
        Table.Builder table = new Table.Builder("incidents", "from", "to", "alarm", "subject", "priority", "what");
        for (Standing s : standings()) {
            table.row(
                    data.when(s.raised().at()),
                    s.over() == null ? "still stands" : data.when(s.over()),
                    s.raised().kind().word(),
                    Cells.text(s.raised().subject()),
                    s.raised().priority().name().toLowerCase(java.util.Locale.ROOT),
                    Cells.text(s.raised().message()));
        }
        return table.build();
    }

    private Table added() {
        Map<String, double[]> sums = new TreeMap<>();
        for (OperatorEntry entry : data.entries()) {
            if (entry instanceof Dose dose) {
                add(sums, Cells.text(Names.words(dose.reagent())) + ", g", dose.massG());
            }
        }
        Table.Builder table = new Table.Builder("added", "what", "times", "in all");
        sums.forEach((what, sum) -> table.row(what, Cells.count((long) sum[0]), Cells.number(sum[1], 0)));
        return table.build();
    }

    private static void add(Map<String, double[]> sums, String what, double amount) {
        double[] sum = sums.computeIfAbsent(what, k -> new double[2]);
        sum[0]++;
        sum[1] += amount;
    }
}
