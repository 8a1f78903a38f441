package bywash.tui.screen;

import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.tui.view.DisplayUnits;
import bywash.tui.view.Filled;
import bywash.tui.view.FormCheck;
import bywash.tui.view.Frame;
import bywash.tui.view.Reserves;
import bywash.tui.view.TopUpCheck;
import bywash.tui.view.TopUpDraft;
import bywash.tui.view.TopUpProgress;
import java.util.ArrayList;
import java.util.List;

/** Declaring a top-up before water runs. */
final class TopUpPage extends FormPage {
    private static final int VOLUME = 2;

    TopUpPage() {
        super("Top-up", "Declare a top-up before water runs");
    }

    @Override
    public Character letter() {
        return 't';
    }

    @Override
    public String barWord() {
        return "top-up";
    }

    @Override
    public String shut(Frame frame) {
        return TopUpProgress.from(frame).running() ? "A top-up is running; end it first." : "";
    }

    @Override
    protected List<Field> fields(Frame frame) {
        List<String> vessels = new ArrayList<>();
        for (VesselRole role : List.of(VesselRole.SUMP, VesselRole.FISH_TANK, VesselRole.GROW_BED)) {
            frame.snapshot().site().vessels(role).stream().map(Vessel::id).forEach(vessels::add);
        }
        List<String> sources = new ArrayList<>(Reserves.ids(frame));
        sources.add(TopUpDraft.MAINS);
        return List.of(
                Field.choice("Into", vessels),
                Field.choice("From", sources).beside((now, filled) -> Reserves.now(now, filled.text(1))),
                Field.number("Volume", new DisplayUnits(frame.snapshot().site().units()).volumeUnit()),
                Field.number("Duration", "min"));
    }

    @Override
    protected int first() {
        return VOLUME;
    }

    @Override
    protected FormCheck check(Frame frame, Filled filled) {
        return TopUpCheck.from(
                        frame, new TopUpDraft(filled.text(0), filled.text(1), filled.text(VOLUME), filled.text(3)))
                .form(frame);
    }
}
