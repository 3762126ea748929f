package org.framewright.copies.device;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.framewright.base.SmallFiles;

/** Where volumes of disks and cards are mounted on this computer. */
@FunctionalInterface
public interface MountedVolumes {
  /** Their folders as they are now. */
  List<Path> folders() throws IOException;

  /** Those of this computer; none on a system that is not known. */
  static MountedVolumes ofThisSystem() {
    var system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    if (system.startsWith("linux")) {
      return () -> linux(Path.of("/proc/self/mountinfo"));
    }
    if (system.startsWith("mac")) {
      return () -> below(Path.of("/Volumes"));
    }
    return system.startsWith("windows") ? MountedVolumes::roots : List::of;
  }

  /** Network shares are left out: looking at one that is gone may take minutes. */
  static List<Path> linux(Path mountinfo) throws IOException {
    var table =
        Mount.table(new String(SmallFiles.read(mountinfo, 1 << 20), StandardCharsets.ISO_8859_1));
    return table.stream()
        .filter(mount -> mount.isOnBlockDevice() || mount.source().startsWith("/dev/"))
        .filter(mount -> !mount.point().equals("/"))
        .map(mount -> Path.of(mount.point()))
        .distinct()
        .toList();
  }

  private static List<Path> below(Path folder) throws IOException {
    var volumes = new ArrayList<Path>();
    try (var names = Files.newDirectoryStream(folder)) {
      names.forEach(volumes::add);
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    return List.copyOf(volumes);
  }

  private static List<Path> roots() {
    var roots = new ArrayList<Path>();
    FileSystems.getDefault().getRootDirectories().forEach(roots::add);
    return List.copyOf(roots);
  }
}
