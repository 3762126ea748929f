package org.framewright.installer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The installed form: a folder that can be put anywhere and needs nothing of the system but its C
 * library, and for the window what desktops bring along.
 *
 * @param folder bin, lib, runtime, and what the program is distributed with
 */
record Home(Path folder) {

  /** Lays it out anew, without caches. */
  static Home lay(Release release) throws IOException {
    var folder = Folders.empty(release.output().resolve("framewright"));
    Folders.copy(
        release.built(),
        folder,
        inside -> !(inside.startsWith("lib") && RuntimeImage.holds(inside)));
    RuntimeImage.make(release, folder.resolve("runtime"));
    BillOfMaterials.addRuntime(folder);
    var home = new Home(folder);
    Stamp.put(folder, release.time());
    return home;
  }

  Path lib() {
    return folder.resolve("lib");
  }

  Path manuals() {
    return folder.resolve("man/man1");
  }

  Path completions() {
    return folder.resolve("completions");
  }

  /** Whether a path in it goes along where the system has places of its own for the rest. */
  static boolean withoutSystemPlaces(Path inside) {
    return !inside.startsWith("man") && !inside.startsWith("completions");
  }

  /** The bytes of a part, 0 where it is not there. */
  long size(String part) throws IOException {
    var path = folder.resolve(part);
    return Files.exists(path) ? Folders.size(path) : 0;
  }
}
