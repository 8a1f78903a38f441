package bywash.tui.view;

import bywash.rules.engine.VesselStatus;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import java.util.List;

/** What forms say of the reserves. */
public final class Reserves {
    private Reserves() {}

    /** In the order of the site file. */
    public static List<String> ids(Frame frame) {
        return frame.snapshot().site().vessels(VesselRole.RESERVE).stream()
                .map(Vessel::id)
                .toList();
    }

    /** What it holds, and whether its water is known to be safe; empty for a source that is no vessel of the site. */
    public static String now(Frame frame, String id) {
        DisplayUnits units = new DisplayUnits(frame.snapshot().site().units());
        return frame.snapshot().vessels().stream()
                .filter(v -> v.vessel().id().equals(id))
                .findFirst()
                .map(v -> volume(v, units)
                        + (frame.safeSources().contains(id) ? ", tested free" : ", not known to be free of chlorine"))
                .orElse("");
    }

    private static String volume(VesselStatus vessel, DisplayUnits units) {
        return Double.isNaN(vessel.volumeL()) ? "volume not known" : "holds " + units.volume(vessel.volumeL());
    }
}
