package bywash.tui.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.event.OperatorEntry.StepDone;
import bywash.tui.view.Frame;
import org.junit.jupiter.api.Test;

class SheetPageTest {
    private final Frame frame = CareFrames.valveOpen();
    private final SheetPage page = new SheetPage();

    @Test
    void enterTicksTheFirstOpenStep() {
        page.opened(frame);
        assertEquals("test-chlorine", press(KeyPress.Kind.ENTER).step());
    }

    @Test
    void aNumberChoosesAnotherStep() {
        page.opened(frame);
        find(KeyPress.of('7')).deed().on(frame);
        assertEquals("advice", press(KeyPress.Kind.ENTER).step());
    }

    @Test
    void aTickedStepIsNotTickedTwice() {
        page.opened(frame);
        find(KeyPress.of('1')).deed().on(frame);
        Effect effect = find(KeyPress.of(KeyPress.Kind.ENTER)).deed().on(frame);
        assertTrue(assertInstanceOf(Effect.Say.class, effect).words().contains("already"));
    }

    @Test
    void withoutAnIncidentItSaysSo() {
        Frame quiet = Frames.quiet();
        page.opened(quiet);
        Effect effect = find(KeyPress.of(KeyPress.Kind.ENTER)).deed().on(quiet);
        assertInstanceOf(Effect.Say.class, effect);
    }

    private StepDone press(KeyPress.Kind kind) {
        Effect effect = find(KeyPress.of(kind)).deed().on(frame);
        Effect.Enter enter = assertInstanceOf(Effect.Enter.class, effect);
        return assertInstanceOf(StepDone.class, enter.entries().get(0));
    }

    private Binding find(KeyPress key) {
        return page.keys().stream().filter(b -> b.has(key)).findFirst().orElseThrow();
    }
}
