/** What the record of incidents suggests to change, so that they do not come again. Sees alarm, response and site. */
@NullMarked
package bywash.rules.prevention;

import org.jspecify.annotations.NullMarked;
