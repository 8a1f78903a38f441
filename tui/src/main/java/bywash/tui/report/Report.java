package bywash.tui.report;

import java.util.List;
import java.util.Map;

/** A report that {@link ReportWriter} can write: its text in blocks, and its tables in full. */
public interface Report {
    String title();

    /** What it is of, for the head of its JSON: site, kind, from, to, in order. */
    Map<String, String> head();

    List<Block> blocks();

    /** Every table, also those too long for the text; no two of one name. */
    List<Table> tables();
}
