package bywash.tui.report;

import java.util.List;

/** One part of a report. */
interface Section {
    List<Block> blocks();

    /** Its tables in full, with times that a program reads. */
    List<Table> tables();
}
