package bywash.tui.screen;

import bywash.tui.view.Tone;
import bywash.tui.view.VesselLine;
import java.util.List;

/**
 * Vessels with a level probe as upright pictures side by side: the rim is the overflow, the thick wall is the band the
 * level normally moves in, and beside it stand volume, net flow, freeboard and what is left of time.
 */
final class VesselPictures {
    static final int ROWS = 8;
    private static final int WIDTH = 38;
    private static final int INSIDE = 12;
    private static final int DEPTH = ROWS - 2;

    private VesselPictures() {}

    /** Whether there is a vessel to draw and the width for one. */
    static boolean fits(int width, List<VesselLine> vessels) {
        return !vessels.isEmpty() && width >= WIDTH;
    }

    static int draw(Picture picture, int row, List<VesselLine> vessels) {
        picture.heading(row, 0, picture.width(), "LEVELS  rim: overflow  thick wall: normal band");
        int fits = Math.min(vessels.size(), picture.width() / WIDTH);
        for (int i = 0; i < fits; i++) {
            vessel(picture, row + 1, i * WIDTH + 1, vessels.get(i));
        }
        return row + ROWS;
    }

    private static void vessel(Picture picture, int row, int column, VesselLine vessel) {
        Glyphs glyphs = picture.glyphs();
        Style style = Style.of(vessel.tone());
        for (int depth = 0; depth < DEPTH; depth++) {
            double floor = (DEPTH - 1.0 - depth) / DEPTH;
            String wall = String.valueOf(wall(vessel, floor, glyphs));
            String water =
                    String.valueOf(glyphs.part((vessel.fill() - floor) * DEPTH)).repeat(INSIDE);
            picture.put(row + depth, column, wall, Style.PLAIN);
            picture.put(row + depth, column + 1, water, style);
            picture.put(row + depth, column + 1 + INSIDE, wall, Style.PLAIN);
        }
        String floor = glyphs.corner() + String.valueOf(glyphs.line()).repeat(INSIDE) + glyphs.otherCorner();
        picture.put(row + DEPTH, column, floor, Style.PLAIN);
        int beside = column + INSIDE + 3;
        int room = WIDTH - INSIDE - 4;
        String mark = vessel.tone() == Tone.PLAIN ? "" : vessel.tone() == Tone.WARNING ? "! " : "!! ";
        picture.put(row, beside, room, mark + vessel.name() + " " + vessel.word(), style);
        picture.put(row + 1, beside, room, vessel.volume(), Style.PLAIN);
        picture.put(row + 2, beside, room, vessel.netFlow() + " net", style);
        picture.put(row + 3, beside, room, vessel.freeboard() + " freeboard", Style.PLAIN);
        picture.put(row + 4, beside, room, vessel.left(), style);
    }

    private static char wall(VesselLine vessel, double floor, Glyphs glyphs) {
        double middle = floor + 0.5 / DEPTH;
        boolean usual = middle >= vessel.usualLow() - 0.5 / DEPTH && middle <= vessel.usualHigh() + 0.5 / DEPTH;
        return usual ? glyphs.thickWall() : glyphs.wall();
    }
}
