package bywash.tui.report;

/** One piece of a report. */
public sealed interface Block {
    /** A heading of the second level. */
    record Heading(String text) implements Block {}

    record Paragraph(String text) implements Block {}

    record Grid(Table table) implements Block {}

    /** Lines to keep as they are. */
    record Plot(String title, String lines) implements Block {}
}
