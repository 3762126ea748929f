package org.framewright.installer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The Java that travels with the program: the modules that it needs, with JavaFX among them. */
final class RuntimeImage {
  /**
   * What jdeps finds in the jars, and what no compiler sees: charsets of old lists, packages read
   * as file systems, the names of days and months.
   */
  static final List<String> MODULES =
      List.of(
          "java.base",
          "java.desktop",
          "java.logging",
          "java.management",
          "java.naming",
          "java.sql",
          "java.xml",
          "jdk.charsets",
          "jdk.crypto.ec",
          "jdk.httpserver",
          "jdk.localedata",
          "jdk.unsupported",
          "jdk.zipfs",
          "javafx.base",
          "javafx.controls",
          "javafx.graphics");

  private static final String LANGUAGES = "en,de,fr";

  private RuntimeImage() {}

  /** Whether a jar is one of JavaFX, which the runtime has in itself. */
  static boolean holds(Path jar) {
    return jar.getFileName().toString().startsWith("javafx-");
  }

  /** Makes it in a folder that is not there yet, with the JavaFX of the program's libraries. */
  static void make(Release release, Path folder) throws IOException {
    Tool.ofJava("jlink", release)
        .run(
            release.output(),
            List.of(
                "--module-path",
                modulePath(release.built().resolve("lib")),
                "--add-modules",
                String.join(",", MODULES),
                "--include-locales=" + LANGUAGES,
                "--dedup-legal-notices=error-if-not-same-content",
                "--strip-java-debug-attributes",
                "--no-header-files",
                "--no-man-pages",
                "--output",
                folder.toString()));
  }

  /** Of each JavaFX module two jars lie there: an empty one, and the one of this system. */
  private static String modulePath(Path lib) throws IOException {
    try (Stream<Path> jars = Files.list(lib)) {
      return jars.filter(RuntimeImage::holds)
          .filter(jar -> !jar.getFileName().toString().matches(".*-[0-9.]+\\.jar"))
          .sorted()
          .map(jar -> jar.toAbsolutePath().toString())
          .collect(Collectors.joining(java.io.File.pathSeparator));
    }
  }
}
