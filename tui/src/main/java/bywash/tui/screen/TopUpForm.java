package bywash.tui.screen;

import bywash.rules.site.Site;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.tui.view.TopUpDraft;
import java.util.ArrayList;
import java.util.List;

/**
 * The top-up form while it is filled in.
 *
 * @param warned whether the warnings were confirmed once
 */
record TopUpForm(
        List<String> vessels,
        List<String> sources,
        int vessel,
        int source,
        String volume,
        String minutes,
        Field field,
        boolean warned) {
    private static final int LONGEST = 7;

    /** What can be filled in, in order. */
    enum Field {
        VESSEL,
        SOURCE,
        VOLUME,
        DURATION
    }

    static TopUpForm empty(Site site) {
        List<String> vessels = new ArrayList<>();
        for (VesselRole role : List.of(VesselRole.SUMP, VesselRole.FISH_TANK, VesselRole.GROW_BED)) {
            site.vessels(role).stream().map(Vessel::id).forEach(vessels::add);
        }
        List<String> sources = new ArrayList<>();
        site.vessels(VesselRole.RESERVE).stream().map(Vessel::id).forEach(sources::add);
        sources.add(TopUpDraft.MAINS);
        return new TopUpForm(List.copyOf(vessels), List.copyOf(sources), 0, 0, "", "", Field.VOLUME, false);
    }

    TopUpDraft draft() {
        return new TopUpDraft(vessels.isEmpty() ? "" : vessels.get(vessel), sources.get(source), volume, minutes);
    }

    TopUpForm step(int by) {
        int next = Math.floorMod(field.ordinal() + by, Field.values().length);
        return with(vessel, source, volume, minutes, Field.values()[next]);
    }

    TopUpForm choose(int by) {
        return switch (field) {
            case VESSEL ->
                vessels.isEmpty()
                        ? this
                        : with(Math.floorMod(vessel + by, vessels.size()), source, volume, minutes, field);
            case SOURCE -> with(vessel, Math.floorMod(source + by, sources.size()), volume, minutes, field);
            case VOLUME, DURATION -> this;
        };
    }

    TopUpForm type(char c) {
        return (c >= '0' && c <= '9') || c == '.' ? retype(true, c) : this;
    }

    TopUpForm erase() {
        return retype(false, ' ');
    }

    TopUpForm confirmWarnings() {
        return new TopUpForm(vessels, sources, vessel, source, volume, minutes, field, true);
    }

    private TopUpForm retype(boolean add, char c) {
        return switch (field) {
            case VESSEL, SOURCE -> this;
            case VOLUME -> with(vessel, source, edit(volume, add, c), minutes, field);
            case DURATION -> with(vessel, source, volume, edit(minutes, add, c), field);
        };
    }

    private static String edit(String text, boolean add, char c) {
        if (add) {
            return text.length() < LONGEST ? text + c : text;
        }
        return text.isEmpty() ? text : text.substring(0, text.length() - 1);
    }

    private TopUpForm with(int newVessel, int newSource, String newVolume, String newMinutes, Field newField) {
        return new TopUpForm(vessels, sources, newVessel, newSource, newVolume, newMinutes, newField, false);
    }
}
