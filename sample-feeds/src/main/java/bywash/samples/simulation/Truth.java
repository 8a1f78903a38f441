package bywash.samples.simulation;

/**
 * What is really so at a second of the simulation, for tests to hold estimates against.
 *
 * @param bedsL held in all beds, L
 * @param pipesL held in pipes and drained back when the pump stands, L
 * @param systemL all water that recirculates, the fish tank included, L
 * @param netInL what came into sump and reserve from outside since the start, less evaporation, leaks and spills, L
 * @param inflowLMin what enters the sump now, planned or not, less leaks; beds and pipes aside, L/min
 * @param residualUgL total residual of the system, ug/L
 * @param reserveResidualMgL total residual in the reserve, mg/L
 * @param spilledL over the edges of sump and reserve since the start, L
 */
public record Truth(
        long second,
        double sumpL,
        double reserveL,
        double bedsL,
        double pipesL,
        double systemL,
        double netInL,
        double inflowLMin,
        double residualUgL,
        double reserveResidualMgL,
        double spilledL) {}
