package bywash.tui.watch;

import bywash.ingest.text.PlainText;
import bywash.rules.alarm.AlarmTransition;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Runs a command of the grower's for each alarm line, which it gets on standard input; alarm, subject, state and priority
 * stand in its environment too. One at a time, on a thread of its own: a command that hangs is ended, one that fails is tried
 * again, and lines beyond a bound are dropped and counted. The watch never waits for it; when the watch ends, no pause between tries is
 * kept any longer: what waits is tried once more, at once, for a moment.
 */
public final class CommandOutlet implements Outlets.Outlet, AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(CommandOutlet.class);
    private static final int MOST_WAITING = 500;
    private static final int LONGEST = 200;

    /**
     * How patient we are.
     *
     * @param each longest run of the command
     * @param pauses before each further try
     * @param atEnd how long the end of the watch waits for what is still to be tried, at most
     */
    public record Patience(Duration each, List<Duration> pauses, Duration atEnd) {
        public static final Patience USUAL = new Patience(
                Duration.ofSeconds(20), List.of(Duration.ofSeconds(2), Duration.ofSeconds(15)), Duration.ofSeconds(2));
    }

    private record Job(String line, Map<String, String> environment) {}

    /** Comes after the last line. */
    private static final Job END = new Job("", Map.of());

    private final String command;
    private final Patience patience;
    private final BlockingQueue<Job> waiting = new LinkedBlockingQueue<>();
    private final CountDownLatch ending = new CountDownLatch(1);
    private final Thread thread = new Thread(this::run, "notify");
    private volatile long failed;
    private volatile String trouble = "";

    /** @param command given to {@code sh -c} */
    public CommandOutlet(String command, Patience patience) {
        this.command = command;
        this.patience = patience;
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public void accept(AlarmTransition t, String line) {
        Map<String, String> environment = Map.of(
                "BYWASH_ALARM", t.kind().word(),
                "BYWASH_SUBJECT", PlainText.of(t.subject(), LONGEST),
                "BYWASH_STATE", t.state().word(),
                "BYWASH_PRIORITY", t.priority().word());
        if (waiting.size() < MOST_WAITING) {
            waiting.add(new Job(line, environment));
        } else {
            fail("more alarm lines wait than it can take");
        }
    }

    /** Lines that the command did not take. */
    public long failed() {
        return failed;
    }

    /** What went wrong with the last line, in words; empty where it went well. */
    public String trouble() {
        return trouble;
    }

    @SuppressWarnings("NonAtomicVolatileUpdate") // one writer at a time: see the lock
    private synchronized void fail(String why) {
        trouble = "notify command: " + why;
        failed++;
        LOG.warn("notify command: {}", why); // the command itself may hold a password
    }

    private void run() {
        try {
            for (Job job = waiting.take(); job != END; job = waiting.take()) {
                deliver(job);
            }
        } catch (InterruptedException e) {
            LOG.debug("ended");
        }
    }

    private void deliver(Job job) throws InterruptedException {
        String why = attempt(job);
        Iterator<Duration> pauses = patience.pauses().iterator();
        boolean last = false;
        while (!why.isEmpty() && !last && pauses.hasNext()) {
            last = ending.await(pauses.next().toMillis(), TimeUnit.MILLISECONDS);
            why = attempt(job);
        }
        if (why.isEmpty()) {
            trouble = "";
        } else {
            fail(why);
        }
    }

    /** Empty where the command took the line. */
    private String attempt(Job job) throws InterruptedException {
        ProcessBuilder builder = new ProcessBuilder("sh", "-c", command)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.DISCARD);
        builder.environment().putAll(job.environment());
        Process process;
        try {
            process = builder.start();
        } catch (IOException e) {
            return "it cannot be started: " + e.getMessage();
        }
        try (OutputStream in = process.getOutputStream()) {
            in.write((job.line() + "\n").getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            LOG.debug("it did not read its line; its exit code decides", e);
        }
        try {
            if (!process.waitFor(patience.each().toMillis(), TimeUnit.MILLISECONDS)) {
                return "it took longer than " + patience.each().toSeconds() + " s";
            }
            return process.exitValue() == 0 ? "" : "it ended with " + process.exitValue();
        } finally {
            process.descendants().forEach(ProcessHandle::destroyForcibly);
            process.destroyForcibly();
        }
    }

    /** Gives what waits a moment, then ends. */
    @Override
    public void close() throws InterruptedException {
        ending.countDown();
        waiting.add(END);
        thread.join(patience.atEnd().toMillis());
        thread.interrupt();
        thread.join(1000);
        if (waiting.size() > 1) {
            LOG.warn("notify command: {} alarm lines were not given to it before the end", waiting.size() - 1);
        }
    }
}
