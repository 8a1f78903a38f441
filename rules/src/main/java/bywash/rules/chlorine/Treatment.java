package bywash.rules.chlorine;

import bywash.rules.site.Disinfectant;
import bywash.rules.water.Dechlorinator;
import bywash.rules.water.LossPrior;
import bywash.rules.water.LossRate;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What is done to a batch to rid it of chlorine. The words stand in operator entries. */
public enum Treatment {
    STANDING("standing", LossPrior.STILL.rate(), LossPrior.CHLORAMINE.rate()),
    AERATED("aerated", LossPrior.AERATED.rate(), LossPrior.CHLORAMINE.rate()),
    SUNLIT("sunlit", LossPrior.SUNLIT.rate(), LossPrior.CHLORAMINE.rate()),
    /** Depends on contact with the carbon, which is not known here; wide assumption, no source. */
    CARBON("carbon", new LossRate(0.01, 0.5, 6), new LossRate(0.00005, 0.05, 2)),
    THIOSULFATE("thiosulfate", LossPrior.STILL.rate(), LossPrior.CHLORAMINE.rate()),
    ASCORBIC_ACID("ascorbic-acid", LossPrior.STILL.rate(), LossPrior.CHLORAMINE.rate());

    private final String word;
    private final LossRate chlorine;
    private final LossRate chloramine;

    Treatment(String word, LossRate chlorine, LossRate chloramine) {
        this.word = word;
        this.chlorine = chlorine;
        this.chloramine = chloramine;
    }

    public String word() {
        return word;
    }

    /** The treatment of this word. */
    public static Optional<Treatment> of(String word) {
        return Arrays.stream(values()).filter(t -> t.word.equals(word)).findFirst();
    }

    /** All words, for a message. */
    public static String words() {
        return Arrays.stream(values()).map(Treatment::word).collect(Collectors.joining(", "));
    }

    /** Whether an amount of a chemical goes with it. */
    public boolean chemical() {
        return agent() != null;
    }

    /** Whether it can rid water of chloramine at all, if enough is given; standing, air and sun do not. */
    public boolean removesChloramine() {
        return chemical() || this == CARBON;
    }

    /** Rate of loss from here on with nothing learned. */
    LossRate rate(Disinfectant disinfectant) {
        return switch (disinfectant) {
            case CHLORINE -> chlorine;
            case CHLORAMINE -> chloramine;
            case NONE -> new LossRate(0, 0, 0);
        };
    }

    /** The weaker form of the chemical, which is planned on where the entry does not say; null for none. */
    @Nullable
    Dechlorinator agent() {
        return switch (this) {
            case STANDING, AERATED, SUNLIT, CARBON -> null;
            case THIOSULFATE -> Dechlorinator.THIOSULFATE_PENTAHYDRATE;
            case ASCORBIC_ACID -> Dechlorinator.ASCORBIC_ACID;
        };
    }

    /** Chlorine (mg as Cl2) that an amount may remove: a tenth less than planned, as planned, and at the very most. */
    Litres removesMg(double amountG) {
        Dechlorinator agent = agent();
        if (agent == null || Double.isNaN(amountG)) {
            return Litres.of(0);
        }
        double planned = amountG * 1000 / agent.mgPerMgCl2();
        double most = this == THIOSULFATE ? 4 * amountG * 1000 / Dechlorinator.THIOSULFATE.mgPerMgCl2() : planned;
        return new Litres(0.9 * planned, planned, StrictMath.max(planned, most));
    }
}
