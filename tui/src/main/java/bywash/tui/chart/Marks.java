package bywash.tui.chart;

import bywash.rules.alarm.AlarmState;
import bywash.tui.view.EventLog.Event;
import bywash.tui.view.Frame;
import bywash.tui.view.LogLine;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** What happened in a window: alarms raised and entries, by column. */
public record Marks(List<Mark> all) {
    /** An alarm was raised here. */
    public static final char ALARM = '!';
    /** The grower entered something here. */
    public static final char ENTRY = 'n';

    /** One thing that happened. */
    public record Mark(int column, char sign, LogLine line) {}

    public Marks {
        all = List.copyOf(all);
    }

    /** Oldest first. */
    public static Marks of(Frame frame, Window window) {
        List<Mark> marks = new ArrayList<>();
        Instant end = window.start(window.columns());
        for (Event event : frame.log().between(window.start(0), end)) {
            int column = window.column(event.at());
            if (column >= 0 && column < window.columns() && shown(event)) {
                LogLine line = LogLine.from(event, frame);
                marks.add(new Mark(column, line.entry() ? ENTRY : ALARM, line));
            }
        }
        Collections.reverse(marks);
        return new Marks(marks);
    }

    private static boolean shown(Event event) {
        return !(event instanceof Event.Alarm alarm)
                || (alarm.transition().state() == AlarmState.UNACKNOWLEDGED
                        && !alarm.transition().again());
    }

    /** The row of signs; an alarm hides an entry in the same column. */
    public String row(int columns) {
        char[] row = " ".repeat(columns).toCharArray();
        for (Mark mark : all) {
            row[mark.column()] = row[mark.column()] == ALARM ? ALARM : mark.sign();
        }
        return new String(row);
    }

    /** What happened in a column or beside it. */
    public List<LogLine> at(int column) {
        return all.stream()
                .filter(m -> Math.abs(m.column() - column) <= 1)
                .map(Mark::line)
                .toList();
    }
}
