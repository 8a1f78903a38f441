package bywash.ingest.payload;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Reads and resolves a SenML pack in JSON (RFC 8428). Base fields hold from their record on until they recur; labels that
 * are not known are passed over, but for those that end in an underscore, which must be understood; versions above 10 are refused.
 */
final class SenMlPack {
    private static final int KNOWN_VERSION = 10;
    private static final int MOST_RECORDS = 1000;

    private final JsonParser json;
    private String baseName = "";
    private @Nullable String baseUnit;
    private double baseTime;
    private double baseValue;

    private @Nullable String name;
    private @Nullable String unit;
    private double time;
    private double number;
    private @Nullable String text;
    private @Nullable Boolean flag;
    private int values;
    private boolean sum;

    private SenMlPack(JsonParser json) {
        this.json = json;
    }

    static List<SenMlRecord> read(byte[] payload) throws PayloadFault {
        try (JsonParser json = BoundedJson.FACTORY.createParser(payload)) {
            return new SenMlPack(json).pack();
        } catch (IOException e) {
            throw new PayloadFault("the payload is not JSON");
        }
    }

    private List<SenMlRecord> pack() throws IOException, PayloadFault {
        List<SenMlRecord> records = new ArrayList<>();
        if (json.nextToken() != JsonToken.START_ARRAY) {
            throw new PayloadFault("the SenML pack is not an array");
        }
        while (json.nextToken() != JsonToken.END_ARRAY) {
            if (json.currentToken() != JsonToken.START_OBJECT) {
                throw new PayloadFault("a SenML record is not an object");
            }
            SenMlRecord resolved = resolve();
            if (resolved != null) {
                records.add(resolved);
            }
            if (records.size() > MOST_RECORDS) {
                throw new PayloadFault("the SenML pack has more than " + MOST_RECORDS + " records");
            }
        }
        if (json.nextToken() != null) {
            throw new PayloadFault("something follows the SenML pack");
        }
        return records;
    }

    /** Reads one record; null for one that only sets base fields. */
    private @Nullable SenMlRecord resolve() throws IOException, PayloadFault {
        name = null;
        unit = null;
        time = 0;
        number = Double.NaN;
        text = null;
        flag = null;
        values = 0;
        sum = false;
        for (String label = json.nextFieldName(); label != null; label = json.nextFieldName()) {
            json.nextToken();
            if (!base(label)) {
                field(label);
            }
        }
        if (values > 1) {
            throw new PayloadFault("a SenML record has more than one value");
        }
        if (values == 0 && !sum) {
            return null;
        }
        String full = name == null ? baseName : baseName + name;
        if (full.isEmpty()) {
            throw new PayloadFault("a SenML record has no name");
        }
        return new SenMlRecord(full, unit == null ? baseUnit : unit, baseTime + time, number + baseValue, text, flag);
    }

    private boolean base(String label) throws IOException, PayloadFault {
        switch (label) {
            case "bn" -> baseName = string(label);
            case "bt" -> baseTime = number(label);
            case "bu" -> baseUnit = string(label);
            case "bv" -> baseValue = number(label);
            case "bs" -> number(label);
            case "bver" -> {
                if (number(label) > KNOWN_VERSION) {
                    throw new PayloadFault("the SenML version is above " + KNOWN_VERSION);
                }
            }
            default -> {
                return false;
            }
        }
        return true;
    }

    private void field(String label) throws IOException, PayloadFault {
        switch (label) {
            case "n" -> name = string(label);
            case "u" -> unit = string(label);
            case "t" -> time = number(label);
            case "ut" -> number(label);
            case "s" -> {
                number(label);
                sum = true;
            }
            case "v" -> {
                number = number(label);
                values++;
            }
            case "vs" -> {
                text = string(label);
                values++;
            }
            case "vd" -> {
                string(label);
                values++;
            }
            case "vb" -> {
                flag = bool();
                values++;
            }
            default -> {
                if (label.endsWith("_")) {
                    throw new PayloadFault("the SenML label " + PayloadFault.quoted(label) + " must be understood");
                }
                json.skipChildren();
            }
        }
    }

    private String string(String label) throws IOException, PayloadFault {
        if (json.currentToken() != JsonToken.VALUE_STRING) {
            throw new PayloadFault("SenML " + label + " is not a text");
        }
        return json.getText();
    }

    private double number(String label) throws IOException, PayloadFault {
        JsonToken token = json.currentToken();
        double value = token != null && token.isNumeric() ? json.getDoubleValue() : Double.NaN;
        if (!Double.isFinite(value)) {
            throw new PayloadFault("SenML " + label + " is not a number");
        }
        return value;
    }

    private boolean bool() throws PayloadFault {
        JsonToken token = json.currentToken();
        if (token != JsonToken.VALUE_TRUE && token != JsonToken.VALUE_FALSE) {
            throw new PayloadFault("SenML vb is not true or false");
        }
        return token == JsonToken.VALUE_TRUE;
    }
}
