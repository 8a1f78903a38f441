package bywash.rules.prevention;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.response.IncidentSummary;
import bywash.rules.site.Disinfectant;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;

/** Reads the record for what would have spared it. The counts that make a suggestion are common practice, no source. */
public final class Prevention {
    private static final int TWICE = 2;

    private Prevention() {}

    /** Suggestions for a site, in order of weight. */
    public static List<Suggestion> of(Site site, List<IncidentSummary> incidents) {
        List<Suggestion> out = new ArrayList<>();
        for (String vessel : subjects(incidents, AlarmKind.LINE_NOT_SHUT)) {
            twice(
                    out,
                    incidents(incidents, AlarmKind.LINE_NOT_SHUT, vessel),
                    "Fit a second valve, or one that shuts by itself, in the line into " + vessel,
                    "the same line was not shut after a top-up");
        }
        for (String vessel : subjects(incidents, AlarmKind.UNPLANNED_INFLOW)) {
            twice(
                    out,
                    incidents(incidents, AlarmKind.UNPLANNED_INFLOW, vessel),
                    "Part the mains from " + vessel + ": a second valve, a timer, or no standing hose",
                    "water nobody declared came in");
        }
        for (String vessel : subjects(incidents, AlarmKind.OVERFLOW_NEAR)) {
            twice(
                    out,
                    incidents(incidents, AlarmKind.OVERFLOW_NEAR, vessel),
                    "Give " + vessel + " a larger freeboard: run it lower, or lead the overflow to a safe place",
                    "it came near its overflow");
        }
        for (String reserve : subjects(incidents, AlarmKind.UNSAFE_RELEASE)) {
            twice(
                    out,
                    incidents(incidents, AlarmKind.UNSAFE_RELEASE, reserve),
                    "Test " + reserve + " before each release and enter the result; treat by a chemical or longer",
                    "water not known to be safe was released");
        }
        for (String vessel : subjects(incidents, AlarmKind.UNPLANNED_LOSS)) {
            twice(
                    out,
                    incidents(incidents, AlarmKind.UNPLANNED_LOSS, vessel),
                    "Renew hoses and joints at " + vessel + ", and stop its pump at a low level",
                    "water was lost");
        }
        blind(site, incidents, out);
        return out;
    }

    private static void twice(List<Suggestion> out, List<String> ids, String what, String why) {
        if (ids.size() >= TWICE) {
            out.add(new Suggestion(what, ids.size() + " times " + why, ids));
        }
    }

    private static Set<String> subjects(List<IncidentSummary> incidents, AlarmKind kind) {
        Set<String> subjects = new TreeSet<>();
        incidents.forEach(
                i -> i.alarms().stream().filter(a -> a.kind() == kind).forEach(a -> subjects.add(a.subject())));
        return subjects;
    }

    private static List<String> incidents(List<IncidentSummary> incidents, AlarmKind kind, String subject) {
        return ids(incidents, i -> i.alarms().contains(new IncidentSummary.Raised(kind, subject)));
    }

    private static List<String> ids(List<IncidentSummary> incidents, Predicate<IncidentSummary> which) {
        return incidents.stream().filter(which).map(IncidentSummary::id).toList();
    }

    /** Where nobody listens. */
    private static void blind(Site site, List<IncidentSummary> incidents, List<Suggestion> out) {
        for (Vessel vessel : site.vessels()) {
            boolean reads = vessel.role() == VesselRole.SUMP || vessel.role() == VesselRole.RESERVE;
            if (reads && site.probe(vessel.id(), Quantity.LEVEL).isEmpty()) {
                String why = vessel.role() == VesselRole.RESERVE
                        ? "without it nobody sees whether its water went into the system, and batches are guessed"
                        : "without it the balance is blind";
                out.add(new Suggestion(
                        "Put a level probe into " + vessel.id(), why, ids(incidents, i -> unknownSource(i, vessel))));
            }
        }
        boolean orp = site.probes().stream().anyMatch(p -> p.quantity() == Quantity.ORP);
        List<String> chlorine =
                ids(incidents, i -> i.alarms().stream().anyMatch(a -> a.kind() == AlarmKind.CHLORINE_RISK));
        if (!orp && site.mains().disinfectant() != Disinfectant.NONE && !chlorine.isEmpty()) {
            out.add(new Suggestion(
                    "Put an oxidation-potential probe into the fish tank",
                    "chlorine could only be reckoned from litres",
                    chlorine));
        }
    }

    private static boolean unknownSource(IncidentSummary incident, Vessel vessel) {
        return vessel.role() == VesselRole.RESERVE
                && incident.alarms().stream().anyMatch(a -> a.kind() == AlarmKind.UNPLANNED_INFLOW);
    }
}
