package org.framewright.installer;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.framewright.base.OperatingSystem;

/** A form in which people of one system expect a program. */
sealed interface Format permits Deb, Rpm, TarGz, Dmg, Pkg, Msi {

  /** Its name in messages: that of its file's ending. */
  String name();

  /** The program that packs it. */
  String tool();

  /** Packs the installed form. */
  Outcome.Made make(Release release, Home home, Tool tool) throws IOException;

  /** Packs the installed form where the tool is there. */
  default Outcome make(Release release, Home home) throws IOException {
    Optional<Tool> tool = Tool.find(tool(), release);
    return tool.isEmpty()
        ? new Outcome.LeftOut("there is no " + tool() + " on the PATH")
        : make(release, home, tool.get());
  }

  /** Those of a system. */
  static List<Format> of(OperatingSystem system) {
    return switch (system) {
      case LINUX -> List.of(new TarGz(), new Deb(), new Rpm());
      case MACOS -> List.of(new TarGz(), new Dmg(), new Pkg());
      case WINDOWS -> List.of(new Msi());
      case OTHER -> List.of(new TarGz());
    };
  }
}
