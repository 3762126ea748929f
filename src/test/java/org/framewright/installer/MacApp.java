package org.framewright.installer;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The folder that a Mac shows as one program. The installed form lies in it whole. */
final class MacApp {
  static final String NAME = "Framewright.app";
  static final String HOME = "Contents/Resources/framewright";

  private MacApp() {}

  /** Lays it out below a folder. */
  static void lay(Release release, Home home, Path below) throws IOException {
    var contents = below.resolve(NAME).resolve("Contents");
    Folders.copy(home.folder(), below.resolve(NAME).resolve(HOME), inside -> true);
    LinuxTree.write(
        contents.resolve("Info.plist"),
        Files.readString(release.resource("mac/Info.plist"), UTF_8)
            .replace("@version@", release.numbers()));
    var start = contents.resolve("MacOS/Framewright");
    LinuxTree.copy(release.resource("mac/Framewright"), start);
    if (!start.toFile().setExecutable(true)) {
      throw new IOException(start + " cannot be made executable");
    }
    LinuxTree.copy(
        release.resource("icons/framewright.icns"), contents.resolve("Resources/framewright.icns"));
    Stamp.put(below, release.time());
  }
}
