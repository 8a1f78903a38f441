package bywash.tui.command.calc;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class TypedTest {

    @ParameterizedTest
    @CsvSource({
        "72 degF, TEMPERATURE, 22.2222222222",
        "22 Cel, TEMPERATURE, 22",
        "-1.5C, TEMPERATURE, -1.5",
        "211 gal, VOLUME, 798.721886424",
        "1.5 m3, VOLUME, 1500",
        "1 gpm, FLOW, 3.785411784",
        "240 L/h, FLOW, 4",
        "19 ug/L, CONCENTRATION, 0.019",
        "1 ppm, CONCENTRATION, 1",
        "30 in, LENGTH, 762",
        "2 ft, LENGTH, 609.6",
        "65 ft2, AREA, 6.0386976",
        "26 lb, MASS, 11793.40162",
        "90 min, TIME, 1.5",
        "2 d, TIME, 48",
        "29.921252401 inHg, PRESSURE, 1013.25",
        "760 mmHg, PRESSURE, 1013.25",
        "0.31 V, POTENTIAL, 310",
        "12 1/d, RATE, 0.5",
        "1e1 %, PERCENT, 10",
        "7.2, PH, 7.2",
        "7.2 pH, PH, 7.2"
    })
    void metricAndCustomaryUnitsAreRead(String text, Dimension dimension, double expected) {
        assertEquals(expected, Typed.measure("--x", text, dimension), 1e-6 * Math.max(1, Math.abs(expected)));
    }

    @ParameterizedTest
    @EnumSource(Dimension.class)
    void theExampleOfEachKindIsRead(Dimension dimension) {
        double number = Double.parseDouble(dimension.example().split(" ", 2)[0]);
        double read = Typed.measure("--x", dimension.example(), dimension);
        assertEquals(true, read == number || read == 1000 * number, dimension.example() + " read as " + read);
    }

    @ParameterizedTest
    @ValueSource(strings = {"22", "Cel", "22 cel", "22 Cel Cel", "NaN Cel", "", "2,5 Cel", "0x10 Cel"})
    void whatIsNoMeasureIsRefusedInOneMessage(String text) {
        String message = assertThrows(
                        IllegalArgumentException.class,
                        () -> Typed.measure("--temperature", text, Dimension.TEMPERATURE))
                .getMessage();
        assertEquals(
                "--temperature is \"" + text
                        + "\"; it must be a number with one of the units Cel, degC, C, degF, F, such as \"22 Cel\"",
                message);
    }

    @Test
    void numbersAreWrittenToFourFiguresWithoutExponent() {
        assertEquals("0", Figures.plain(0));
        assertEquals("0.00001235", Figures.plain(1.23456e-5));
        assertEquals("123500", Figures.plain(123456));
        assertEquals("never", Figures.withUnit(Double.POSITIVE_INFINITY, "h"));
        assertEquals("-1.5 mV", Figures.withUnit(-1.5, "mV"));
        assertEquals("20 Cel (68 degF)", Figures.withUnit(20, "Cel"));
    }
}
