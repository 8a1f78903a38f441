package bywash.tui.sheet;

import bywash.rules.response.ResponseSheet;
import java.time.ZoneId;

/** How a response sheet is written. */
public enum SheetFormat {
    TEXT,
    MARKDOWN;

    /** The sheet, with times of a zone, ending in a line end. */
    public String write(ResponseSheet sheet, ZoneId zone) {
        return switch (this) {
            case TEXT -> new SheetWriter(sheet, zone, false).write();
            case MARKDOWN -> new SheetWriter(sheet, zone, true).write();
        };
    }
}
