package org.framewright.installer;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** The folder itself, to be unpacked anywhere; uninstalled by removing it. */
record TarGz() implements Format {
  @Override
  public String name() {
    return "tar.gz";
  }

  @Override
  public String tool() {
    return "tar";
  }

  @Override
  public Outcome.Made make(Release release, Home home, Tool tar) throws IOException {
    var system = Machine.system() + "-" + Machine.processor();
    var base = "framewright-" + release.version() + "-" + system;
    var file = release.output().resolve(base + ".tar.gz");
    var arguments = new ArrayList<String>();
    if (Machine.system().equals("linux")) {
      // Without -n gzip writes the time of the packing into the file.
      arguments.addAll(List.of("--use-compress-program=gzip -n", "-cf", file.toString()));
      arguments.addAll(List.of("--sort=name", "--owner=0", "--group=0", "--numeric-owner"));
      arguments.add("--transform=flags=r;s,^framewright,framewright-" + release.version() + ",");
    } else {
      arguments.addAll(List.of("-czf", file.toString()));
    }
    arguments.add("framewright");
    tar.run(home.folder().getParent(), arguments);
    return new Outcome.Made(file);
  }
}
