package bywash.rules.prevention;

import java.util.List;

/**
 * Something to change, with the incidents behind it.
 *
 * @param what to do
 * @param why in words
 * @param incidents ids, oldest first; empty where the site file alone says so
 */
public record Suggestion(String what, String why, List<String> incidents) {
    public Suggestion {
        incidents = List.copyOf(incidents);
    }
}
