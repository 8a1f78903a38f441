package bywash.tui.view;

import bywash.rules.alarm.AlarmState;
import bywash.rules.alarm.AlarmView;
import bywash.rules.alarm.Priority;
import bywash.rules.chlorine.Treatment;
import bywash.rules.event.Appetite;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.BatchFill;
import bywash.rules.event.OperatorEntry.BatchTreat;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.Note;
import bywash.rules.event.OperatorEntry.Shelve;
import bywash.rules.event.OperatorEntry.Unshelve;
import bywash.rules.site.Vessel;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Checks of the short forms, and the entries they come to. */
public final class EntryForms {
    /** As an appetite: nothing is said of it. */
    public static final String NOT_SAID = "not said";

    /** As who was fed: all fish, or the bacteria where there are none. */
    public static final String ALL_FISH = "all";

    private static final double MOST_CHEMICAL_G = 5_000;
    private static final int LONGEST_NOTE = 200;

    private EntryForms() {}

    /** Field: the text. */
    public static FormCheck note(Frame frame, Filled filled) {
        String text = filled.text(0);
        if (text.isEmpty()) {
            return FormCheck.open(List.of("Type what is to be remembered."), List.of());
        }
        if (text.length() > LONGEST_NOTE) {
            return FormCheck.open(List.of("At most " + LONGEST_NOTE + " characters."), List.of());
        }
        return good(List.of(), new Note(frame.now(), text), "Noted.");
    }

    /** Fields: mass, protein, appetite, cohort, when. */
    public static FormCheck feed(Frame frame, Filled filled) {
        FormReader in = new FormReader(frame, filled);
        double massG = in.units().grams(filled.number(0));
        if (!(massG >= 0 && Double.isFinite(massG))) {
            in.problem("Feed: type " + in.units().massUnit() + ", 0 or more.");
        }
        double protein = filled.number(1);
        if (!in.blank(1) && !(protein > 0 && protein <= 100)) {
            in.problem("Protein: type percent, above 0 to 100, or leave it open.");
        }
        Appetite appetite = Stream.of(Appetite.values())
                .filter(a -> a.word().equals(filled.text(2)))
                .findFirst()
                .orElse(null);
        String cohort = in.choice(3).equals(ALL_FISH) ? null : in.choice(3);
        Feed entry = new Feed(in.when(4), massG, in.blank(1) ? Double.NaN : protein / 100, cohort, appetite);
        if (in.good()) {
            in.warn(Doubts.of(frame, entry));
        }
        return in.done("Entered: " + in.units().mass(massG) + " fed.", entry);
    }

    /** Fields: reserve, volume. */
    public static FormCheck batchFill(Frame frame, Filled filled) {
        DisplayUnits units = new DisplayUnits(frame.snapshot().site().units());
        double litres = units.litres(filled.number(1));
        Optional<Vessel> reserve = frame.snapshot().site().vessel(filled.text(0));
        if (reserve.isEmpty()) {
            return FormCheck.open(List.of("The site has no reserve."), List.of());
        }
        double room = reserve.get().volumeL();
        if (!(litres > 0) || litres > room) {
            return FormCheck.open(
                    List.of("Volume: type a number above 0, at most the " + units.volume(room) + " it holds."),
                    List.of());
        }
        return good(
                List.of("From now on all of it counts as mains water until it is tested."),
                new BatchFill(frame.now(), filled.text(0), litres),
                "Batch entered; it counts as mains water until it is tested.");
    }

    /** Fields: reserve, treatment, amount, strength. */
    public static FormCheck batchTreat(Frame frame, Filled filled) {
        FormReader in = new FormReader(frame, filled);
        Optional<Treatment> treatment = Treatment.of(filled.text(1));
        if (filled.blank(0) || treatment.isEmpty()) {
            return FormCheck.open(List.of("The site has no reserve."), List.of());
        }
        boolean chemical = treatment.get().chemical();
        double grams = filled.number(2);
        double percent = Double.NaN;
        if (chemical) {
            cautions().forEach(in::warn);
            if (!(grams > 0 && grams <= MOST_CHEMICAL_G)) {
                in.problem("Amount: type grams, above 0 to 5000.");
            }
            percent = in.strength(3, filled.text(1));
        } else if (!filled.blank(2) || !filled.blank(3)) {
            in.problem("Amount and strength: leave them open, " + filled.text(1) + " takes none.");
        }
        return in.done(
                "Treatment entered; test before it is released.",
                new BatchTreat(frame.now(), filled.text(0), filled.text(1), chemical ? grams : Double.NaN, percent));
    }

    private static List<String> cautions() {
        return List.of("Follow the label, wear gloves and eye protection, never mix chemicals.");
    }

    /** Fields: alarm as {@code kind subject}, hours. A shelved alarm is taken off the shelf. */
    public static FormCheck shelve(Frame frame, Filled filled) {
        Optional<AlarmView> found = frame.snapshot().alarms().stream()
                .filter(a -> name(a).equals(filled.text(0)))
                .findFirst();
        if (found.isEmpty()) {
            return FormCheck.open(List.of("No alarm stands that could be shelved."), List.of());
        }
        AlarmView alarm = found.get();
        String kind = alarm.kind().word();
        if (alarm.state() == AlarmState.SHELVED) {
            OperatorEntry entry = new Unshelve(frame.now(), kind, alarm.subject());
            return good(List.of("It is shelved; Enter takes it off the shelf."), entry, "Taken off the shelf.");
        }
        double hours = filled.number(1);
        if (!(hours > 0 && hours <= 24)) {
            return FormCheck.open(List.of("Hours: above 0 to 24."), List.of());
        }
        List<String> warnings = alarm.priority() == Priority.CRITICAL
                ? List.of("It is critical: while it is shelved nobody is told if it gets worse.")
                : List.of();
        Duration time = Duration.ofMinutes(Math.round(hours * 60));
        return good(
                warnings,
                new Shelve(frame.now(), kind, alarm.subject(), time),
                "Shelved for " + Words.span(time) + "; it comes back by itself.");
    }

    /** An alarm's kind and subject. */
    public static String name(AlarmView alarm) {
        return alarm.kind().word() + " " + alarm.subject();
    }

    private static FormCheck good(List<String> warnings, OperatorEntry entry, String done) {
        return new FormCheck(List.of(), warnings, List.of(entry), done);
    }
}
