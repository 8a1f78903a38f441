package bywash.rules.husbandry.season;

import bywash.rules.site.Stocking;

/**
 * What the season's book is told of the rest of the site.
 *
 * @param volumeL likely volume of the loop, L
 * @param residualHighUgL upper bound of the estimated residual, ug/L
 */
public record Surroundings(Stocking stocking, double volumeL, double residualHighUgL) {}
