/** Tests of the season's book. */
@org.jspecify.annotations.NullMarked
package bywash.rules.husbandry;
