package bywash.rules.site;

/**
 * The mains supply.
 *
 * @param residualMgL total residual chlorine as Cl2, mg/L, 0 to 10
 * @param alkalinityMgL as CaCO3, mg/L
 * @param temperatureC Cel
 */
public record Mains(
        Disinfectant disinfectant, double residualMgL, double ph, double alkalinityMgL, double temperatureC) {}
