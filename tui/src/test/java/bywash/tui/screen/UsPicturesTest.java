package bywash.tui.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.rules.engine.Snapshot;
import bywash.rules.site.Site;
import bywash.rules.site.Units;
import bywash.tui.view.Frame;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Every situation that has a picture, at a site that reads US units: no metric figure is left over, and none is silly. */
final class UsPicturesTest {
    private static final Pattern METRIC = Pattern.compile(
            "(?<![\\w.])[+-]?\\d[\\d.]*(?: to [+-]?\\d[\\d.]*)? (?:L|L/min|mm|cm|kg|kg/m3|m2|C|Cel|ml)\\b(?!/)");
    /** Grams stay for chemicals, nitrogen and what else a small scale or a kit is read in. */
    private static final Pattern GRAMS = Pattern.compile(
            "(?<![\\w.])\\d[\\d.]* g\\b(?! of (?:N\\b|pure|nitrogen|ammoni|oxygen|"
                    + "alkalinity|sodium|potassium|ascorbic|thiosulfate|phosphoric|hydrochloric|product|the product|it\\b)| sodium| ascorbic| as CaCO3| in all| a day as|, pH)");

    private static final Pattern SILLY =
            Pattern.compile("(?<![\\w.-])(?:\\d{4,}\\.\\d|\\d+\\.\\d{3,}) (?:gal|gal/min|in|lb|oz|ft2|F|lb/gal)\\b");

    private static Frame us(Frame f) {
        Snapshot s = f.snapshot();
        Site m = s.site();
        Site site = new Site(
                m.name(),
                m.id(),
                m.timeZone(),
                m.elevationM(),
                m.stocking(),
                Units.US,
                m.mains(),
                m.vessels(),
                m.probes(),
                m.limits(),
                m.species());
        Snapshot us = new Snapshot(
                site,
                s.at(),
                s.stocking(),
                s.probes(),
                s.vessels(),
                s.residual(),
                s.alarms(),
                s.topUp(),
                s.feedUp(),
                s.feedDetail(),
                s.care(),
                s.season(),
                s.tests(),
                s.balance());
        return new Frame(us, f.trends(), f.log(), f.now(), f.losses(), f.safeSources(), f.replay(), f.playback());
    }

    @Test
    void nothingMetricIsLeftOver() {
        TreeSet<String> left = new TreeSet<>();
        int[] screens = {0};
        PicturesTest.screens()
                .map(a -> a.get())
                .filter(a -> (int) a[4] == 120 && (boolean) a[3])
                .forEach(a -> {
                    screens[0]++;
                    Frame frame = us((Frame) a[1]);
                    ScreenModel model = new ScreenModel();
                    Keys.press(model, frame, (String) a[2]);
                    String text = Screens.draw(frame, model, true, 150, 300).text();
                    for (Pattern pattern : new Pattern[] {METRIC, GRAMS, SILLY}) {
                        text.lines().forEach(line -> {
                            Matcher m = pattern.matcher(line);
                            while (m.find()) {
                                left.add(a[0] + ": " + m.group() + " | " + line.strip());
                            }
                        });
                    }
                });
        assertTrue(screens[0] > 60, "situations: " + screens[0]);
        assertEquals("", String.join("\n", left));
    }
}
