package org.framewright.installer;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Locale;

/**
 * What is packed, and where to.
 *
 * @param built the program as the build left it: bin, lib, licences
 * @param sources the project's folder
 * @param output where the packages go
 * @param version as Maven has it, {@code 0.1.0} or {@code 0.1.0-SNAPSHOT}
 * @param time of every file in the packages, in whole seconds, since formats keep no more
 */
record Release(Path built, Path sources, Path output, String version, Instant time) {

  /** The version's three numbers alone, for systems that allow nothing else. */
  String numbers() {
    return version.replaceFirst("-.*", "");
  }

  /** The version as Debian and RPM order it: what leads to 0.1.0 is older than 0.1.0. */
  String ordered() {
    return version.toLowerCase(Locale.ROOT).replace('-', '~');
  }

  /** A file of ours that belongs to packages alone: an icon, a menu entry, a template. */
  Path resource(String name) {
    return sources.resolve("src/main/package").resolve(name);
  }

  /** A folder that one step works in. */
  Path work(String name) {
    return output.resolve("work").resolve(name);
  }

  Path logs() {
    return output.resolve("logs");
  }
}
