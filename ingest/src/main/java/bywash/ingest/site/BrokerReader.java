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
            return new BrokerSettings(URI.create(DEFAULT_URL), null, null, null, null);
        }
        YamlMap map = YamlMap.at(
                problems,
                "broker: ",
                top.keyNode("broker"),
                node,
                "url",
                "username",
                "password-file",
                "ca-file",
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
        if (map.has("password-file") && !map.has("username")) {
            map.fault("password-file", "password-file without a username", "username: beside it");
        }
        if (map.has("ca-file") && url != null && !url.getScheme().endsWith("s")) {
            map.fault("ca-file", "ca-file with a url that is not encrypted", "a url with mqtts or wss");
        }
        String username = map.text("username");
        String clientId = map.text("client-id");
        Path passwordFile = path(map, "password-file");
        Path caFile = path(map, "ca-file");
        return url == null ? null : new BrokerSettings(url, username, passwordFile, caFile, clientId);
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
