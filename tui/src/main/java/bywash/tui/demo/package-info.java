/** The broker inside the program that the demo and tests publish through. The only package that sees it. */
@NullMarked
package bywash.tui.demo;

import org.jspecify.annotations.NullMarked;
