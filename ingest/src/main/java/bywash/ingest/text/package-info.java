/** Text from outside made fit to be shown or logged. Sees nothing else of the program. */
@NullMarked
package bywash.ingest.text;

import org.jspecify.annotations.NullMarked;
