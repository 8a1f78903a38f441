package bywash.ingest.site;

import bywash.ingest.text.PlainText;
import bywash.rules.site.Limit;
import bywash.rules.site.Mains;
import bywash.rules.site.Site;
import bywash.rules.site.Species;
import bywash.rules.site.Stocking;
import bywash.rules.site.Units;
import bywash.rules.site.Vessel;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;

/**
 * Reads a site file. All faults are told at once, each with its line. Where a key is left out:
 * elevation 0 m, stocking fish, units metric, broker mqtt://127.0.0.1:1883; what {@link MainsReader} says for the mains; a
 * probe every 10 s.
 */
public final class SiteFileReader {
    private static final int LARGEST = 1_000_000;
    private static final int LONGEST_NAME = 60;
    private static final String[] KEYS = {
        "name",
        "id",
        "time-zone",
        "elevation",
        "stocking",
        "units",
        "broker",
        "mains",
        "vessels",
        "probes",
        "limits",
        "species"
    };

    private final Problems problems;
    private final Path folder;

    private SiteFileReader(Problems problems, Path folder) {
        this.problems = problems;
        this.folder = folder;
    }

    /** Reads a file; paths in it are relative to its folder. */
    public static SiteFileResult read(Path file) {
        Problems problems = new Problems(String.valueOf(file.getFileName()));
        String text = text(file, problems);
        if (text == null) {
            return new SiteFileResult.Faulty(problems.inOrder());
        }
        Path parent = file.toAbsolutePath().getParent();
        return new SiteFileReader(problems, parent == null ? file : parent).parse(text);
    }

    /**
     * Reads a text, such as a built-in resource.
     *
     * @param name the file's name in messages
     */
    public static SiteFileResult read(String text, String name) {
        return new SiteFileReader(new Problems(name), Path.of("")).parse(text);
    }

    private static @Nullable String text(Path file, Problems problems) {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes(LARGEST + 1);
            if (bytes.length > LARGEST) {
                problems.add(1, "the file is larger than 1 MB", "a site file of a few kilobytes");
                return null;
            }
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (NoSuchFileException e) {
            problems.add(1, "the file does not exist", "the path of a site file");
        } catch (CharacterCodingException e) {
            problems.add(1, "the file is not UTF-8 text", "a YAML file in UTF-8");
        } catch (IOException e) {
            problems.add(1, "the file cannot be read", "a file that this user may read");
        }
        return null;
    }

    private SiteFileResult parse(String text) {
        SiteFile file = null;
        try {
            LoadSettings settings = LoadSettings.builder().setLabel("site").build();
            Node root = new Compose(settings).composeString(text).orElse(null);
            if (root == null) {
                problems.add(1, "the file is empty", "name, id, time-zone, vessels and probes");
            } else {
                file = site(root);
            }
        } catch (MarkedYamlEngineException e) {
            int line = e.getProblemMark().map(Mark::getLine).orElse(0) + 1;
            problems.add(
                    line, "not YAML: " + oneLine(e.getProblem()), "YAML with blanks for indents and one key a line");
        } catch (YamlEngineException e) {
            problems.add(1, "not YAML: " + oneLine(e.getMessage()), "a plain YAML text");
        } catch (StackOverflowError e) {
            problems.add(1, "the file is nested too deep", "at most a few levels");
        }
        return file != null && problems.none()
                ? new SiteFileResult.Good(file)
                : new SiteFileResult.Faulty(problems.inOrder());
    }

    private static String oneLine(@Nullable String text) {
        return Measure.shortened(String.valueOf(text).lines().findFirst().orElse(""));
    }

    private @Nullable SiteFile site(Node root) {
        YamlMap top = YamlMap.at(problems, "", null, root, KEYS);
        if (top == null) {
            return null;
        }
        String words = top.required("name", "the site's name in words");
        String name = words == null ? null : PlainText.of(words, LONGEST_NAME);
        String id = top.required("id", "lower-case letters, digits and hyphens");
        if (id != null) {
            top.idHolds(root(top, "id", root), "id", id);
        }
        ZoneId zone = zone(top);
        double elevation = top.measureOr("elevation", Dimension.LENGTH, -500_000, 5_000_000, 0) / 1000;
        Stocking stocking = top.word("stocking", Stocking.values(), Stocking::word);
        Units units = top.word("units", Units.values(), u -> u.name().toLowerCase(Locale.ROOT));
        BrokerSettings broker = new BrokerReader(problems, folder).read(top);
        Mains mains = MainsReader.read(problems, top);
        VesselReader vesselReader = new VesselReader(problems);
        List<Vessel> vessels = vesselReader.read(top);
        List<ProbeBinding> bindings = new ProbeReader(problems, vessels, vesselReader::shaped).read(top);
        List<Limit> limits = LimitReader.read(problems, top, vessels);
        List<Species> species = SpeciesReader.read(problems, top);
        if (!problems.none() || name == null || id == null || zone == null || broker == null || mains == null) {
            return null;
        }
        Site site = new Site(
                name,
                id,
                zone,
                elevation,
                stocking == null ? Stocking.FISH : stocking,
                units == null ? Units.METRIC : units,
                mains,
                vessels,
                bindings.stream().map(ProbeBinding::probe).toList(),
                limits,
                species);
        return new SiteFile(site, broker, bindings);
    }

    private static Node root(YamlMap map, String key, Node otherwise) {
        Node node = map.keyNode(key);
        return node == null ? otherwise : node;
    }

    private static @Nullable ZoneId zone(YamlMap top) {
        String text = top.required("time-zone", "a zone such as Europe/Dublin, or UTC");
        if (text == null) {
            return null;
        }
        try {
            return ZoneId.of(text);
        } catch (DateTimeException e) {
            String near = KnownWords.nearest(
                    text, ZoneId.getAvailableZoneIds().stream().sorted().toList());
            top.fault(
                    "time-zone",
                    "time-zone " + YamlMap.quoted(text) + " is not known",
                    near == null ? "a zone such as Europe/Dublin, or UTC" : "did you mean \"" + near + "\"?");
            return ZoneOffset.UTC;
        }
    }
}
