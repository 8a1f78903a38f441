package bywash.rules.response;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One step of a sheet.
 *
 * @param id the word that an entry names it by, such as {@code stop-water}
 * @param words what to do
 * @param caution what to mind, empty for none
 * @param doneAt when the grower ticked it; null while it is open
 * @param note what the grower noted with it, empty for none
 */
public record SheetStep(
        String id, String words, String caution, @Nullable Instant doneAt, String note) {

    static SheetStep open(String id, String words, String caution) {
        return new SheetStep(id, words, caution, null, "");
    }

    SheetStep done(Instant at, String with) {
        return new SheetStep(id, words, caution, at, with);
    }
}
