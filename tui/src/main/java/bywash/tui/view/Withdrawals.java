package bywash.tui.view;

import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Withdraw;
import bywash.rules.husbandry.season.SeasonLedger;
import bywash.tui.view.EventLog.Event;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Entries that can be taken back, and those that were. */
public final class Withdrawals {
    private static final int SHOWN = 200;

    /** One entry; {@code which} among those of its word and time. */
    private record Item(OperatorEntry entry, int which) {}

    private record Key(String word, java.time.Instant at, int which) {}

    private final List<Item> standing = new ArrayList<>();
    private final Map<Key, Withdraw> withdrawn = new HashMap<>();

    private Withdrawals(List<Event> newestFirst) {
        Map<Key, Integer> seen = new HashMap<>();
        List<Item> all = new ArrayList<>();
        for (int i = newestFirst.size() - 1; i >= 0; i--) {
            if (newestFirst.get(i) instanceof Event.Entry e) {
                if (e.entry() instanceof Withdraw w) {
                    withdrawn.putIfAbsent(new Key(w.of(), w.entered(), w.which()), w);
                } else if (SeasonLedger.withdrawable(e.entry())) {
                    int which = seen.merge(new Key(e.entry().word(), e.entry().at(), 0), 1, Integer::sum);
                    all.add(new Item(e.entry(), which));
                }
            }
        }
        for (int i = all.size() - 1; i >= 0 && standing.size() < SHOWN; i--) {
            Item item = all.get(i);
            if (!withdrawn.containsKey(key(item))) {
                standing.add(item);
            }
        }
    }

    private static Key key(Item item) {
        return new Key(item.entry().word(), item.entry().at(), item.which());
    }

    public static Withdrawals from(Frame frame) {
        return new Withdrawals(frame.log().newestFirst());
    }

    /** Those that count, newest first, as one line of words each. */
    public List<String> words(Frame frame) {
        DisplayUnits units = new DisplayUnits(frame.snapshot().site().units());
        return standing.stream().map(i -> line(i, frame, units)).toList();
    }

    private static String line(Item item, Frame frame, DisplayUnits units) {
        String when = Words.clock(
                item.entry().at(), frame.at(), frame.snapshot().site().timeZone());
        return when + " " + EntryWords.of(item.entry(), units) + (item.which() > 1 ? " (" + item.which() + ")" : "");
    }

    /** Fields: the entry as one line of words, why. */
    public static FormCheck check(Frame frame, Filled filled) {
        FormReader in = new FormReader(frame, filled);
        Withdrawals all = from(frame);
        int index = all.words(frame).indexOf(in.choice(0));
        String why = in.words(1, "Why");
        if (index < 0) {
            in.problem("No entry is on record that could be taken back.");
            return in.open();
        }
        Item item = all.standing.get(index);
        in.warn("Both stay on record. What followed from the entry is worked out anew without it; enter it again as it"
                + " should be.");
        return in.done(
                "Taken back: "
                        + EntryWords.of(
                                item.entry(),
                                new DisplayUnits(frame.snapshot().site().units())) + ".",
                new Withdraw(
                        frame.now(), item.entry().word(), item.entry().at(), item.which(), why == null ? "" : why));
    }

    /** What an entry from the shell names wrongly; empty where it names one that counts, or one older than this log. */
    public static String problem(Frame frame, Withdraw withdraw) {
        Withdrawals all = from(frame);
        if (all.withdrawn.containsKey(new Key(withdraw.of(), withdraw.entered(), withdraw.which()))) {
            return "that " + withdraw.of() + " was taken back before; name one that still counts";
        }
        return "";
    }
}
