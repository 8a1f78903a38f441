package bywash.tui.screen;

import bywash.tui.view.AlarmPerformanceView;
import bywash.tui.view.Frame;
import bywash.tui.view.Passage;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;

/** How well the alarms served in the last month. What it asks of the record is asked again when an alarm changed, or a minute on. */
final class AlarmPerformancePage extends PassagePage {
    private List<Passage> passages = List.of();
    private long asOf = -1;
    private Instant asked = Instant.MIN;

    @Override
    public String title() {
        return "Alarm performance";
    }

    @Override
    public String purpose() {
        return "Alarm rates, answers and causes of a month";
    }

    @Override
    public Character letter() {
        return 'z';
    }

    @Override
    protected List<Passage> passages(Frame frame) {
        Instant minute = frame.at().truncatedTo(ChronoUnit.MINUTES);
        if (asOf != frame.log().added() || !minute.equals(asked)) {
            passages = AlarmPerformanceView.from(frame);
            asOf = frame.log().added();
            asked = minute;
        }
        return passages;
    }
}
