package bywash.ingest.mqtt;

import java.net.URI;
import java.util.Locale;

/**
 * The broker's address, taken apart.
 *
 * @param path of a web socket, without the leading stroke
 */
record Endpoint(String scheme, String host, int port, String path) {
    static Endpoint of(URI url) {
        String scheme = url.getScheme() == null ? "" : url.getScheme().toLowerCase(Locale.ROOT);
        int usual = switch (scheme) {
            case "mqtt" -> 1883;
            case "mqtts" -> 8883;
            case "ws" -> 80;
            case "wss" -> 443;
            default -> throw new IllegalArgumentException("broker url: mqtt, mqtts, ws or wss");
        };
        String host = url.getHost();
        if (host == null) {
            throw new IllegalArgumentException("broker url: no host in it");
        }
        String bare = host.startsWith("[") ? host.substring(1, host.length() - 1) : host;
        String path = url.getRawPath() == null ? "" : url.getRawPath().replaceFirst("^/", "");
        return new Endpoint(scheme, bare, url.getPort() < 0 ? usual : url.getPort(), path.isEmpty() ? "mqtt" : path);
    }

    boolean encrypted() {
        return scheme.endsWith("s") && !scheme.equals("ws");
    }

    boolean webSocket() {
        return scheme.startsWith("ws");
    }

    /** As shown: never a user or a password that stood in the url. */
    String shown() {
        return scheme + "://" + (host.indexOf(':') >= 0 ? "[" + host + "]" : host) + ":" + port;
    }
}
