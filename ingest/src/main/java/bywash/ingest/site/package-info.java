/**
 * The site file: YAML into values, every fault told at once with file and line. Sees rules.site and rules.vessel.
 */
@NullMarked
package bywash.ingest.site;

import org.jspecify.annotations.NullMarked;
