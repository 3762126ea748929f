package org.framewright.installer;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;

/** For Fedora, openSUSE and those made from them. */
record Rpm() implements Format {
  @Override
  public String name() {
    return "rpm";
  }

  @Override
  public String tool() {
    return "rpmbuild";
  }

  @Override
  public Outcome.Made make(Release release, Home home, Tool rpmbuild) throws IOException {
    var root = LinuxTree.lay(release, home, "rpm/root", "site-functions");
    Stamp.put(root, release.time());
    var top = release.work("rpm/build");
    var spec = release.work("rpm/framewright.spec");
    LinuxTree.write(
        spec,
        Files.readString(release.resource("rpm/framewright.spec"), UTF_8)
            .replace("@version@", release.ordered())
            .replace("@tree@", root.toAbsolutePath().toString()));
    rpmbuild.run(
        release.output(),
        List.of(
            "-bb",
            "--target",
            Machine.processor(),
            "--define",
            "_topdir " + top.toAbsolutePath(),
            spec.toString()));
    var name = "framewright-" + release.ordered() + "-1." + Machine.processor() + ".rpm";
    var file = release.output().resolve(name);
    Files.deleteIfExists(file);
    Files.move(top.resolve("RPMS").resolve(Machine.processor()).resolve(name), file);
    return new Outcome.Made(file);
  }
}
