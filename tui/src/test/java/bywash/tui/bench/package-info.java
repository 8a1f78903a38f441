/** The delay benchmark: how soon water is found and how often it is cried falsely, over simulated sites. Not a test. */
@NullMarked
package bywash.tui.bench;

import org.jspecify.annotations.NullMarked;
