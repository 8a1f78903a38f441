package bywash.rules.detect;

/**
 * What the volume of one vessel alone says.
 *
 * <pre>
 *   LEARNING <---> STEADY <---> DRAINING_BACK     each look, while no flow is known
 *       |             |               |
 *       +-------------+---------------+---> IN, OUT     a sign of a flow, or one that is known to run
 *                                             |
 *                     STEADY <----------------+   its end was told, it proved to be none, or something
 *                                                 declared began or ended
 *
 *   any ---> DRAINING_BACK   the pump stopped        any ---> LEARNING   the pump started
 * </pre>
 */
enum Motion {
    LEARNING,
    STEADY,
    IN,
    OUT,
    DRAINING_BACK
}
