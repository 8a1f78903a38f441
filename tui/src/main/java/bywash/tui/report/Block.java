package bywash.tui.report;

/** One piece of a report. */
public sealed interface Block {
    /** Which of the family it is, so that a switch over it is complete; each kind is one record. */
    enum Kind {
        HEADING,
        PARAGRAPH,
        GRID,
        PLOT
    }

    Kind kind();

    /** A heading of the second level. */
    record Heading(String text) implements Block {
        @Override
        public Kind kind() {
            return Kind.HEADING;
        }
    }

    record Paragraph(String text) implements Block {
        @Override
        public Kind kind() {
            return Kind.PARAGRAPH;
        }
    }

    record Grid(Table table) implements Block {
        @Override
        public Kind kind() {
            return Kind.GRID;
        }
    }

    /** Lines to keep as they are. */
    record Plot(String title, String lines) implements Block {
        @Override
        public Kind kind() {
            return Kind.PLOT;
        }
    }
}
