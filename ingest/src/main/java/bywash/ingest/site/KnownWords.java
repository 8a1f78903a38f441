package bywash.ingest.site;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Lists of allowed words, and which of them was probably meant. */
public final class KnownWords {
    private KnownWords() {}

    /** "did you mean \"overflow\"?" where one is near, else the whole list. */
    static String advice(String given, Collection<String> allowed) {
        String near = nearest(given, allowed);
        String list = list(allowed);
        return near == null ? list : "did you mean \"" + near + "\"? Allowed: " + list;
    }

    /** "a, b or c"; where there is none yet, that one must be named first. */
    static String list(Collection<String> words) {
        if (words.isEmpty()) {
            return "name one first";
        }
        StringBuilder text = new StringBuilder();
        int left = words.size();
        for (String word : words) {
            left--;
            text.append(word).append(left == 0 ? "" : left == 1 ? " or " : ", ");
        }
        return text.toString();
    }

    /** All words, the one that was probably meant before the others. */
    public static List<String> nearestFirst(String given, Collection<String> allowed) {
        List<String> all = new ArrayList<>(allowed);
        String near = nearest(given, allowed);
        if (near != null) {
            all.remove(near);
            all.add(0, near);
        }
        return all;
    }

    static @Nullable String nearest(String given, Collection<String> allowed) {
        if (given.length() > 40) {
            return null;
        }
        String best = null;
        int least = Math.max(1, given.length() / 3) + 1;
        for (String word : allowed) {
            int distance = distance(given, word);
            if (distance < least) {
                least = distance;
                best = word;
            }
        }
        return best;
    }

    /** Levenshtein distance. */
    private static int distance(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int above = row[j];
                int change = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(change, Math.min(above, row[j - 1]) + 1);
                diagonal = above;
            }
        }
        return row[b.length()];
    }
}
