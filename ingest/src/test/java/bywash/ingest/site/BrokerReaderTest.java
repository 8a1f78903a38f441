package bywash.ingest.site;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class BrokerReaderTest {
    private static String with(String broker) {
        return SiteFileReaderTest.GOOD.replaceFirst("broker: \\{[^}]*}", "broker: {" + broker + "}");
    }

    @Test
    void takesAPasswordFromTheEnvironmentAndAnOwnCertificate() {
        String text = with("url: \"mqtts://h\", username: ann, password-env: BYWASH_PASSWORD, ca-file: ca.pem, "
                + "cert-file: own.pem, key-file: own.key");
        assertEquals(List.of(), SiteFileReaderTest.faults(text));
        BrokerLogin login = assertInstanceOf(SiteFileResult.Good.class, SiteFileReader.read(text, "site.yaml"))
                .siteFile()
                .broker()
                .login();
        assertEquals(new BrokerLogin("ann", null, "BYWASH_PASSWORD", Path.of("own.pem"), Path.of("own.key")), login);
    }

    @Test
    void tellsEveryFaultOfALogin() {
        assertEquals(
                List.of(
                        "site.yaml:5: broker: cert-file with a url that is not encrypted; a url with mqtts or wss",
                        "site.yaml:5: broker: password-file without a username; username: beside it",
                        "site.yaml:5: broker: password-env without a username; username: beside it",
                        "site.yaml:5: broker: a password from two places; password-file: or password-env:, not both",
                        "site.yaml:5: broker: cert-file and key-file go together; both, or neither",
                        "site.yaml:5: broker: password-env \"my secret\" is not the name of an environment variable; "
                                + "a name such as BYWASH_PASSWORD"),
                SiteFileReaderTest.faults(
                        with("url: \"mqtt://h\", password-file: a, password-env: my secret, cert-file: own.pem")));
    }
}
