/**
 * What a site is: vessels, probes, mains figures and limits, as values. Sees only vessel shapes and how numbers are written; no files, no clock.
 */
@NullMarked
package bywash.rules.site;

import org.jspecify.annotations.NullMarked;
