package bywash.rules.water;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Each formula takes the range that its Javadoc gives, ends and all, and nothing beyond. */
class RangesTest {
    private static final LossRate NONE = new LossRate(0, 0, 0);
    private static final MixedTank TANK = new MixedTank(1000, 0.5);
    private static final MixedTank.Inflow STILL = new MixedTank.Inflow(0, 0);
    private static final CarbonateWater WATER = CarbonateWater.ofAlkalinity(20, 7, 100);

    /**
     * @param low the lowest value that is taken; the least above 0 where that is not
     * @param high the highest
     */
    private record Ranged(String what, double low, double high, DoubleFunction<Object> formula) {
        @Override
        public String toString() {
            return what;
        }
    }

    private static Ranged from(double low, double high, String what, DoubleFunction<Object> formula) {
        return new Ranged(what, low, high, formula);
    }

    private static Ranged above0(double high, String what, DoubleFunction<Object> formula) {
        return new Ranged(what, Double.MIN_VALUE, high, formula);
    }

    static Stream<Ranged> chlorine() {
        return Stream.of(
                from(0, 20, "residual that is lost", x -> FirstOrderLoss.after(x, 1, 1)),
                from(0, 1000, "rate of loss", x -> FirstOrderLoss.after(1, x, 1)),
                from(0, 10_000, "time of loss", x -> FirstOrderLoss.after(1, 1, x)),
                from(0, 20, "residual that waits", x -> FirstOrderLoss.until(x, 1, NONE)),
                above0(20, "limit that is waited for", x -> FirstOrderLoss.until(1, x, NONE)),
                above0(1e7, "volume of a tank", x -> new MixedTank(x, 0)),
                from(0, 20, "residual of a tank", x -> new MixedTank(1, x)),
                from(0, 10_000, "inflow", x -> new MixedTank.Inflow(x, 0)),
                from(0, 20, "residual of an inflow", x -> new MixedTank.Inflow(0, x)),
                from(0, 1000, "rate of loss in a tank", x -> TANK.standing(x, 1)),
                from(0, 1e6, "time in a tank", x -> TANK.standing(0, x)),
                from(0, 20, "limit in a tank", x -> TANK.litresUntil(x, 1)),
                from(0, 20, "residual of the mains", x -> TANK.litresUntil(1, x)),
                from(
                        1000,
                        1e7,
                        "volume at the brim",
                        x -> TankBalance.start(TANK).step(STILL, x, 0, 1)),
                from(
                        0,
                        1000,
                        "rate of loss in a step",
                        x -> TankBalance.start(TANK).step(STILL, 1e4, x, 1)),
                from(0, 60, "length of a step", x -> TankBalance.start(TANK).step(STILL, 1e4, 0, x)),
                above0(1_000_000, "volume to dechlorinate", x -> new DechlorinationDose.Water(x, 1, false)),
                from(0, 20, "residual to dechlorinate", x -> new DechlorinationDose.Water(1, x, false)),
                above0(100, "strength of a dechlorinator", x -> dechlorinate(x, 10)),
                from(0, 100, "excess of a dechlorinator", x -> dechlorinate(100, x)),
                from(0, 35, "temperature of hypochlorous acid", HypochlorousAcid::pKa),
                from(4, 11, "pH of hypochlorous acid", x -> HypochlorousAcid.share(x, 20)));
    }

    private static DechlorinationDose dechlorinate(double strengthPercent, double excessPercent) {
        return DechlorinationDose.of(
                new DechlorinationDose.Water(1, 1, false), Dechlorinator.THIOSULFATE, strengthPercent, excessPercent);
    }

    static Stream<Ranged> nitrogenAndFeed() {
        return Stream.of(
                from(0, 40, "temperature of ammonia", UnionisedAmmonia::pKa),
                from(4, 11, "pH of ammonia", x -> UnionisedAmmonia.share(x, 20)),
                from(0, 1000, "total ammonia", x -> UnionisedAmmonia.unionisedMgL(x, 7, 20)),
                from(6.5, 9, "pH of the criteria", x -> AmmoniaCriteria.chronic(x, 20)),
                from(0, 30, "temperature of the criteria", x -> AmmoniaCriteria.chronic(7, x)),
                from(0, 1_000_000, "feed", x -> Nitrification.tanGPerDay(x, 32)),
                from(10, 70, "protein", x -> Nitrification.tanGPerDay(100, x)),
                from(0, 100_000, "ammonia that takes oxygen", Nitrification::oxygenGPerDay),
                from(0, 100_000, "ammonia that takes alkalinity", Nitrification::alkalinityGPerDay),
                from(0, 30, "nitrite as nitrogen", NitriteGuard::asNo2MgL),
                from(0, 100, "nitrite", NitriteGuard::chlorideNeededMgL),
                from(0, 5000, "chloride", x -> NitriteGuard.saltG(1, x, 1)),
                above0(1_000_000, "volume to salt", x -> NitriteGuard.saltG(1, 0, x)),
                above0(1e7, "volume of nitrate", x -> new NitrateBalance(x, 0, 0, 0)),
                from(0, 100_000, "nitrate made", x -> new NitrateBalance(1, x, 0, 0)),
                from(0, 100_000, "nitrate taken", x -> new NitrateBalance(1, 0, x, 0)),
                from(0, 1_000_000, "water exchanged", x -> new NitrateBalance(1, 0, 0, x)),
                from(0, 5000, "nitrate", x -> new NitrateBalance(1, 0, 0, 0).risePerDayMgL(x)),
                from(0, 10_000, "days of nitrate", x -> new NitrateBalance(1, 0, 0, 0).afterMgL(1, x)),
                from(0, 100_000, "stock", x -> FeedRate.byBodyWeightGPerDay(x, 1)),
                from(0, 10, "share of body weight", x -> FeedRate.byBodyWeightGPerDay(1, x)),
                from(0, 100_000, "bed area", x -> FeedRate.byBedArea(x, FeedRate.Crop.LEAFY)));
    }

    static Stream<Ranged> oxygenAndPh() {
        return Stream.of(
                from(0, 40, "temperature of oxygen", x -> OxygenSolubility.saturationMgL(x, 0, 1)),
                from(0, 40, "salinity", x -> OxygenSolubility.saturationMgL(20, x, 1)),
                from(0.5, 1.1, "pressure", x -> OxygenSolubility.saturationMgL(20, 0, x)),
                from(0, 60, "oxygen as a share", x -> OxygenSolubility.percent(x, 20, 0, 1)),
                from(0, 60, "oxygen that is missing", x -> OxygenSolubility.deficitMgL(x, 20, 0, 1)),
                from(0, 400, "share of saturation", x -> OxygenSolubility.concentrationMgL(x, 20, 0, 1)),
                from(-430, 5000, "elevation", AirPressure::atmAtElevation),
                from(500, 1100, "pressure in hPa", AirPressure::atmFromHpa),
                from(0, 40, "temperature of carbonate", x -> new CarbonateWater(x, 7, 1)),
                from(0, 1e4, "total carbon", x -> new CarbonateWater(20, 7, x)),
                from(0, 1000, "alkalinity", x -> CarbonateWater.ofAlkalinity(20, 5, x)),
                from(100, 100_000, "carbon dioxide of the air", x -> CarbonateWater.openToAir(20, 100, x)),
                above0(1_000_000, "volume to dose", x -> dose().grams(PhReagent.HYDROCHLORIC_ACID, x)),
                from(0, 60, "temperature of a pH electrode", PhElectrode::idealSlopeMv),
                from(0, 14, "pH at an electrode", x -> PhElectrode.idealMv(x, 20)),
                from(1, 30, "temperature of the ZoBell solution", OrpCheck::zobellMv),
                from(0, 50, "temperature of the electrode's own check", OrpCheck::silverChlorideStandardMv),
                from(-2000, 2000, "potential", x -> ReferenceElectrode.values()[0].toHydrogenMv(x, 20)),
                from(-2000, 2000, "potential to hydrogen", x -> ReferenceElectrode.values()[0].fromHydrogenMv(x, 20)));
    }

    private static PhDose dose() {
        return PhDose.closed(WATER, PhReagent.HYDROCHLORIC_ACID, 6.5);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource({"chlorine", "nitrogenAndFeed", "oxygenAndPh"})
    void takesItsRangeAndNothingBeyond(Ranged ranged) {
        for (double good : new double[] {ranged.low, ranged.high}) {
            assertDoesNotThrow(() -> ranged.formula.apply(good), () -> ranged + " of " + good);
        }
        for (double bad : List.of(Math.nextDown(ranged.low), Math.nextUp(ranged.high), Double.NaN)) {
            assertThrows(IllegalArgumentException.class, () -> ranged.formula.apply(bad), () -> ranged + " of " + bad);
        }
    }

    @Test
    void aRangeOfLossIsInOrder() {
        assertDoesNotThrow(() -> new LossRate(0.1, 0.1, 0.1));
        assertThrows(IllegalArgumentException.class, () -> new LossRate(0.2, 0.1, 0.3));
        assertThrows(IllegalArgumentException.class, () -> new LossRate(0.1, 0.3, 0.2));
        assertThrows(IllegalArgumentException.class, () -> new LossRate(-0.1, 0.1, 0.2));
    }
}
