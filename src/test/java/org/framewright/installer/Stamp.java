package org.framewright.installer;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributeView;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.Set;

/** Gives a tree of files the modes and the time that do not depend on who made it, and when. */
final class Stamp {
  private static final Set<PosixFilePermission> OPEN = PosixFilePermissions.fromString("rwxr-xr-x");
  private static final Set<PosixFilePermission> READ = PosixFilePermissions.fromString("rw-r--r--");

  private Stamp() {}

  /** Folders and what its owner may run get mode 755, other files 644; all get one time. */
  static void put(Path folder, Instant time) throws IOException {
    var stamp = FileTime.from(time);
    Files.walkFileTree(
        folder,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            if (!attributes.isSymbolicLink()) {
              mode(file, Files.isExecutable(file) ? OPEN : READ);
            }
            time(file, stamp);
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult postVisitDirectory(Path dir, IOException failure)
              throws IOException {
            mode(dir, OPEN);
            time(dir, stamp);
            return FileVisitResult.CONTINUE;
          }
        });
  }

  private static void mode(Path path, Set<PosixFilePermission> mode) throws IOException {
    var view = Files.getFileAttributeView(path, PosixFileAttributeView.class);
    if (view != null) {
      view.setPermissions(mode);
    }
  }

  private static void time(Path path, FileTime time) throws IOException {
    Files.getFileAttributeView(path, BasicFileAttributeView.class, LinkOption.NOFOLLOW_LINKS)
        .setTimes(time, time, null);
  }
}
