package org.framewright.installer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** A package for the Mac's own installer: the app, and the command with its manual. */
record Pkg() implements Format {
  @Override
  public String name() {
    return "pkg";
  }

  @Override
  public String tool() {
    return "pkgbuild";
  }

  @Override
  public Outcome.Made make(Release release, Home home, Tool pkgbuild) throws IOException {
    var root = Folders.empty(release.work("pkg"));
    MacApp.lay(release, home, root.resolve("Applications"));
    var local = root.resolve("usr/local");
    var link = local.resolve("bin/framewright");
    Files.createDirectories(link.getParent());
    Files.createSymbolicLink(
        link,
        Path.of("/Applications").resolve(MacApp.NAME).resolve(MacApp.HOME + "/bin/framewright"));
    Folders.copy(home.folder(), local.resolve("share"), inside -> inside.startsWith("man"));
    Stamp.put(local, release.time());
    var base = "Framewright-" + release.version() + "-" + Machine.processor();
    var file = release.output().resolve(base + ".pkg");
    pkgbuild.run(
        release.output(),
        List.of(
            "--root",
            root.toString(),
            "--component-plist",
            release.resource("mac/components.plist").toAbsolutePath().toString(),
            "--identifier",
            "org.framewright",
            "--version",
            release.numbers(),
            "--install-location",
            "/",
            file.toString()));
    return new Outcome.Made(file);
  }
}
