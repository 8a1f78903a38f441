package bywash.tui.view;

import bywash.rules.event.OperatorEntry;
import java.util.List;

/**
 * What is to be said about a form as filled in so far.
 *
 * @param problems what must be put right before it can be entered
 * @param warnings what must be read before it is entered
 * @param entries what it comes to; counts when there is no problem
 * @param done words once it is entered
 */
public record FormCheck(List<String> problems, List<String> warnings, List<OperatorEntry> entries, String done) {
    public FormCheck {
        problems = List.copyOf(problems);
        warnings = List.copyOf(warnings);
        entries = List.copyOf(entries);
    }

    public boolean ready() {
        return problems.isEmpty();
    }

    /** Nothing can be entered yet. */
    public static FormCheck open(List<String> problems, List<String> warnings) {
        return new FormCheck(problems, warnings, List.of(), "");
    }
}
