package bywash.ingest.site;

import bywash.ingest.text.PlainText;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.Node;

/** Gathers the faults of one file. */
final class Problems {
    private static final int MOST = 200;

    private static final int LONGEST = 400;
    private final String file;
    private final List<SiteProblem> list = new ArrayList<>();

    Problems(String file) {
        this.file = PlainText.of(file, LONGEST);
    }

    void add(Node at, String what, String right) {
        add(at.getStartMark().map(Mark::getLine).orElse(0) + 1, what, right);
    }

    void add(int line, String what, String right) {
        if (list.size() < MOST) {
            list.add(new SiteProblem(file, line, PlainText.of(what, LONGEST), PlainText.of(right, LONGEST)));
        } else if (list.size() == MOST) {
            list.add(new SiteProblem(file, line, "there are more than " + MOST + " faults", "mend those told first"));
        }
    }

    boolean none() {
        return list.isEmpty();
    }

    List<SiteProblem> inOrder() {
        return list.stream()
                .sorted(Comparator.comparingInt(SiteProblem::line))
                .distinct()
                .toList();
    }
}
