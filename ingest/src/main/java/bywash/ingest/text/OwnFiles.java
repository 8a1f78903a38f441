package bywash.ingest.text;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.nio.file.attribute.UserPrincipal;
import java.util.Set;

/** Folders and files that only their owner may look into, whatever the umask is. */
public final class OwnFiles {
    private static final String FOLDER = "rwx------";
    private static final String FILE = "rw-------";
    /** On Linux it belongs to whoever runs this process. */
    private static final Path SELF = Path.of("/proc/self");

    private OwnFiles() {}

    private static boolean posix() {
        return FileSystems.getDefault().supportedFileAttributeViews().contains("posix");
    }

    private static FileAttribute<?>[] rights(String rights) {
        return posix()
                ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(rights))}
                : new FileAttribute<?>[0];
    }

    /** Makes a folder, and those above it that are not there; one that is there is left as it is. */
    public static void folder(Path folder) throws IOException {
        Files.createDirectories(folder, rights(FOLDER));
    }

    /** Takes from everybody else the rights to a folder of ours. */
    public static void close(Path folder) throws IOException {
        if (posix()) {
            Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString(FOLDER));
        }
    }

    /** Takes from everybody else the rights to a file of ours. */
    public static void closeFile(Path file) throws IOException {
        if (posix()) {
            Files.setPosixFilePermissions(file, PosixFilePermissions.fromString(FILE));
        }
    }

    /** Makes a file that must not be there. */
    public static void file(Path file) throws IOException {
        Files.createFile(file, rights(FILE));
    }

    /**
     * Refuses a folder in which somebody else could put what we would trust: it must be ours, be no link, and be open to no
     * others for writing.
     *
     * @throws IOException in words
     */
    public static void mustBeOurs(Path folder) throws IOException {
        if (!posix()) {
            return;
        }
        UserPrincipal owner = Files.getOwner(folder, LinkOption.NOFOLLOW_LINKS);
        UserPrincipal me = me();
        if (!owner.equals(me)) {
            throw new IOException("folder " + folder + " belongs to " + owner.getName() + ", and this runs as "
                    + me.getName() + "; run it as " + owner.getName() + ", or give --state a folder of your own");
        }
        if (Files.isSymbolicLink(folder)) {
            throw new IOException("folder " + folder + " is a link; give --state the folder itself");
        }
        Set<PosixFilePermission> rights = Files.getPosixFilePermissions(folder);
        if (rights.contains(PosixFilePermission.OTHERS_WRITE)) {
            throw new IOException("anybody may write to folder " + folder + "; close it: chmod 700 " + folder);
        }
    }

    private static UserPrincipal me() throws IOException {
        return Files.exists(SELF)
                ? Files.getOwner(SELF)
                : FileSystems.getDefault()
                        .getUserPrincipalLookupService()
                        .lookupPrincipalByName(System.getProperty("user.name"));
    }
}
