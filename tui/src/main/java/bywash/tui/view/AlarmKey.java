package bywash.tui.view;

import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmView;

/** Which alarm: what kind, about what. */
public record AlarmKey(AlarmKind kind, String subject) {
    public static AlarmKey of(AlarmView alarm) {
        return new AlarmKey(alarm.kind(), alarm.subject());
    }
}
