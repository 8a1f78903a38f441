package bywash.ingest.site;

import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads where the feed comes from. Left out, it is the broker of this machine. */
final class BrokerReader {
    private static final String DEFAULT_URL = "mqtt://127.0.0.1:1883";
    private static final List<String> SCHEMES = List.of("mqtt", "mqtts", "ws", "wss");

    private final Problems problems;
    private final Path folder;

    BrokerReader(Problems problems, Path folder) {
        this.problems = problems;
        this.folder = folder;
    }

    @Nullable
    BrokerSettings read(YamlMap top) {
        Node node = top.node("broker");
        if (node == null) {
            return BrokerSettings.at(URI.create(DEFAULT_URL));
        }
        YamlMap map = YamlMap.at(
                problems,
                "broker: ",
                top.keyNode("broker"),
                node,
                "url",
                "username",
                "password-file",
                "password-env",
                "ca-file",
                "cert-file",
                "key-file",
                "client-id",
                "password");
        if (map == null) {
            return null;
        }
        if (map.has("password")) {
            map.fault(
                    "password",
                    "a password does not belong in the site file",
                    "password-file: with the path of a file whose first line is the password");
        }
        URI url = url(map);
        boolean plain = url != null && !url.getScheme().endsWith("s");
        for (String key : List.of("ca-file", "cert-file", "key-file")) {
            if (plain && map.has(key)) {
                map.fault(key, key + " with a url that is not encrypted", "a url with mqtts or wss");
            }
        }
        BrokerLogin login = login(map);
        Path caFile = path(map, "ca-file");
        String clientId = map.text("client-id");
        return url == null ? null : new BrokerSettings(url, login, caFile, clientId);
    }

    private BrokerLogin login(YamlMap map) {
        for (String key : List.of("password-file", "password-env")) {
            if (map.has(key) && !map.has("username")) {
                map.fault(key, key + " without a username", "username: beside it");
            }
        }
        if (map.has("password-file") && map.has("password-env")) {
            map.fault("password-env", "a password from two places", "password-file: or password-env:, not both");
        }
        if (map.has("cert-file") != map.has("key-file")) {
            map.fault(
                    map.has("cert-file") ? "cert-file" : "key-file",
                    "cert-file and key-file go together",
                    "both, or neither");
        }
        String variable = map.text("password-env");
        if (variable != null && !variable.matches("[A-Za-z_][A-Za-z0-9_]{0,63}")) {
            map.fault(
                    "password-env",
                    "password-env " + YamlMap.quoted(variable) + " is not the name of an environment variable",
                    "a name such as BYWASH_PASSWORD");
        }
        return new BrokerLogin(
                map.text("username"),
                path(map, "password-file"),
                variable,
                path(map, "cert-file"),
                path(map, "key-file"));
    }

    private @Nullable URI url(YamlMap map) {
        String text = map.required("url", "a url such as " + DEFAULT_URL);
        if (text == null) {
            return null;
        }
        try {
            URI url = new URI(text);
            if (url.getScheme() == null || !SCHEMES.contains(url.getScheme())) {
                map.fault(
                        "url",
                        "url " + YamlMap.quoted(text) + " has a scheme that is not known",
                        "mqtt, mqtts, ws or wss, such as " + DEFAULT_URL);
            } else if (url.getHost() == null || url.getPort() == 0 || url.getPort() > 65_535) {
                map.fault(
                        "url", "url " + YamlMap.quoted(text) + " has no valid host and port", "such as " + DEFAULT_URL);
            } else if (url.getUserInfo() != null) {
                map.fault("url", "a login does not belong in the url", "username: and password-file:");
            } else {
                return url;
            }
        } catch (URISyntaxException e) {
            map.fault("url", "url " + YamlMap.quoted(text) + " is not a url", "such as " + DEFAULT_URL);
        }
        return null;
    }

    private @Nullable Path path(YamlMap map, String key) {
        String text = map.text(key);
        if (text == null) {
            return null;
        }
        try {
            return folder.resolve(text);
        } catch (InvalidPathException e) {
            map.fault(key, key + " " + YamlMap.quoted(text) + " is not a path", "a path, relative to the site file");
            return null;
        }
    }
}
