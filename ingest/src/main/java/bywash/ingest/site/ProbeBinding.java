package bywash.ingest.site;

import bywash.rules.site.Probe;
import org.jspecify.annotations.Nullable;

/**
 * How one probe's readings stand in the feed.
 *
 * @param unit of the payload's number, as written in the site file; null where the payload carries it (SenML)
 * @param mountMm for a level probe that measures distance down, its height above the floor, mm; NaN for depth
 */
public record ProbeBinding(
        Probe probe,
        String topic,
        PayloadFormat format,
        @Nullable String unit,
        double mountMm) {

    /** The shapes a payload may have. */
    public sealed interface PayloadFormat {
        /** Which of the family it is, so that a switch over it is complete. */
        enum Kind {
            NUMBER,
            SENML,
            POINTER
        }

        Kind kind();

        /** Text of one number; for a state probe also on or off. */
        record Number() implements PayloadFormat {
            @Override
            public Kind kind() {
                return Kind.NUMBER;
            }
        }

        /** @param name matched against the end of the resolved name; null takes the only record */
        record SenMl(@Nullable String name) implements PayloadFormat {
            @Override
            public Kind kind() {
                return Kind.SENML;
            }
        }

        /** @param pointer RFC 6901 */
        record Pointer(String pointer) implements PayloadFormat {
            @Override
            public Kind kind() {
                return Kind.POINTER;
            }
        }
    }
}
