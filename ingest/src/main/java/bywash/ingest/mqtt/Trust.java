package bywash.ingest.mqtt;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateFactory;
import java.util.Collection;
import javax.net.ssl.TrustManagerFactory;

/** The certificates of a PEM file, as what the client trusts instead of the system's. */
final class Trust {
    private Trust() {}

    static TrustManagerFactory of(Path caFile) throws FileFault {
        try (InputStream in = Files.newInputStream(caFile)) {
            Collection<? extends Certificate> certificates =
                    CertificateFactory.getInstance("X.509").generateCertificates(in);
            if (certificates.isEmpty()) {
                throw new FileFault("ca-file " + caFile + " holds no certificate; it should be PEM");
            }
            KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
            store.load(null, null);
            int n = 0;
            for (Certificate certificate : certificates) {
                store.setCertificateEntry("ca" + n++, certificate);
            }
            TrustManagerFactory factory = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
            factory.init(store);
            return factory;
        } catch (NoSuchFileException e) {
            throw new FileFault("ca-file " + caFile + " does not exist");
        } catch (IOException e) {
            throw new FileFault("ca-file " + caFile + " cannot be read; check its rights");
        } catch (GeneralSecurityException e) {
            throw new FileFault("ca-file " + caFile + " holds no certificate that can be read; it should be PEM");
        }
    }
}
