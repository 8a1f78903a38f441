package bywash.rules.alarm;

import java.time.Duration;

/**
 * What an alarm most often comes of, and how soon somebody should be at it. Common practice, no source; where a deadline is
 * known from the water itself, that one counts.
 *
 * @param cause one line, the most likely first
 * @param respondWithin from the call to the first hand on a valve, a pump or a test
 */
public record AlarmRationale(String cause, Duration respondWithin) {

    public static AlarmRationale of(AlarmKind kind) {
        return switch (kind) {
            case UNPLANNED_INFLOW -> minutes(10, "a valve or a hose left open, a float valve that leaks, rain");
            case UNPLANNED_LOSS -> minutes(10, "a hose off its joint, a drain open, a bed that overflows");
            case OVERFLOW_NEAR -> minutes(5, "more water in than goes out: an inlet, rain, a pump that stands");
            case LINE_NOT_SHUT -> minutes(10, "the top-up's valve not shut to the end, or worn");
            case UNSAFE_RELEASE -> minutes(5, "the reserve released before a test showed it free of chlorine");
            case CHLORINE_RISK -> minutes(10, "mains water in the system, untreated");
            case LOW_OXYGEN -> minutes(10, "a pump or an air stone that stands, warm water, too much feed");
            case PUMP_STOPPED -> minutes(10, "power, a fuse, a blocked intake");
            case PH_LOW, PH_HIGH -> minutes(60, "alkalinity used up by nitrification, or water or reagent put in");
            case TEMPERATURE_LOW, TEMPERATURE_HIGH, TEMPERATURE_SWING ->
                minutes(30, "heater, shade or weather; cold water that came in");
            case ORP_LOW -> minutes(60, "rotting feed or a dead fish; little oxygen; a dirty probe");
            case ORP_RISE -> minutes(30, "an oxidiser such as chlorine in the water; a probe just cleaned");
            case AMMONIA_TOXIC, NITRITE_HIGH ->
                minutes(60, "more feed than the filter takes, or a filter that is harmed");
            case BIOFILTER_SETBACK -> minutes(120, "disinfectant, low pH or lack of oxygen in the filter");
            case FEED_LOST -> minutes(15, "broker, network or power");
            case PROBE_SILENT -> minutes(30, "its power, cable or radio");
            case PROBE_STUCK, PROBE_IMPLAUSIBLE -> minutes(60, "fouled, dried out or disconnected");
        };
    }

    private static AlarmRationale minutes(long within, String cause) {
        return new AlarmRationale(cause, Duration.ofMinutes(within));
    }
}
