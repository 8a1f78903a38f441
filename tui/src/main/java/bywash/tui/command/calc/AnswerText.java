package bywash.tui.command.calc;

import java.util.List;

/** Lays an answer out as lines to read, or as one JSON object. */
final class AnswerText {
    private AnswerText() {}

    /** Lines to read: a title, aligned numbers, remarks, sources, cautions. */
    static String lines(Answer answer) {
        StringBuilder out = new StringBuilder(answer.title()).append('\n');
        int width =
                answer.numbers().stream().mapToInt(n -> n.name().length()).max().orElse(0);
        for (Answer.Number n : answer.numbers()) {
            out.append("  ").append(n.name()).append(" ".repeat(width - n.name().length() + 2));
            out.append(Figures.withUnit(n.value(), n.unit())).append('\n');
        }
        answer.remarks().forEach(remark -> out.append("  ").append(remark).append('\n'));
        answer.sources().forEach(source -> out.append("Source: ").append(source).append('\n'));
        answer.cautions()
                .forEach(caution -> out.append("Caution: ").append(caution).append('\n'));
        return out.toString();
    }

    /** One JSON object on one line, metric numbers in full; a number without end is null. */
    static String json(String calculation, Answer answer) {
        StringBuilder out = new StringBuilder("{\"calculation\":")
                .append(quoted(calculation))
                .append(",\"results\":[");
        String separator = "";
        for (Answer.Number n : answer.numbers()) {
            out.append(separator).append("{\"name\":").append(quoted(n.name())).append(",\"value\":");
            out.append(Double.isInfinite(n.value()) ? "null" : Double.toString(n.value()));
            out.append(",\"unit\":").append(quoted(n.unit())).append('}');
            separator = ",";
        }
        out.append(']');
        list(out, "remarks", answer.remarks());
        list(out, "sources", answer.sources());
        list(out, "cautions", answer.cautions());
        return out.append("}\n").toString();
    }

    private static void list(StringBuilder out, String key, List<String> texts) {
        out.append(",\"").append(key).append("\":[");
        String separator = "";
        for (String text : texts) {
            out.append(separator).append(quoted(text));
            separator = ",";
        }
        out.append(']');
    }

    private static String quoted(String text) {
        return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }
}
