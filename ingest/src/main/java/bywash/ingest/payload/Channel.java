package bywash.ingest.payload;

import bywash.ingest.site.ProbeBinding;
import bywash.ingest.site.ProbeBinding.PayloadFormat;
import bywash.rules.event.Reading;
import bywash.rules.site.Quantity;
import bywash.rules.site.Vessel;
import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One probe's way out of a payload. */
final class Channel {
    private final PayloadFormat.Kind format;
    private final String probe;
    private final boolean state;
    private final Conversion conversion;
    private final JsonPointer pointer;
    private final @Nullable String name;

    /** @param vessel that the probe is in; null where the site has none of that name */
    Channel(ProbeBinding binding, @Nullable Vessel vessel) {
        PayloadFormat written = binding.format();
        this.format = written.kind();
        this.probe = binding.probe().id();
        this.state = binding.probe().quantity() == Quantity.STATE;
        this.conversion = new Conversion(binding, vessel);
        this.pointer =
                written instanceof PayloadFormat.Pointer p ? JsonPointer.compile(p.pointer()) : JsonPointer.empty();
        this.name = written instanceof PayloadFormat.SenMl senMl ? senMl.name() : null;
    }

    String probe() {
        return probe;
    }

    void decode(Payload payload, DecodeSink sink) {
        try {
            switch (format) {
                case NUMBER -> now(fromNumber(payload.bytes()), payload, sink);
                case POINTER -> now(fromJson(payload.tree().at(pointer)), payload, sink);
                case SENML -> fromSenMl(payload, sink);
            }
        } catch (PayloadFault e) {
            sink.refused(probe, payload.receivedAt(), e.reason());
        }
    }

    /** A number without a time of its own; one that was kept is a reading only where it tells a state. */
    private void now(double raw, Payload payload, DecodeSink sink) throws PayloadFault {
        if (state || !payload.retained()) {
            accept(raw, null, payload.receivedAt(), sink);
        }
    }

    private void accept(double raw, @Nullable String unit, Instant at, DecodeSink sink) throws PayloadFault {
        sink.reading(new Reading(probe, at, conversion.toFixed(raw, unit)));
    }

    private double fromNumber(byte[] bytes) throws PayloadFault {
        return state ? StateWord.parse(bytes) : NumberText.parse(bytes);
    }

    private double fromJson(JsonNode node) throws PayloadFault {
        if (node.isMissingNode() || node.isNull()) {
            throw new PayloadFault("nothing stands at " + PayloadFault.quoted(pointer.toString()));
        }
        if (node.isNumber()) {
            double value = node.doubleValue();
            if (!Double.isFinite(value)) {
                throw new PayloadFault("the value is too large a number");
            }
            return value;
        }
        if (node.isTextual()) {
            return fromNumber(node.textValue().getBytes(StandardCharsets.UTF_8));
        }
        if (node.isBoolean() && state) {
            return node.booleanValue() ? 1 : 0;
        }
        throw new PayloadFault("the value at " + PayloadFault.quoted(pointer.toString()) + " is not a number");
    }

    private void fromSenMl(Payload payload, DecodeSink sink) throws PayloadFault {
        List<SenMlRecord> pack = payload.senMl();
        if (name == null && pack.size() != 1) {
            throw new PayloadFault("the SenML pack has " + pack.size() + " records and the probe has no name");
        }
        boolean found = false;
        for (SenMlRecord record : pack) {
            if (name == null || record.name().endsWith(name)) {
                found = true;
                one(record, payload, sink);
            }
        }
        if (!found && !payload.wantedByAnother(this)) {
            throw new PayloadFault("no SenML record's name ends with " + PayloadFault.quoted(String.valueOf(name)));
        }
    }

    /** Whether the pack has a record for this probe. */
    boolean matches(List<SenMlRecord> pack) {
        return name != null && pack.stream().anyMatch(r -> r.name().endsWith(name));
    }

    private void one(SenMlRecord record, Payload payload, DecodeSink sink) {
        if (!state && payload.retained() && !SenMlTime.absolute(record.time())) {
            return;
        }
        try {
            accept(value(record), record.unit(), SenMlTime.of(record.time(), payload.receivedAt()), sink);
        } catch (PayloadFault e) {
            sink.refused(probe, payload.receivedAt(), e.reason());
        }
    }

    private double value(SenMlRecord record) throws PayloadFault {
        if (!Double.isNaN(record.number())) {
            return record.number();
        }
        if (state && record.flag() != null) {
            return record.flag() ? 1 : 0;
        }
        if (state && record.text() != null) {
            return StateWord.parse(record.text());
        }
        throw new PayloadFault("the SenML record has no number");
    }
}
