package org.framewright.installer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** A disk image from which the app is dragged to the folder of programs. */
record Dmg() implements Format {
  @Override
  public String name() {
    return "dmg";
  }

  @Override
  public String tool() {
    return "hdiutil";
  }

  @Override
  public Outcome.Made make(Release release, Home home, Tool hdiutil) throws IOException {
    var image = Folders.empty(release.work("dmg"));
    MacApp.lay(release, home, image);
    Files.createSymbolicLink(image.resolve("Applications"), Path.of("/Applications"));
    var base = "Framewright-" + release.version() + "-" + Machine.processor();
    var file = release.output().resolve(base + ".dmg");
    hdiutil.run(
        release.output(),
        List.of(
            "create",
            "-volname",
            "Framewright",
            "-srcfolder",
            image.toString(),
            "-format",
            "UDZO",
            "-ov",
            file.toString()));
    return new Outcome.Made(file);
  }
}
