package bywash.ingest.recording;

import bywash.rules.event.EntryKind;
import bywash.rules.event.OperatorEntry.Withdraw;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.Instant;

/** The entry that takes another back, read and written: {@code "entry":"feed","entered":"...","which":2,"why":"twice"}. */
final class WithdrawEntry {
    private WithdrawEntry() {}

    static Withdraw read(Instant at, EntryFields f) throws BrokenEntry {
        String word = f.text("entry");
        EntryKind kind = EntryKind.of(word);
        if (kind == null || kind == EntryKind.WITHDRAW) {
            throw new BrokenEntry("\"entry\" of withdraw is \"" + JsonLines.shown(word) + "\"", EntryKind.words());
        }
        Instant entered = IsoTime.parse(f.text("entered"));
        if (entered == null) {
            throw new BrokenEntry(
                    "\"entered\" of withdraw is no time", "the time of that entry, such as 2026-05-04T06:00:00.000Z");
        }
        int which = f.has("which") ? f.count("which") : 1;
        if (which < 1) {
            throw new BrokenEntry("\"which\" of withdraw is 0", "1 for the first entry of that time, 2 for the next");
        }
        String why = f.textOrNull("why");
        return new Withdraw(at, word, entered, which, why == null ? "" : why);
    }

    static void write(JsonGenerator json, Withdraw e) throws IOException {
        EntryWriter.text(json, "entry", e.of());
        EntryWriter.text(json, "entered", IsoTime.format(e.entered()));
        if (e.which() != 1) {
            json.writeNumberField("which", e.which());
        }
        EntryWriter.text(json, "why", e.why().isEmpty() ? null : e.why());
    }
}
