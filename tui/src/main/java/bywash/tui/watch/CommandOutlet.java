package bywash.tui.watch;

import bywash.ingest.text.PlainText;
import bywash.rules.alarm.AlarmTransition;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Runs a command of the grower's for each alarm line, which it gets on standard input; alarm, subject, state and priority
 * stand in its environment too. One at a time, on a thread of its own: a command that hangs is ended, one that fails is tried
 * again, and lines beyond a bound are dropped and counted. The watch never waits for it.
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
     */
    public record Patience(Duration each, List<Duration> pauses) {
        public static final Patience USUAL =
                new Patience(Duration.ofSeconds(20), List.of(Duration.ofSeconds(2), Duration.ofSeconds(15)));
    }

    private record Job(String line, Map<String, String> environment) {}

    private final String command;
    private final Patience patience;
    private final BlockingQueue<Job> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
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
        if (!waiting.offer(new Job(line, environment))) {
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
            while (true) {
                deliver(waiting.take());
            }
        } catch (InterruptedException e) {
            LOG.debug("ended");
        }
    }

    private void deliver(Job job) throws InterruptedException {
        String why = attempt(job);
        for (Duration pause : patience.pauses()) {
            if (why.isEmpty()) {
                break;
            }
            Thread.sleep(pause.toMillis());
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
        for (int i = 0; i < 20 && !waiting.isEmpty(); i++) {
            Thread.sleep(100);
        }
        thread.join(200);
        thread.interrupt();
        thread.join(1000);
    }
}
