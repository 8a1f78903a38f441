package bywash.ingest.mqtt;

import bywash.ingest.site.BrokerSettings;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Who we are at the broker. Read anew for each try, so that a corrected file takes effect by itself. */
final class Login {
    final @Nullable String username;
    final byte @Nullable [] password;

    private Login(@Nullable String username, byte @Nullable [] password) {
        this.username = username;
        this.password = password;
    }

    static Login of(BrokerSettings broker) throws FileFault {
        Path file = broker.passwordFile();
        return new Login(
                broker.username(), file == null ? null : firstLine(file).getBytes(StandardCharsets.UTF_8));
    }

    private static String firstLine(Path file) throws FileFault {
        try (BufferedReader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            String line = reader.readLine();
            if (line == null || line.isEmpty()) {
                throw new FileFault("password-file " + file + " is empty; its first line should be the password");
            }
            return line;
        } catch (NoSuchFileException e) {
            throw new FileFault("password-file " + file + " does not exist");
        } catch (IOException e) {
            throw new FileFault("password-file " + file + " cannot be read; check its rights");
        }
    }

    @Override
    public String toString() {
        return username == null ? "no login" : "login of " + username;
    }
}
