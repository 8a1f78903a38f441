package bywash.ingest.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/** Spoils good input in a seeded way: cuts, repeats, swaps, flips and plants what parsers dislike. */
final class Mangler {
    private static final List<String> PLANTS = List.of(
            "\u0000",
            "\u001b]0;x\u0007",
            "\ufeff",
            "\u202e",
            "\ud800",
            "1e999",
            "-0",
            "NaN",
            "Infinity",
            "99999999999999999999999999",
            "[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[",
            "{\"a\":{\"a\":{\"a\":",
            "&a [*a]",
            "\"",
            "\\",
            "\\u",
            "\r",
            "\n",
            ":",
            " - ",
            "\t",
            "null",
            "true",
            "2026-13-45T99:99:99Z",
            "-1000000000-01-01T00:00:00Z",
            "+1000000000-12-31T23:59:60Z");

    private final SplittableRandom random;

    Mangler(long seed) {
        random = new SplittableRandom(seed);
    }

    int below(int bound) {
        return random.nextInt(bound);
    }

    /** One to four wounds. */
    byte[] mangle(byte[] good) {
        byte[] bytes = good;
        int wounds = 1 + random.nextInt(4);
        for (int i = 0; i < wounds; i++) {
            bytes = wound(bytes);
        }
        return bytes;
    }

    String mangle(String good) {
        return new String(mangle(good.getBytes(StandardCharsets.UTF_8)), StandardCharsets.UTF_8);
    }

    /** Bytes without any sense. */
    byte[] noise(int most) {
        byte[] bytes = new byte[random.nextInt(most)];
        random.nextBytes(bytes);
        return bytes;
    }

    private byte[] wound(byte[] bytes) {
        int a = random.nextInt(bytes.length + 1);
        int b = random.nextInt(bytes.length + 1);
        int from = Math.min(a, b);
        int to = Math.min(Math.max(a, b), from + 64);
        return switch (random.nextInt(6)) {
            case 0 -> Arrays.copyOf(bytes, a);
            case 1 -> splice(bytes, from, to, new byte[0]);
            case 2 -> splice(bytes, to, to, Arrays.copyOfRange(bytes, from, to));
            case 3 -> splice(bytes, a, a, plant());
            case 4 -> splice(bytes, from, to, plant());
            default -> flip(bytes);
        };
    }

    private byte[] plant() {
        return PLANTS.get(random.nextInt(PLANTS.size())).getBytes(StandardCharsets.UTF_8);
    }

    private byte[] flip(byte[] bytes) {
        byte[] copy = bytes.clone();
        if (copy.length > 0) {
            copy[random.nextInt(copy.length)] ^= (byte) (1 << random.nextInt(8));
        }
        return copy;
    }

    private static byte[] splice(byte[] bytes, int from, int to, byte[] middle) {
        byte[] out = new byte[bytes.length - (to - from) + middle.length];
        System.arraycopy(bytes, 0, out, 0, from);
        System.arraycopy(middle, 0, out, from, middle.length);
        System.arraycopy(bytes, to, out, from + middle.length, bytes.length - to);
        return out;
    }
}
