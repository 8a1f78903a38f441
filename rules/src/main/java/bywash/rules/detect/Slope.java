package bywash.rules.detect;

/** How fast a volume changed over so many minutes; L/min, one standard error, infinite where nothing was seen. */
record Slope(double rateLMin, double seLMin, double minutes) {}
