package bywash.tui.watch;

import bywash.ingest.recording.IsoTime;
import bywash.rules.chlorine.ResidualEstimate;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The estimated residual over time, as the report writes it. Each point is the worst of its interval, so that no peak
 * falls between two points; when there are too many points the interval doubles, so memory stays flat.
 */
final class ResidualSeries {
    /** Points kept at most: a day at one a minute. */
    static final int MOST = 1440;

    private record Point(Instant at, double lowUgL, double likelyUgL, double highUgL) {
        Point worse(Point other) {
            return other.likelyUgL > likelyUgL ? other : this;
        }
    }

    private final List<Point> points = new ArrayList<>();
    private Duration every = Duration.ofMinutes(1);
    private @Nullable Point peak;

    void add(Instant at, ResidualEstimate residual) {
        if (Double.isNaN(residual.likelyUgL())) {
            return;
        }
        Point point = new Point(at, residual.lowUgL(), residual.likelyUgL(), residual.highUgL());
        peak = peak == null ? point : peak.worse(point);
        put(points, point);
        while (points.size() > MOST) {
            every = every.multipliedBy(2);
            List<Point> wider = new ArrayList<>();
            points.forEach(p -> put(wider, p));
            points.clear();
            points.addAll(wider);
        }
    }

    private void put(List<Point> into, Point point) {
        int last = into.size() - 1;
        if (last >= 0 && interval(into.get(last).at()) == interval(point.at())) {
            into.set(last, into.get(last).worse(point));
        } else {
            into.add(point);
        }
    }

    private long interval(Instant at) {
        return Math.floorDiv(at.getEpochSecond(), every.toSeconds());
    }

    void write(JsonGenerator json) throws IOException {
        json.writeObjectFieldStart("residual");
        Point top = peak == null ? new Point(Instant.EPOCH, 0, 0, 0) : peak;
        json.writeNumberField("peak_ug_l", tenths(top.likelyUgL()));
        json.writeNumberField("low_ug_l", tenths(top.lowUgL()));
        json.writeNumberField("high_ug_l", tenths(top.highUgL()));
        json.writeStringField("peak_at", peak == null || top.likelyUgL() <= 0 ? "" : IsoTime.format(top.at()));
        json.writeNumberField("interval_s", every.toSeconds());
        json.writeArrayFieldStart("over_time");
        for (Point point : points) {
            json.writeStartObject();
            json.writeStringField("time", IsoTime.format(point.at()));
            json.writeNumberField("low_ug_l", tenths(point.lowUgL()));
            json.writeNumberField("likely_ug_l", tenths(point.likelyUgL()));
            json.writeNumberField("high_ug_l", tenths(point.highUgL()));
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static double tenths(double value) {
        return Math.round(value * 10) / 10.0;
    }
}
