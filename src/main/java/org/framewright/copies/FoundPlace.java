package org.framewright.copies;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.copies.device.MountIdentity;
import org.framewright.copies.device.Volumes;

/**
 * A folder that may be compared, as it is now. Nothing in it was read.
 *
 * @param folder as it was given
 * @param name what to call it
 * @param there whether it can be reached
 * @param looksLikeCard whether it has the folder that all cameras make
 * @param noBackup why it cannot be said to be a backup although it looks like a card; empty where
 *     it can
 * @param device what it lies on, in words; empty where it is not there
 * @param total what its volume holds, in bytes; 0 where nobody says
 * @param free what is left of that
 * @param mount which appearance of which volume it lies on
 */
public record FoundPlace(
    Path folder,
    String name,
    boolean there,
    boolean looksLikeCard,
    Optional<Problem> noBackup,
    String device,
    long total,
    long free,
    MountIdentity mount) {

  /** Looks at a folder. */
  public static FoundPlace of(Path folder, Volumes volumes) {
    try {
      var real = folder.toRealPath();
      if (Files.isDirectory(real)) {
        var device = volumes.deviceOf(real);
        var store = Files.getFileStore(real);
        return new FoundPlace(
            folder,
            name(real),
            true,
            Place.looksLikeCard(real),
            PlaceFinder.noBackup(folder, real, volumes),
            device.label(),
            Math.max(0, store.getTotalSpace()),
            Math.max(0, store.getUsableSpace()),
            volumes.mountOf(real));
      }
    } catch (IOException e) {
      // It cannot be reached, which is what is said of it.
    }
    return new FoundPlace(
        folder, name(folder), false, false, Optional.empty(), "", 0, 0, MountIdentity.UNKNOWN);
  }

  private static String name(Path folder) {
    var last = folder.getFileName();
    return PlainText.line(last == null ? folder.toString() : last.toString());
  }
}
