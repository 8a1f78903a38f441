package bywash.bench;

import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/** Prints all rows once more as one table, when the last benchmark is over. Registered for the bench profile alone. */
public final class WholeTable implements BeforeAllCallback {
    @Override
    public void beforeAll(ExtensionContext context) {
        context.getRoot()
                .getStore(ExtensionContext.Namespace.create(WholeTable.class))
                .getOrComputeIfAbsent("table", key -> (AutoCloseable) Budget::printAll);
    }
}
