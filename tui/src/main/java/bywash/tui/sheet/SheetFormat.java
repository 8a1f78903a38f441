package bywash.tui.sheet;

import bywash.rules.response.ResponseSheet;
import bywash.rules.site.Units;
import java.time.ZoneId;

/** How a response sheet is written. */
public enum SheetFormat {
    TEXT,
    MARKDOWN;

    /** The sheet, with times of a zone, ending in a line end. */
    public String write(ResponseSheet sheet, ZoneId zone) {
        return write(sheet, zone, Units.METRIC);
    }

    /** The same, in the units that the site reads. */
    public String write(ResponseSheet sheet, ZoneId zone, Units units) {
        return switch (this) {
            case TEXT -> new SheetWriter(sheet, zone, units, false).write();
            case MARKDOWN -> new SheetWriter(sheet, zone, units, true).write();
        };
    }
}
