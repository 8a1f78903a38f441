package bywash.rules.engine;

import bywash.rules.alarm.AlarmBoard;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.Condition;
import bywash.rules.engine.ProbeStatus.Health;
import bywash.rules.site.Band;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.text.Figures;
import bywash.rules.text.Names;
import bywash.rules.text.Spans;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Alarms that follow from single probes: health, limits with deadband, temperature swing. */
final class ProbeRules {
    /** Change that counts as a swing, Cel an hour. Common practice, no source. */
    private static final double SWING_C_PER_HOUR = 2.0;

    private final AlarmBoard board;

    ProbeRules(AlarmBoard board) {
        this.board = board;
    }

    void tick(ProbeMonitor monitor, Health health, Instant at) {
        health(monitor, health, at);
        if (health == Health.GOOD || health == Health.STUCK) {
            limits(monitor, at, monitor.band());
        } else {
            limited(monitor.probe().quantity())
                    .forEach(kind -> board.unknown(kind, monitor.probe().vessel()));
        }
    }

    /** The alarms that {@link #limits} sets. */
    private static List<AlarmKind> limited(Quantity quantity) {
        return switch (quantity) {
            case PH -> List.of(AlarmKind.PH_LOW, AlarmKind.PH_HIGH);
            case TEMPERATURE ->
                List.of(AlarmKind.TEMPERATURE_LOW, AlarmKind.TEMPERATURE_HIGH, AlarmKind.TEMPERATURE_SWING);
            case DISSOLVED_OXYGEN -> List.of(AlarmKind.LOW_OXYGEN);
            case ORP -> List.of(AlarmKind.ORP_LOW);
            case LEVEL, CONDUCTIVITY, FLOW, STATE -> List.of();
        };
    }

    private void health(ProbeMonitor monitor, Health health, Instant at) {
        Probe probe = monitor.probe();
        switch (health) {
            case WAITING -> {
                board.unknown(AlarmKind.PROBE_SILENT, probe.id());
                board.unknown(AlarmKind.PROBE_STUCK, probe.id());
            }
            case SILENT -> {
                board.set(AlarmKind.PROBE_SILENT, probe.id(), at, silent(monitor, at));
                board.unknown(AlarmKind.PROBE_STUCK, probe.id());
            }
            case GOOD, STUCK, IMPLAUSIBLE -> {
                board.set(AlarmKind.PROBE_SILENT, probe.id(), at, null);
                board.set(AlarmKind.PROBE_STUCK, probe.id(), at, health == Health.STUCK ? stuck(monitor) : null);
            }
        }
        board.set(
                AlarmKind.PROBE_IMPLAUSIBLE,
                probe.id(),
                at,
                health == Health.IMPLAUSIBLE
                        ? Condition.of(
                                named(probe) + " sends what cannot be true: " + monitor.refusal(),
                                "Refused " + ProbeMonitor.REFUSALS
                                        + " times in a row or more; what is shown is the last that could be.",
                                null)
                        : null);
    }

    private static Condition stuck(ProbeMonitor monitor) {
        return Condition.of(
                named(monitor.probe()) + " has not moved at all",
                "The same value for over " + monitor.stuckAfter().toMinutes() + " min.",
                null,
                "value",
                monitor.value());
    }

    private static Condition silent(ProbeMonitor monitor, Instant at) {
        Instant last = monitor.at();
        String age = last == null ? "since the watch began" : "for " + Spans.of(last, at);
        return Condition.of(
                "No reading from " + named(monitor.probe()) + " " + age,
                "A reading is due every " + monitor.probe().every().getSeconds() + " s.",
                null,
                "since",
                Objects.toString(last, ""));
    }

    private static String named(Probe probe) {
        return probe.id() + " (" + probe.quantity().word() + " in " + probe.vessel() + ")";
    }

    private void limits(ProbeMonitor monitor, Instant at, @Nullable Band band) {
        Probe probe = monitor.probe();
        switch (probe.quantity()) {
            case PH -> both(monitor, at, band, AlarmKind.PH_LOW, AlarmKind.PH_HIGH);
            case TEMPERATURE -> {
                both(monitor, at, band, AlarmKind.TEMPERATURE_LOW, AlarmKind.TEMPERATURE_HIGH);
                if (band != null) {
                    swing(monitor, at);
                }
            }
            case DISSOLVED_OXYGEN -> low(monitor, at, band, AlarmKind.LOW_OXYGEN);
            case ORP -> low(monitor, at, band, AlarmKind.ORP_LOW);
            case LEVEL, CONDUCTIVITY, FLOW, STATE -> {}
        }
    }

    private void both(ProbeMonitor m, Instant at, @Nullable Band band, AlarmKind low, AlarmKind high) {
        low(m, at, band, low);
        String vessel = m.probe().vessel();
        Quantity quantity = m.probe().quantity();
        double edge = band == null ? Double.POSITIVE_INFINITY : band.high();
        double value = m.value();
        boolean above = value > edge || value > edge - Bands.deadband(quantity) && board.stands(high, vessel);
        set(m, high, at, above ? crossed(m, "above", edge) : null);
    }

    private void low(ProbeMonitor m, Instant at, @Nullable Band band, AlarmKind low) {
        String vessel = m.probe().vessel();
        double edge = band == null ? Double.NEGATIVE_INFINITY : band.low();
        double value = m.value();
        boolean below =
                value < edge || value < edge + Bands.deadband(m.probe().quantity()) && board.stands(low, vessel);
        set(m, low, at, below ? crossed(m, "below", edge) : null);
    }

    /** A good value that a probe sends from a cleaner's bucket is no evidence that the water is good again. */
    private void set(ProbeMonitor m, AlarmKind kind, Instant at, @Nullable Condition condition) {
        if (condition == null && m.handled()) {
            board.unknown(kind, m.probe().vessel());
        } else {
            board.set(kind, m.probe().vessel(), at, condition);
        }
    }

    private static Condition crossed(ProbeMonitor m, String side, double edge) {
        Quantity quantity = m.probe().quantity();
        String unit = quantity == Quantity.PH ? "" : " " + Names.unit(quantity.unit());
        String message = String.format(
                Locale.ROOT,
                "%s in %s is %.2f%s, %s %.2f%s",
                quantity.word(),
                m.probe().vessel(),
                m.value(),
                unit,
                side,
                edge,
                quantity == Quantity.TEMPERATURE ? unit : "");
        String trend = Double.isNaN(m.perHour())
                ? "trend not known yet."
                : "trend " + Figures.of(m.perHour(), 2) + " an hour.";
        String why = "Probe " + m.probe().id() + "; " + trend;
        return Condition.of(message, why, null, key(quantity), Text.round(m.value(), 3), "limit", edge);
    }

    private static String key(Quantity quantity) {
        return switch (quantity) {
            case PH -> "ph";
            case TEMPERATURE -> "temperature_cel";
            case DISSOLVED_OXYGEN -> "dissolved_oxygen_mg_l";
            case ORP -> "orp_mv";
            case LEVEL -> "level_mm";
            case CONDUCTIVITY -> "conductivity_us_cm";
            case FLOW -> "flow_l_min";
            case STATE -> "state";
        };
    }

    private void swing(ProbeMonitor m, Instant at) {
        double perHour = m.perHour();
        boolean swings = StrictMath.abs(perHour) > SWING_C_PER_HOUR;
        String vessel = m.probe().vessel();
        set(
                m,
                AlarmKind.TEMPERATURE_SWING,
                at,
                swings
                        ? Condition.of(
                                "temperature in " + vessel + " moves " + Figures.of(perHour, 1) + " C an hour",
                                "Slope of the last half hour; cold mains water is one cause.",
                                null,
                                "temperature_cel_per_hour",
                                Text.round(perHour, 2))
                        : null);
    }
}
