package bywash.tui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import bywash.ingest.recording.RecordedLine;
import bywash.ingest.site.ProbeBinding.PayloadFormat;
import bywash.rules.event.EngineEvent;
import bywash.rules.event.EntryKind;
import bywash.rules.event.OperatorEntry;
import bywash.samples.simulation.Action;
import bywash.tui.report.Block;
import bywash.tui.screen.Effect;
import bywash.tui.view.EventLog.Event;
import java.lang.reflect.Constructor;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Each record of a sealed family is a kind of its own, by its own name. The compiler wants every kind in every switch; what it
 * cannot see is whether a record says the right one, without which the cast behind the case would fail.
 */
class ClosedFamiliesTest {
    static Stream<Class<?>> families() throws ClassNotFoundException {
        return Stream.of(
                EngineEvent.class,
                RecordedLine.class,
                PayloadFormat.class,
                Action.class,
                Block.class,
                Effect.class,
                Event.class,
                Class.forName("bywash.tui.attach.Request"));
    }

    @ParameterizedTest
    @MethodSource("families")
    void eachRecordIsTheKindOfItsName(Class<?> family) throws ReflectiveOperationException {
        Set<String> names = new TreeSet<>();
        for (Class<?> type : family.getPermittedSubclasses()) {
            String name = ((Enum<?>) kind(family, type)).name();
            assertEquals(type.getSimpleName().toUpperCase(Locale.ROOT), name.replace("_", ""));
            names.add(name);
        }
        Object[] constants = kindOf(family).getReturnType().getEnumConstants();
        assertEquals(new TreeSet<>(Stream.of(constants).map(Object::toString).toList()), names);
    }

    @Test
    void eachEntryIsTheKindWhoseRecordItIs() throws ReflectiveOperationException {
        Set<EntryKind> kinds = EnumSet.noneOf(EntryKind.class);
        for (Class<?> type : OperatorEntry.class.getPermittedSubclasses()) {
            EntryKind kind = assertInstanceOf(EntryKind.class, kind(OperatorEntry.class, type));
            assertEquals(type, kind.type());
            kinds.add(kind);
        }
        assertEquals(EnumSet.allOf(EntryKind.class), kinds);
    }

    private static Method kindOf(Class<?> family) throws NoSuchMethodException {
        Method kind = family.getDeclaredMethod("kind");
        kind.setAccessible(true);
        return kind;
    }

    /** The kind of a record with nothing in it. */
    private static Object kind(Class<?> family, Class<?> type) throws ReflectiveOperationException {
        Class<?>[] parts =
                Arrays.stream(type.getRecordComponents()).map(c -> c.getType()).toArray(Class<?>[]::new);
        Constructor<?> maker = type.getDeclaredConstructor(parts);
        maker.setAccessible(true);
        List<@Nullable Object> nothing = new ArrayList<>();
        for (Class<?> part : parts) {
            nothing.add(nothing(part));
        }
        return kindOf(family).invoke(maker.newInstance(nothing.toArray()));
    }

    private static @Nullable Object nothing(Class<?> part) {
        if (part == double.class) {
            return 0.0;
        }
        if (part == int.class) {
            return 0;
        }
        if (part == boolean.class) {
            return false;
        }
        return part == List.class ? List.of() : null;
    }
}
