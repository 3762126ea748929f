package org.framewright.base;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;

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
}
