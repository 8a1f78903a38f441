package bywash.tui.command;

import com.sun.management.HotSpotDiagnosticMXBean;
import java.lang.management.ManagementFactory;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import javax.management.JMException;
import javax.management.ObjectName;

/**
 * Gives memory back that a start, a replay of days or a long look at a page has used up. On a machine with much memory the JVM
 * would wait for a heap to fill that a watch never fills, and keep what it once had: up to 70 % of its heap free, and what its
 * compilers took while the program was young.
 */
final class GiveBack {
    /** From one time to the next it is half as long again, since less and less is left over. */
    private static final long FIRST_S = 20;

    private static final long MOST_S = 3600;
    /** So much of the heap may be free after a collection, in per cent. */
    private static final int MOST_FREE = 30;

    private static final int LEAST_FREE = 10;

    private GiveBack() {}

    /** From now on, as long as the program runs; a collection of what a watch holds takes some ten milliseconds. */
    static void begin() {
        after(FIRST_S);
    }

    private static void after(long seconds) {
        CompletableFuture.delayedExecutor(seconds, TimeUnit.SECONDS).execute(() -> {
            keepLess();
            System.gc();
            trim();
            after(Math.min(MOST_S, seconds * 3 / 2));
        });
    }

    /** What can be said to this JVM while it runs; another kind of JVM keeps what it likes. */
    private static void keepLess() {
        try {
            HotSpotDiagnosticMXBean vm = ManagementFactory.getPlatformMXBean(HotSpotDiagnosticMXBean.class);
            vm.setVMOption("MinHeapFreeRatio", Integer.toString(LEAST_FREE));
            vm.setVMOption("MaxHeapFreeRatio", Integer.toString(MOST_FREE));
        } catch (IllegalArgumentException e) {
            LOG.debug("this JVM takes no word on how much of its heap is kept free: {}", e.getMessage());
        }
    }

    /** Has the C library return what was freed outside the heap; only some can. */
    private static void trim() {
        try {
            ManagementFactory.getPlatformMBeanServer()
                    .invoke(
                            new ObjectName("com.sun.management:type=DiagnosticCommand"),
                            "systemTrimNativeHeap",
                            new Object[0],
                            new String[0]);
        } catch (JMException e) {
            LOG.debug("this JVM cannot trim what was freed outside its heap: {}", e.toString());
        }
    }

    private static final org.slf4j.Logger LOG = org.slf4j.LoggerFactory.getLogger(GiveBack.class);
}
