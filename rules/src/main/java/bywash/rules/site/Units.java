package bywash.rules.site;

/** Units on the screen; the rules always work in metric. */
public enum Units {
    METRIC,
    US
}
