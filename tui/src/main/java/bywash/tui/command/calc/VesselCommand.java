package bywash.tui.command.calc;

import bywash.rules.vessel.Box;
import bywash.rules.vessel.ConeBottom;
import bywash.rules.vessel.Frustum;
import bywash.rules.vessel.HorizontalCylinder;
import bywash.rules.vessel.Kind;
import bywash.rules.vessel.StrappingTable;
import bywash.rules.vessel.VerticalCylinder;
import bywash.rules.vessel.VesselShape;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Depth to volume and back for every shape of vessel. */
@Command(name = "vessel", description = "Depth to volume and back for a vessel of any shape.")
final class VesselCommand extends Calculation {
    @Option(
            names = "--shape",
            description = "box, vertical-cylinder, horizontal-cylinder, cone-bottom, frustum or strapping-table.")
    private @Nullable String shape;

    @Option(names = "--length", description = "Inside length, as in \"1.2 m\".")
    private @Nullable String length;

    @Option(names = "--width", description = "Inside width, as in \"0.8 m\".")
    private @Nullable String width;

    @Option(names = "--height", description = "Inside height, as in \"0.75 m\".")
    private @Nullable String height;

    @Option(names = "--diameter", description = "Inside diameter, as in \"1.1 m\".")
    private @Nullable String diameter;

    @Option(names = "--cone-height", description = "Height of the cone, as in \"0.3 m\".")
    private @Nullable String coneHeight;

    @Option(names = "--bottom-diameter", description = "Diameter at the floor of a frustum.")
    private @Nullable String bottomDiameter;

    @Option(names = "--top-diameter", description = "Diameter at the rim of a frustum.")
    private @Nullable String topDiameter;

    @Option(
            names = "--row",
            arity = "1",
            description = "Row of a strapping table, as in \"10 cm=35 L\"; from 0 up, twice or more.")
    private List<String> rows = new ArrayList<>();

    @Option(names = "--depth", description = "Depth of water, as in \"41 cm\".")
    private @Nullable String depth;

    @Option(names = "--volume", description = "Volume of water instead of depth, as in \"400 L\".")
    private @Nullable String volume;

    @Override
    Answer answer() {
        VesselShape vessel = vessel(Typed.word("--shape", shape, Kind.values(), Kind::word));
        if ((depth == null) == (volume == null)) {
            throw new IllegalArgumentException("give either --depth or --volume");
        }
        double mm = depth != null
                ? Typed.measure("--depth", depth, Dimension.LENGTH)
                : vessel.depthMm(Typed.measure("--volume", volume, Dimension.VOLUME));
        double litres = vessel.volumeL(mm);
        return new Answer("Vessel: " + vessel.kind().word())
                .number("depth", mm, "mm")
                .number("volume", litres, "L")
                .number("full to the rim", vessel.capacityL(), "L")
                .number("share of full", 100 * litres / vessel.capacityL(), "%")
                .number("area of the surface", vessel.areaM2(mm), "m2")
                .source(
                        vessel.kind() == Kind.STRAPPING_TABLE
                                ? "Fritsch and Carlson 1980, SIAM J. Numer. Anal. 17:238, monotone interpolation"
                                : "solid geometry");
    }

    private VesselShape vessel(Kind kind) {
        return switch (kind) {
            case BOX -> new Box(mm("--length", length), mm("--width", width), mm("--height", height));
            case VERTICAL_CYLINDER -> new VerticalCylinder(mm("--diameter", diameter), mm("--height", height));
            case HORIZONTAL_CYLINDER -> new HorizontalCylinder(mm("--diameter", diameter), mm("--length", length));
            case CONE_BOTTOM ->
                new ConeBottom(mm("--diameter", diameter), mm("--cone-height", coneHeight), mm("--height", height));
            case FRUSTUM ->
                new Frustum(
                        mm("--bottom-diameter", bottomDiameter),
                        mm("--top-diameter", topDiameter),
                        mm("--height", height));
            case STRAPPING_TABLE ->
                new StrappingTable(rows.stream().map(VesselCommand::row).toList());
        };
    }

    private static double mm(String option, @Nullable String text) {
        return Typed.measure(option, text, Dimension.LENGTH);
    }

    private static StrappingTable.Row row(String text) {
        String[] sides = text.split("=", -1);
        if (sides.length != 2) {
            throw new IllegalArgumentException(
                    "--row is \"" + text + "\"; it must be a depth and a volume, such as \"10 cm=35 L\"");
        }
        return new StrappingTable.Row(
                Typed.measure("--row", sides[0], Dimension.LENGTH), Typed.measure("--row", sides[1], Dimension.VOLUME));
    }
}
