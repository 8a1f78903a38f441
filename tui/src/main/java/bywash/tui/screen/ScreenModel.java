package bywash.tui.screen;

import bywash.rules.alarm.AlarmView;
import bywash.rules.event.OperatorEntry;
import bywash.tui.view.AlarmKey;
import bywash.tui.view.AlarmLine;
import bywash.tui.view.Frame;
import bywash.tui.view.TopUpCheck;
import bywash.tui.view.TopUpProgress;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where the grower is and what is chosen; key presses move it. Knows no terminal and no clock.
 *
 * <pre>
 *   OVERVIEW --Enter--> DETAIL          t --> TOP_UP --Enter--> OVERVIEW (declared)
 *      ^ '--------Esc-----'             e --> END_TOP_UP --Enter--> OVERVIEW (ended)
 *      any --h--> HELP, any --q--> QUIT; Esc goes back where one came from
 *      any --a--> (acknowledge: a all, Enter the chosen one, Esc none) --> same page
 * </pre>
 */
public final class ScreenModel {
    private Page page = Page.OVERVIEW;
    private Page cameFrom = Page.OVERVIEW;
    private boolean acknowledging;
    private @Nullable AlarmKey chosen;
    private @Nullable TopUpForm form;
    private String notice = "";

    /** The page that keys act on. */
    public Page keyPage() {
        return acknowledging ? Page.ACKNOWLEDGE : page;
    }

    /** The page to draw. */
    public Page page() {
        return page;
    }

    /** What was just done, in words; empty after the next key. */
    String notice() {
        return notice;
    }

    @Nullable
    TopUpForm form() {
        return form;
    }

    /** The alarm that was opened; null when it has returned to normal since. */
    @Nullable
    AlarmView opened(Frame frame) {
        return frame.snapshot().alarms().stream()
                .filter(a -> AlarmKey.of(a).equals(chosen))
                .findFirst()
                .orElse(null);
    }

    /** Where in the list the chosen alarm stands; the first when none was chosen or it is gone. */
    int index(List<AlarmView> alarms) {
        for (int i = 0; i < alarms.size(); i++) {
            if (AlarmKey.of(alarms.get(i)).equals(chosen)) {
                return i;
            }
        }
        return 0;
    }

    public Effect handle(KeyPress key, Frame frame) {
        if (key.kind() == KeyPress.Kind.HANG_UP) {
            return new Effect.Quit();
        }
        notice = "";
        Page keys = keyPage();
        Command command = KeyMap.find(keys, key).orElse(null);
        acknowledging = acknowledging && (command == Command.NEXT || command == Command.PREVIOUS);
        if (keys == Page.ACKNOWLEDGE && command == Command.BACK) {
            return new Effect.Redraw();
        }
        if (command != null) {
            return run(command, frame);
        }
        if (keys == Page.TOP_UP && form != null && key.kind() == KeyPress.Kind.CHARACTER) {
            form = form.type(key.character());
        }
        return new Effect.Redraw();
    }

    private Effect run(Command command, Frame frame) {
        switch (command) {
            case ACKNOWLEDGE -> askAcknowledge(frame);
            case ACKNOWLEDGE_ALL -> {
                return acknowledge(frame, null);
            }
            case ACKNOWLEDGE_ONE -> {
                return acknowledge(frame, chosen);
            }
            case OPEN -> {
                pin(frame);
                go(chosen == null ? Page.OVERVIEW : Page.DETAIL);
            }
            case NEXT -> move(frame, 1);
            case PREVIOUS -> move(frame, -1);
            case NEXT_NEW -> nextNew(frame);
            case TOP_UP -> openForm(frame);
            case END_TOP_UP -> go(Page.END_TOP_UP);
            case NEXT_CHOICE -> form = form == null ? null : form.choose(1);
            case PREVIOUS_CHOICE -> form = form == null ? null : form.choose(-1);
            case ERASE -> form = form == null ? null : form.erase();
            case CONFIRM -> {
                return confirm(frame);
            }
            case BACK -> back();
            case HELP -> go(Page.HELP);
            case LEAVE -> go(Page.QUIT);
            case LEAVE_NOW -> {
                return new Effect.Quit();
            }
        }
        return new Effect.Redraw();
    }

    private void go(Page to) {
        boolean aside = to == Page.HELP || to == Page.QUIT;
        if (page != Page.HELP && page != Page.QUIT) {
            cameFrom = aside ? page : Page.OVERVIEW;
        }
        page = to;
    }

    private void back() {
        boolean aside = page == Page.HELP || page == Page.QUIT;
        page = aside ? cameFrom : Page.OVERVIEW;
    }

    /** Keeps the alarm under the pointer chosen, so that one arriving later cannot take its place. */
    private void pin(Frame frame) {
        List<AlarmView> alarms = frame.snapshot().alarms();
        chosen = alarms.isEmpty() ? null : AlarmKey.of(alarms.get(index(alarms)));
    }

    private void askAcknowledge(Frame frame) {
        if (page != Page.DETAIL) {
            pin(frame);
        }
        acknowledging = frame.snapshot().alarms().stream().anyMatch(AlarmLine::fresh);
        notice = acknowledging ? "" : "Nothing to acknowledge.";
    }

    private Effect acknowledge(Frame frame, @Nullable AlarmKey alarm) {
        notice = alarm == null
                ? "All acknowledged."
                : "Acknowledged: " + alarm.kind().word() + " " + alarm.subject() + ".";
        return new Effect.Enter(
                alarm == null
                        ? new OperatorEntry.Acknowledge(frame.now(), null, null)
                        : new OperatorEntry.Acknowledge(
                                frame.now(), alarm.kind().word(), alarm.subject()));
    }

    private void move(Frame frame, int by) {
        if (page == Page.TOP_UP && !acknowledging && form != null) {
            form = form.step(by);
            return;
        }
        List<AlarmView> alarms = frame.snapshot().alarms();
        if (!alarms.isEmpty()) {
            int to = Math.max(0, Math.min(alarms.size() - 1, index(alarms) + by));
            chosen = AlarmKey.of(alarms.get(to));
        }
    }

    private void nextNew(Frame frame) {
        List<AlarmView> alarms = frame.snapshot().alarms();
        int from = alarms.isEmpty() ? 0 : index(alarms);
        for (int i = 1; i <= alarms.size(); i++) {
            AlarmView alarm = alarms.get((from + i) % alarms.size());
            if (AlarmLine.fresh(alarm)) {
                chosen = AlarmKey.of(alarm);
                return;
            }
        }
    }

    private void openForm(Frame frame) {
        if (TopUpProgress.from(frame).running()) {
            notice = "A top-up is running; end it first.";
            return;
        }
        form = TopUpForm.empty(frame.snapshot().site());
        go(Page.TOP_UP);
    }

    private Effect confirm(Frame frame) {
        TopUpForm filled = form;
        if (page == Page.TOP_UP && filled != null) {
            return declare(frame, filled);
        }
        var topUp = frame.snapshot().topUp();
        if (topUp == null || topUp.endedAt() != null) {
            notice = "No top-up is running.";
            return new Effect.Redraw();
        }
        page = Page.OVERVIEW;
        notice = "Top-up ended; the balance now checks the line.";
        return new Effect.Enter(new OperatorEntry.TopUpEnd(frame.now(), topUp.vessel()));
    }

    private Effect declare(Frame frame, TopUpForm filled) {
        TopUpCheck check = TopUpCheck.from(frame, filled.draft());
        if (!check.ready()) {
            notice = check.problems().get(0);
            return new Effect.Redraw();
        }
        if (!check.warnings().isEmpty() && !filled.warned()) {
            form = filled.confirmWarnings();
            notice = "Read the warning; Enter once more declares it all the same.";
            return new Effect.Redraw();
        }
        page = Page.OVERVIEW;
        form = null;
        notice = "Top-up declared. Open the valve now.";
        return new Effect.Enter(new OperatorEntry.TopUpStart(
                frame.now(), filled.draft().vessel(), filled.draft().source(), check.volumeL(), check.duration()));
    }
}
