package bywash.rules.husbandry.daily;

import java.time.LocalDate;

/**
 * One probe over one day.
 *
 * @param day local to the site
 * @param count readings in it
 */
public record DayValue(LocalDate day, long count, double low, double mean, double high) {}
