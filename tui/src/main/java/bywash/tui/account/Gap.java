package bywash.tui.account;

import java.time.Instant;

/**
 * A time in which nothing could be seen.
 *
 * @param what such as {@code not watched} or {@code feed lost}
 */
public record Gap(Instant from, Instant to, String what) {}
