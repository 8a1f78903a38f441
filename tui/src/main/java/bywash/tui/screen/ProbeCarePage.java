package bywash.tui.screen;

import bywash.tui.view.Frame;
import bywash.tui.view.Passage;
import bywash.tui.view.ProbeCareView;
import java.util.List;

/** The probes' book. */
final class ProbeCarePage extends PassagePage {
    @Override
    public String title() {
        return "Probe care";
    }

    @Override
    public String purpose() {
        return "Calibrations, drift, manual tests, what is due";
    }

    @Override
    public Character letter() {
        return 'c';
    }

    @Override
    protected List<Passage> passages(Frame frame) {
        return ProbeCareView.from(frame);
    }
}
