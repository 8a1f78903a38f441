package bywash.tui.view;

import bywash.ingest.site.KnownWords;
import bywash.rules.alarm.AlarmView;
import bywash.rules.engine.Snapshot;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.StepDone;
import bywash.rules.event.OperatorEntry.Withdraw;
import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.response.ResponseSheet;
import bywash.rules.response.SheetStep;
import bywash.rules.site.Site;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Whether an entry can be taken as it is: the same for forms and for the shell. */
public final class EntryCheck {
    private EntryCheck() {}

    /** What is wrong and what would be right, without a full stop; empty where nothing is. */
    public static String problem(Frame frame, OperatorEntry entry) {
        Snapshot snapshot = frame.snapshot();
        String named = problem(snapshot.site(), snapshot.season(), snapshot.alarms(), entry);
        if (!named.isEmpty()) {
            return named;
        }
        if (entry instanceof Withdraw withdraw) {
            return Withdrawals.problem(frame, withdraw);
        }
        return entry instanceof StepDone step
                ? step(snapshot.care().sheets(), step)
                : SeasonCheck.problem(snapshot, entry);
    }

    /** What may be right but is rather a slip, as a sentence; empty where there is nothing to say. */
    public static String doubt(Frame frame, OperatorEntry entry) {
        return Doubts.of(frame, entry);
    }

    /** The same of what a site file alone can tell. */
    public static String problem(Site site, List<AlarmView> standing, OperatorEntry entry) {
        return problem(site, null, standing, entry);
    }

    private static String problem(
            Site site, @Nullable SeasonStatus season, List<AlarmView> standing, OperatorEntry entry) {
        String named = NameCheck.problem(site, standing, entry);
        String amount = named.isEmpty() ? AmountCheck.problem(site, entry) : named;
        return amount.isEmpty() ? SizeCheck.problem(site, season, entry) : amount;
    }

    private static String step(List<ResponseSheet> sheets, StepDone entry) {
        List<String> incidents = sheets.stream().map(ResponseSheet::incident).toList();
        for (ResponseSheet sheet : sheets) {
            List<String> steps = sheet.steps().stream().map(SheetStep::id).toList();
            if (sheet.incident().equals(entry.incident())) {
                return steps.contains(entry.step())
                        ? ""
                        : "step \"" + entry.step() + "\" is not on its sheet; it has "
                                + String.join(", ", KnownWords.nearestFirst(entry.step(), steps));
            }
        }
        return "incident \"" + entry.incident() + "\" is not on record; "
                + (incidents.isEmpty()
                        ? "there is none"
                        : "it has " + String.join(", ", KnownWords.nearestFirst(entry.incident(), incidents)));
    }
}
