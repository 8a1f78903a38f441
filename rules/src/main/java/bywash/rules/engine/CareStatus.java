package bywash.rules.engine;

import bywash.rules.chlorine.BatchView;
import bywash.rules.prevention.Suggestion;
import bywash.rules.recovery.RecoveryView;
import bywash.rules.response.ResponseSheet;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What to do and what was done: batches, response sheets, recovery and prevention.
 *
 * @param batches one for each reserve
 * @param sheets newest first
 * @param recovery null where nothing is recovered from
 */
public record CareStatus(
        List<BatchView> batches,
        List<ResponseSheet> sheets,
        @Nullable RecoveryView recovery,
        List<Suggestion> suggestions) {
    /** Nothing on record. */
    public static final CareStatus NONE = new CareStatus(List.of(), List.of(), null, List.of());

    public CareStatus {
        batches = List.copyOf(batches);
        sheets = List.copyOf(sheets);
        suggestions = List.copyOf(suggestions);
    }
}
