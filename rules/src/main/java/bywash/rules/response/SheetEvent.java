package bywash.rules.response;

import java.time.Instant;

/** One thing that happened, in words. */
public record SheetEvent(Instant at, String words) {}
