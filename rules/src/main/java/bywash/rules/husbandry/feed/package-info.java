/**
 * Feed: what to give by the mass of the fish, the temperature and their appetite, what the plants can use, what follows from it
 * in the water, and warnings before the oxygen or the bacteria fall behind. Feed in g/d as weighed.
 */
@NullMarked
package bywash.rules.husbandry.feed;

import org.jspecify.annotations.NullMarked;
