package bywash.ingest.payload;

import bywash.ingest.site.ProbeBinding;
import bywash.rules.event.Reading;
import bywash.rules.site.Quantity;
import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One probe's way out of a payload. */
final class Channel {
    private final ProbeBinding.PayloadFormat format;
    private final String probe;
    private final boolean state;
    private final Conversion conversion;
    private final @Nullable JsonPointer pointer;

    Channel(ProbeBinding binding) {
        this.format = binding.format();
        this.probe = binding.probe().id();
        this.state = binding.probe().quantity() == Quantity.STATE;
        this.conversion = new Conversion(binding);
        this.pointer = format instanceof ProbeBinding.PayloadFormat.Pointer p ? JsonPointer.compile(p.pointer()) : null;
    }

    String probe() {
        return probe;
    }

    void decode(Payload payload, DecodeSink sink) {
        try {
            if (format instanceof ProbeBinding.PayloadFormat.SenMl senMl) {
                fromSenMl(payload, senMl, sink);
            } else {
                double raw = pointer == null
                        ? fromNumber(payload.bytes())
                        : fromJson(payload.tree().at(pointer));
                if (state || !payload.retained()) {
                    accept(raw, null, payload.receivedAt(), sink);
                }
            }
        } catch (PayloadFault e) {
            sink.refused(probe, payload.receivedAt(), e.reason());
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
            throw new PayloadFault("nothing stands at " + PayloadFault.quoted(String.valueOf(pointer)));
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
        throw new PayloadFault("the value at " + PayloadFault.quoted(String.valueOf(pointer)) + " is not a number");
    }

    private void fromSenMl(Payload payload, ProbeBinding.PayloadFormat.SenMl senMl, DecodeSink sink)
            throws PayloadFault {
        List<SenMlRecord> pack = payload.senMl();
        String name = senMl.name();
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
        String name = format instanceof ProbeBinding.PayloadFormat.SenMl senMl ? senMl.name() : null;
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
