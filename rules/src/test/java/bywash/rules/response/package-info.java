@NullMarked
package bywash.rules.response;

import org.jspecify.annotations.NullMarked;
