package org.framewright.installer;

import java.io.IOException;
import java.util.List;

/** For Windows, made by WiX 5. */
record Msi() implements Format {
  @Override
  public String name() {
    return "msi";
  }

  @Override
  public String tool() {
    return "wix";
  }

  @Override
  public Outcome.Made make(Release release, Home home, Tool wix) throws IOException {
    var base = "Framewright-" + release.version() + "-" + Machine.wix();
    var file = release.output().resolve(base + ".msi");
    wix.run(
        release.output(),
        List.of(
            "build",
            "-arch",
            Machine.wix(),
            "-d",
            "Version=" + release.numbers(),
            "-d",
            "Home=" + home.folder().toAbsolutePath(),
            "-d",
            "Icon=" + release.resource("icons/framewright.ico").toAbsolutePath(),
            "-out",
            file.toString(),
            release.resource("windows/framewright.wxs").toAbsolutePath().toString()));
    return new Outcome.Made(file);
  }
}
