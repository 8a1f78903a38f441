package bywash.rules.prevention;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.response.IncidentSummary;
import bywash.rules.response.IncidentSummary.Raised;
import bywash.rules.site.Disinfectant;
import bywash.rules.site.Mains;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Stocking;
import bywash.rules.site.Units;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class PreventionTest {
    @Test
    void aSecondValveOnlyWhereTheSameLineWasTwiceNotShut() {
        IncidentSummary one = incident("one", AlarmKind.LINE_NOT_SHUT, "sump");
        IncidentSummary other = incident("other", AlarmKind.LINE_NOT_SHUT, "fish-tank");
        assertEquals(List.of(), Prevention.of(site(true), List.of(one, other)));
        IncidentSummary two = incident("two", AlarmKind.LINE_NOT_SHUT, "sump");
        List<Suggestion> suggestions = Prevention.of(site(true), List.of(one, other, two));
        assertEquals(1, suggestions.size());
        assertTrue(suggestions.get(0).what().contains("second valve"));
        assertEquals(List.of("one", "two"), suggestions.get(0).incidents());
    }

    @Test
    void aLargerFreeboardWhereItTwiceCameNearItsOverflow() {
        List<Suggestion> suggestions = Prevention.of(
                site(true),
                List.of(
                        incident("a", AlarmKind.OVERFLOW_NEAR, "sump"),
                        incident("b", AlarmKind.OVERFLOW_NEAR, "sump")));
        assertTrue(suggestions.get(0).what().contains("freeboard"));
    }

    @Test
    void aProbeWhereTheBalanceIsBlind() {
        List<Suggestion> suggestions = Prevention.of(site(false), List.of());
        assertTrue(suggestions.stream().anyMatch(s -> s.what().contains("level probe into sump")), "" + suggestions);
    }

    @Test
    void anOxidationPotentialProbeOnlyAfterAnIncidentThatLackedIt() {
        List<Suggestion> suggestions =
                Prevention.of(site(true), List.of(incident("c", AlarmKind.CHLORINE_RISK, "system")));
        assertEquals(List.of("c"), suggestions.get(0).incidents());
        assertTrue(suggestions.get(0).what().contains("oxidation-potential"));
    }

    private static IncidentSummary incident(String id, AlarmKind kind, String subject) {
        Instant at = Instant.parse("2026-05-04T06:00:00Z");
        return new IncidentSummary(id, at, at.plusSeconds(600), Set.of(new Raised(kind, subject)), 30, 10, 20);
    }

    private static Site site(boolean probed) {
        Vessel sump = new Vessel("sump", VesselRole.SUMP, null, 400, Double.NaN, null);
        Probe level = new Probe("level", "sump", Quantity.LEVEL, null, Duration.ofSeconds(10));
        Mains mains = new Mains(Disinfectant.CHLORINE, 0.9, 7.9, 120, 11);
        return new Site(
                "s",
                "s",
                ZoneOffset.UTC,
                0,
                Stocking.FISH,
                Units.METRIC,
                mains,
                List.of(sump),
                probed ? List.of(level) : List.of(),
                List.of());
    }
}
