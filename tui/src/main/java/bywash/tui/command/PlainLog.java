package bywash.tui.command;

import bywash.ingest.text.PlainText;
import java.util.logging.LogRecord;
import java.util.logging.SimpleFormatter;
import java.util.stream.Collectors;

/** The log's lines without what drives a terminal; a message is one line, whatever a broker or a file put into it. */
final class PlainLog extends SimpleFormatter {
    private static final int LONGEST = 2000;

    @Override
    public String formatMessage(LogRecord record) {
        return PlainText.of(super.formatMessage(record), LONGEST);
    }

    @Override
    public String format(LogRecord record) {
        return super.format(record)
                .lines()
                .map(line -> PlainText.of(line, LONGEST))
                .collect(Collectors.joining("\n", "", "\n"));
    }
}
