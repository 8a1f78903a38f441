package bywash.ingest.mqtt;

import bywash.ingest.site.BrokerLogin;
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
        String password = password(broker.login());
        return new Login(
                broker.login().username(), password == null ? null : password.getBytes(StandardCharsets.UTF_8));
    }

    private static @Nullable String password(BrokerLogin login) throws FileFault {
        if (login.passwordFile() != null) {
            return firstLine(login.passwordFile());
        }
        String variable = login.passwordEnvironment();
        if (variable == null) {
            return null;
        }
        String value = System.getenv(variable);
        if (value == null || value.isEmpty()) {
            throw new FileFault("password-env " + variable + " is not set in the environment of this watch");
        }
        return value;
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
