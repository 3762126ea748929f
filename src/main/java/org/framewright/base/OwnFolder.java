package org.framewright.base;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;

/** The program's own folders within those of people. */
public final class OwnFolder {
  private OwnFolder() {}

  /**
   * Hides a folder whose name begins with a dot where the dot alone does not, on Windows. That it
   * is not hidden does no harm, so a volume that cannot is let be.
   */
  public static void hide(Path folder) {
    var system = folder.getFileSystem();
    // Linux keeps such an attribute for servers of Windows; nobody there goes by it.
    if (system.getSeparator().equals("\\")
        && system.supportedFileAttributeViews().contains("dos")
        && folder.getFileName().toString().startsWith(".")) {
      try {
        Files.setAttribute(folder, "dos:hidden", true, LinkOption.NOFOLLOW_LINKS);
      } catch (IOException | UnsupportedOperationException e) {
        // It stays visible.
      }
    }
  }

  /**
   * Makes a folder for its owner alone, before there is anything in it; one that is there stays.
   */
  public static void createPrivate(Path folder) throws IOException {
    if (Files.isDirectory(folder)) {
      return;
    }
    Files.createDirectories(folder.getParent());
    if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      var owner = PosixFilePermissions.fromString("rwx------");
      Files.createDirectory(folder, PosixFilePermissions.asFileAttribute(owner));
    } else {
      // Windows keeps a user's settings from others by itself.
      Files.createDirectory(folder);
    }
  }

  /**
   * Removes a file, or a folder with all that is in it, if it is there; links are removed, not
   * followed.
   */
  public static void remove(Path path) throws IOException {
    if (Files.exists(path, LinkOption.NOFOLLOW_LINKS)) {
      Files.walkFileTree(path, new Remover());
    }
  }

  private static final class Remover extends SimpleFileVisitor<Path> {
    @Override
    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
      Files.delete(file);
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult postVisitDirectory(Path visited, IOException failure)
        throws IOException {
      if (failure != null) {
        throw failure;
      }
      Files.delete(visited);
      return FileVisitResult.CONTINUE;
    }
  }
}
