package bywash.tui.watch;

import java.lang.reflect.Array;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Counts what an object holds on to: all of this program's objects, collections, arrays and texts that can be reached. */
final class Holdings {
    private final Set<Object> seen = java.util.Collections.newSetFromMap(new IdentityHashMap<>());
    private final Deque<Object> open = new ArrayDeque<>();
    private final Map<String, Long> byClass = new TreeMap<>();
    private long cells;

    private Holdings(Object root, Object... apart) {
        seen.addAll(java.util.Arrays.asList(apart));
        open.add(root);
        while (!open.isEmpty()) {
            visit(open.removeLast());
        }
    }

    /** @param apart not followed, such as the test itself */
    static Holdings of(Object root, Object... apart) {
        return new Holdings(root, apart);
    }

    /** Fields, elements of collections and arrays, and characters. */
    long cells() {
        return cells;
    }

    /** The classes that hold most. */
    String most() {
        return byClass.entrySet().stream()
                .sorted(Map.Entry.<String, Long>comparingByValue().reversed())
                .limit(8)
                .map(e -> e.getKey() + " " + e.getValue())
                .toList()
                .toString();
    }

    private void visit(Object o) {
        if (o instanceof Class || o instanceof Thread || o instanceof Enum || !seen.add(o)) {
            return;
        }
        Class<?> type = o.getClass();
        if (o instanceof CharSequence text) {
            count(type, text.length());
        } else if (type.isArray()) {
            count(type, Array.getLength(o));
            if (o instanceof Object[] array) {
                push(java.util.Arrays.asList(array));
            }
        } else if (o instanceof Collection<?> all) {
            count(type, all.size());
            push(java.util.List.copyOf(
                    all.stream().filter(java.util.Objects::nonNull).toList()));
        } else if (o instanceof Map<?, ?> map) {
            count(type, map.size());
            push(map.keySet());
            push(map.values());
        } else if (type.getName().startsWith("bywash.")) {
            fields(o, type);
        }
    }

    private void push(Collection<?> all) {
        for (Object o : all) {
            if (o != null) {
                open.add(o);
            }
        }
    }

    private void count(Class<?> type, long size) {
        cells += size + 1;
        byClass.merge(type.getSimpleName(), size + 1, Long::sum);
    }

    private void fields(Object o, Class<?> type) {
        count(type, 0);
        for (Class<?> c = type; c != null && c.getName().startsWith("bywash."); c = c.getSuperclass()) {
            for (Field field : c.getDeclaredFields()) {
                if (!Modifier.isStatic(field.getModifiers())) {
                    cells++;
                    if (!field.getType().isPrimitive()) {
                        Object value = get(field, o);
                        if (value != null) {
                            open.add(value);
                        }
                    }
                }
            }
        }
    }

    private static Object get(Field field, Object of) {
        try {
            field.setAccessible(true);
            return field.get(of);
        } catch (IllegalAccessException e) {
            throw new AssertionError(e);
        }
    }
}
