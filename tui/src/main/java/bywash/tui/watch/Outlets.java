package bywash.tui.watch;

import bywash.rules.alarm.AlarmTransition;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Where an alarm's changes go: to the record first, then to whoever else is told. Until the watch is live they come of the
 * journal's own lines and go nowhere. For the watch's own loop.
 */
public final class Outlets implements Consumer<AlarmTransition> {
    /** Takes a change and its alarm line; must not block. */
    public interface Outlet {
        void accept(AlarmTransition transition, String line);
    }

    private final String site;
    private final WatchRecord record;
    private final List<Outlet> outlets = new ArrayList<>();
    private @Nullable Pipeline pipeline;

    public Outlets(String site, WatchRecord record) {
        this.site = site;
        this.record = record;
    }

    public void add(Outlet outlet) {
        outlets.add(outlet);
    }

    /** From here on changes are news. */
    public void goLive(Pipeline from) {
        pipeline = from;
    }

    /** First {@code first}, also while the journal is played again, then this. */
    Consumer<AlarmTransition> after(Consumer<AlarmTransition> first) {
        return first.andThen(this);
    }

    @Override
    public void accept(AlarmTransition transition) {
        Pipeline from = pipeline;
        if (from == null) {
            return;
        }
        String line = AlarmLines.of(site, transition);
        record.transition(transition, line, from.memory(transition.kind(), transition.subject()));
        for (Outlet outlet : outlets) {
            outlet.accept(transition, line);
        }
    }
}
