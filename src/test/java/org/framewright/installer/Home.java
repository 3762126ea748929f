package org.framewright.installer;

import java.io.File;
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
    var home = new Home(folder);
    var picocli = home.jar("picocli-");
    RaisedClasses.raise(picocli);
    DirectCalls.write(home.jar("framewright-"));
    if (Files.exists(home.bill().file())) {
      home.bill().addRuntime(folder.resolve("runtime/release"));
      home.bill().changed(picocli, RaisedClasses.NOTE);
    }
    Stamp.put(folder, release.time());
    return home;
  }

  Path lib() {
    return folder.resolve("lib");
  }

  /** The Java of the folder. */
  Tool java(Release release) {
    var windows = File.separatorChar == '\\';
    return Tool.of(folder.resolve("runtime/bin").resolve(windows ? "java.exe" : "java"), release);
  }

  /** The one jar whose name begins so. */
  Path jar(String start) throws IOException {
    try (var jars = Files.list(lib())) {
      return jars.filter(jar -> jar.getFileName().toString().startsWith(start))
          .findFirst()
          .orElseThrow(() -> new IOException("there is no " + start + "*.jar in " + lib()));
    }
  }

  /** The list of what it is made of, which a build without network has not made. */
  BillOfMaterials bill() {
    return new BillOfMaterials(folder.resolve(BillOfMaterials.NAME));
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
