package bywash.tui.view;

import bywash.rules.alarm.AlarmKind;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** An incident's id in a grower's words: what began it and when, in the site's time. */
public final class IncidentName {
    private static final Pattern ID =
            Pattern.compile("(\\d{4})(\\d\\d)(\\d\\d)T(\\d\\d)(\\d\\d)(\\d\\d)Z-(.+)", Pattern.DOTALL);

    private IncidentName() {}

    /** Such as {@code unplanned-inflow sump, 12:38}; an id of another form as it is. */
    public static String of(String id, Frame frame) {
        Matcher m = ID.matcher(id);
        if (!m.matches()) {
            return id;
        }
        try {
            Instant began = Instant.parse(m.group(1) + "-" + m.group(2) + "-" + m.group(3) + "T" + m.group(4) + ":"
                    + m.group(5) + ":" + m.group(6) + "Z");
            String clock =
                    Words.clock(began, frame.at(), frame.snapshot().site().timeZone());
            return alarm(m.group(7)) + ", " + clock;
        } catch (DateTimeException e) {
            return id;
        }
    }

    private static String alarm(String words) {
        for (AlarmKind kind : AlarmKind.values()) {
            if (words.startsWith(kind.word() + "-")) {
                return kind.word() + " " + words.substring(kind.word().length() + 1);
            }
        }
        return words;
    }
}
