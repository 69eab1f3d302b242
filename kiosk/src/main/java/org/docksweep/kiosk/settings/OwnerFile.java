package org.docksweep.kiosk.settings;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.AclEntry;
import java.nio.file.attribute.AclEntryPermission;
import java.nio.file.attribute.AclEntryType;
import java.nio.file.attribute.AclFileAttributeView;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.List;

/**
 * A file with something secret in it. Its owner alone may read and write it, from the moment it is made; a new content takes the
 * place of the old one in one step, so that a reader or a power cut never meets half of it.
 */
public final class OwnerFile {
    private OwnerFile() {}

    /**
     * Writes a file anew.
     *
     * @param file the file; its folder is made when there is none
     * @param content everything that is to stand in it
     * @throws IOException if the disk refuses; what stood there before is untouched then
     */
    public static void write(Path file, byte[] content) throws IOException {
        Path folder = file.toAbsolutePath().getParent();
        Files.createDirectories(folder);
        Path part = Files.createTempFile(folder, file.getFileName().toString(), ".part", onlyOwner());
        try {
            closeByList(part);
            Files.write(part, content);
            try (var channel = java.nio.channels.FileChannel.open(part, java.nio.file.StandardOpenOption.WRITE)) {
                channel.force(true);
            }
            Files.move(part, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    private static FileAttribute<?>[] onlyOwner() {
        return posix()
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
                }
                : new FileAttribute<?>[0];
    }

    private static boolean posix() {
        return FileSystems.getDefault().supportedFileAttributeViews().contains("posix");
    }

    /** Where there are no POSIX permissions, an access list that names the owner alone. */
    private static void closeByList(Path file) throws IOException {
        AclFileAttributeView list = Files.getFileAttributeView(file, AclFileAttributeView.class);
        if (posix() || list == null) {
            return;
        }
        list.setAcl(List.of(AclEntry.newBuilder()
                .setType(AclEntryType.ALLOW)
                .setPrincipal(list.getOwner())
                .setPermissions(EnumSet.allOf(AclEntryPermission.class))
                .build()));
    }
}
