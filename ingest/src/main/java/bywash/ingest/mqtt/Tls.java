package bywash.ingest.mqtt;

import bywash.ingest.site.BrokerSettings;
import com.hivemq.client.mqtt.MqttClientSslConfig;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateFactory;
import java.util.Collection;
import javax.net.ssl.TrustManagerFactory;

/** Transport security: the client verifies host names; a CA file replaces the system's trust. */
final class Tls {
    private Tls() {}

    static MqttClientSslConfig of(BrokerSettings broker) throws IOException {
        var config = MqttClientSslConfig.builder();
        if (broker.caFile() != null) {
            try (InputStream in = Files.newInputStream(broker.caFile())) {
                Collection<? extends Certificate> certificates =
                        CertificateFactory.getInstance("X.509").generateCertificates(in);
                KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
                store.load(null, null);
                int index = 0;
                for (Certificate certificate : certificates) {
                    store.setCertificateEntry("ca-" + index++, certificate);
                }
                TrustManagerFactory trust = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
                trust.init(store);
                config = config.trustManagerFactory(trust);
            } catch (GeneralSecurityException e) {
                throw new IOException("ca-file " + broker.caFile() + " holds no usable certificate", e);
            }
        }
        return config.build();
    }
}
