package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.chlorine.ResidualEstimate;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class ResidualSeriesTest {
    private static final Instant START = Instant.parse("2026-05-04T06:00:00Z");

    @Test
    void keepsThePeakHoweverLongTheReplay() throws IOException {
        ResidualSeries series = new ResidualSeries();
        for (int minute = 0; minute < 10 * ResidualSeries.MOST; minute++) {
            double likely = minute == 7777 ? 31 : minute % 5;
            series.add(START.plusSeconds(60L * minute), estimate(likely));
        }
        JsonNode residual = written(series);
        assertEquals(31, residual.get("peak_ug_l").asDouble());
        assertEquals("2026-05-09T15:37:00.000Z", residual.get("peak_at").asText());
        assertTrue(residual.get("over_time").size() <= ResidualSeries.MOST);
        assertTrue(residual.get("over_time").size() > ResidualSeries.MOST / 2);
        assertEquals(960, residual.get("interval_s").asInt());
        double highest = 0;
        for (JsonNode point : residual.get("over_time")) {
            highest = Math.max(highest, point.get("likely_ug_l").asDouble());
        }
        assertEquals(31, highest);
    }

    @Test
    void eachPointHasItsRange() throws IOException {
        ResidualSeries series = new ResidualSeries();
        series.add(START, estimate(4));
        series.add(START.plusSeconds(30), estimate(6));
        series.add(START.plusSeconds(60), estimate(5));
        JsonNode points = written(series).get("over_time");
        assertEquals(2, points.size());
        assertEquals(
                "{\"time\":\"2026-05-04T06:00:30.000Z\",\"low_ug_l\":3.0,\"likely_ug_l\":6.0,\"high_ug_l\":12.0}",
                points.get(0).toString());
    }

    @Test
    void nothingEstimatedIsNoPeak() throws IOException {
        JsonNode residual = written(new ResidualSeries());
        assertEquals("", residual.get("peak_at").asText());
        assertEquals(0, residual.get("over_time").size());
    }

    private static ResidualEstimate estimate(double likely) {
        return new ResidualEstimate(likely / 2, likely, likely * 2, 0, null, List.of());
    }

    private static JsonNode written(ResidualSeries series) throws IOException {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.writeStartObject();
            series.write(json);
            json.writeEndObject();
        }
        return new ObjectMapper().readTree(text.toString()).get("residual");
    }
}
