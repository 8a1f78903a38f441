package bywash.ingest.site;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeasureTest {
    @ParameterizedTest
    @CsvSource({
        "0.74 m, LENGTH, 740",
        "29 in, LENGTH, 736.6",
        "1 ft, LENGTH, 304.8",
        "1e2mm, LENGTH, 100",
        "10 gal, VOLUME, 37.85411784",
        "1.5 m3, VOLUME, 1500",
        "212 degF, TEMPERATURE, 100",
        "273.15 K, TEMPERATURE, 0",
        "-3 Cel, TEMPERATURE, -3",
        "250 ug/L, CONCENTRATION, 0.25",
        "2 lb, MASS, 907.18474",
        "1013 hPa, PRESSURE, 101.3",
        "38 %, FRACTION, 0.38",
        "7.2, PH, 7.2"
    })
    void convertsToTheFixedUnit(String text, Dimension dimension, double expected) throws Exception {
        assertEquals(expected, Measure.parse(text, dimension), 1e-9);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "x; \"x\" is not a number with a unit; a length in m, cm, mm, in or ft",
                "3; \"3\" has no unit; a length in m, cm, mm, in or ft",
                "3 furlong; unit \"furlong\" is not known; a length in m, cm, mm, in or ft",
                "3 kg; \"3 kg\" is a mass, not a length; a length in m, cm, mm, in or ft"
            })
    void saysWhatIsWrongAndWhatWouldBeRight(String text, String what, String right) {
        Measure.NotAMeasure e = assertThrows(Measure.NotAMeasure.class, () -> Measure.parse(text, Dimension.LENGTH));
        assertEquals(what, e.what());
        assertEquals(right, e.right());
    }

    @ParameterizedTest
    @CsvSource({
        "40 min, PT40M, 40 min",
        "1 h, PT1H, 60 min",
        "90s, PT1M30S, 90 s",
        "0.5 s, PT0.5S, 0.5 s",
        "1500 ms, PT1.5S, 1.5 s"
    })
    void readsAndWritesTimes(String text, Duration expected, String written) throws Exception {
        assertEquals(expected, Measure.parseDuration(text));
        assertEquals(written, Measure.format(expected));
    }

    @Test
    void writesTheShortestTextThatReadsBack() throws Exception {
        for (double value : new double[] {160, 0.35, 1.0 / 3, 1e-7, 12345678.9}) {
            assertEquals(value, Measure.parse(Measure.format(value, "L"), Dimension.VOLUME));
        }
        assertEquals("160 L", Measure.format(160, "L"));
    }

    @Test
    void aNumberIsWrittenOut() {
        assertEquals("1000000000 g", Measure.format(1e9, "g"));
        assertEquals("0.00005 mg/L", Measure.format(5e-5, "mg/L"));
        assertEquals("0.9 m", Measure.format(0.9, "m"));
    }
}
