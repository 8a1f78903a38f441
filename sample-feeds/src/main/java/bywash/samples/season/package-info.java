/**
 * A whole season of the invented site as a recording: two readings a day of each water probe, and what the grower entered. Seeded;
 * uses the recording format and no rules of detection or husbandry, so that what the report says of it is reckoned afresh.
 */
@NullMarked
package bywash.samples.season;

import org.jspecify.annotations.NullMarked;
