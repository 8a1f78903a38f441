package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import bywash.ingest.mqtt.RetainedPublisher.Retained;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

class EarlierRecordTest {
    private static final String TOPIC = "bywash/larkfield/alarm/unplanned-inflow/sump";

    private Instant now = Instant.parse("2026-05-04T06:00:00Z");
    private final EarlierRecord earlier = new EarlierRecord("larkfield", "bywash/larkfield/alarm/", () -> now);

    private static Retained line(String topic, String site, String state, String message) {
        return new Retained(
                topic,
                "{\"time\":\"2026-05-03T06:00:00Z\",\"site\":\"" + site
                        + "\",\"alarm\":\"unplanned-inflow\",\"subject\":\"sump\",\"state\":\"" + state
                        + "\",\"message\":\"" + message + "\",\"values\":{}}");
    }

    @Test
    void whatStoodSaysThatItIsOfAnEarlierRecordAndStaysForADay() {
        Retained marked =
                Objects.requireNonNull(earlier.judge(line(TOPIC, "larkfield", "unacknowledged", "Water enters")));
        assertEquals(line(TOPIC, "larkfield", "unacknowledged", EarlierRecord.WORDS + "Water enters"), marked);
        assertEquals(marked, earlier.judge(marked), "said once");
        now = now.plus(EarlierRecord.STAYS).minusSeconds(1);
        assertEquals(List.of(), earlier.over());
        now = now.plusSeconds(1);
        assertEquals(List.of(marked), earlier.over());
        assertEquals(List.of(), earlier.over());
    }

    @Test
    void whatTheWatchHasRaisedItselfMeanwhileIsNotTakenAway() {
        earlier.judge(line(TOPIC, "larkfield", "acknowledged", "Water enters"));
        earlier.known(TOPIC);
        now = now.plus(EarlierRecord.STAYS);
        assertEquals(List.of(), earlier.over());
    }

    @Test
    void whatWasNormalIsTakenAway() {
        assertEquals(new Retained(TOPIC, ""), earlier.judge(line(TOPIC, "larkfield", "normal", "Over")));
    }

    @Test
    void whatIsNoAlarmLineOfThisSiteIsLeftAlone() {
        assertNull(earlier.judge(new Retained(TOPIC, "on")));
        assertNull(earlier.judge(new Retained(TOPIC, "[1]")));
        assertNull(earlier.judge(line(TOPIC, "elsewhere", "normal", "Over")));
        assertNull(earlier.judge(line("bywash/larkfield/alarm/ph-low/sump", "larkfield", "normal", "Over")));
    }
}
