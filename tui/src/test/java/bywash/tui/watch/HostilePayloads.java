package bywash.tui.watch;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.SplittableRandom;

/** What somebody might send who wants to stall, fill or deface the watch. */
final class HostilePayloads {
    private final SplittableRandom random;

    HostilePayloads(SplittableRandom random) {
        this.random = random;
    }

    /** Noise, up to 40 bytes. */
    byte[] small() {
        byte[] bytes = new byte[random.nextInt(40)];
        random.nextBytes(bytes);
        return bytes;
    }

    /** Noise, or made on purpose. */
    byte[] next() {
        return switch (random.nextInt(9)) {
            case 0 -> text("[".repeat(20_000));
            case 1 -> text("{\"a\":".repeat(5000) + "1" + "}".repeat(5000));
            case 2 -> text("9".repeat(30_000));
            case 3 -> text("1e" + "9".repeat(random.nextInt(1, 400)));
            case 4 -> text("[" + "{\"n\":\"ph\",\"v\":7},".repeat(1500) + "{\"n\":\"ph\",\"v\":7}]");
            case 5 -> text("[{\"n\":\"ph\",\"v\":7,\"t\":" + random.nextInt(-900_000, 900_000) + "}]");
            case 6 -> text("[{\"n\":\"\\u001b[2J\\u001b]0;owned\\u0007\",\"v\":7,\"\\u009bx_\":1}]");
            case 7 -> filled(70_000);
            default -> small();
        };
    }

    private static byte[] filled(int size) {
        byte[] bytes = new byte[size];
        Arrays.fill(bytes, (byte) '7');
        return bytes;
    }

    private static byte[] text(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
