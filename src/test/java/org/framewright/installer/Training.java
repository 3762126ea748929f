package org.framewright.installer;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Plays the program once, so that Java keeps what it loaded and linked in a cache (JEP 483, 514,
 * 515). A cache holds for the very jars, by their order, sizes and times, and for the runtime; a
 * launcher without one, or with one that does not fit, starts more slowly and does the same.
 */
final class Training {
  private Training() {}

  /** Writes {@code lib/commands.aot} in the installed form. */
  static void run(Release release, Home home) throws IOException {
    var work = Folders.empty(release.work("training"));
    var cache = home.lib().resolve("commands.aot");
    var arguments =
        new ArrayList<>(
            List.of(
                "--enable-native-access=ALL-UNNAMED,javafx.graphics",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-XX:AOTCacheOutput=" + cache,
                "-Dframewright.home=" + home.folder(),
                "-Djava.io.tmpdir=" + work,
                "-cp",
                classPath(home),
                "org.framewright.cli.Framewright",
                "demo",
                "--tiny"));
    Tool.of(home.folder().resolve("runtime/bin/java"), release).run(work, arguments);
    Stamp.put(home.lib(), release.time());
  }

  /** In the order in which the launcher gives them: by bytes, as a shell in the C locale sorts. */
  private static String classPath(Home home) throws IOException {
    try (var jars = Files.list(home.lib())) {
      return jars.filter(jar -> jar.toString().endsWith(".jar"))
          .map(Path::toString)
          .sorted()
          .collect(Collectors.joining(File.pathSeparator));
    }
  }
}
