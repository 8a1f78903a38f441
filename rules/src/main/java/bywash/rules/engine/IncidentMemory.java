package bywash.rules.engine;

import bywash.rules.recovery.RecoveryMemory;
import bywash.rules.response.IncidentFigures;
import org.jspecify.annotations.Nullable;

/**
 * What a restart needs to know of an incident beside its alarm lines and the entries.
 *
 * @param recovery how far the way back from it has come; null where it is not this that is recovered from
 */
public record IncidentMemory(
        IncidentFigures figures, @Nullable RecoveryMemory recovery) {}
