package org.framewright.installer;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.framewright.base.OperatingSystem;

/**
 * Plays the program, so that Java keeps what it loaded and linked (JEP 483, 514, 515). A cache
 * holds for the very jars, by their order, sizes and times, and for the runtime; a launcher whose
 * cache does not fit starts more slowly, from what Java keeps of itself, and does the same.
 */
final class Training {
  private static final String NATIVE = "--enable-native-access=ALL-UNNAMED";

  private final Release release;
  private final Home home;

  private Training(Release release, Home home) {
    this.release = release;
    this.home = home;
  }

  /** Writes {@code commands.aot} and {@code app.aot} beside the jars. */
  static void run(Release release, Home home) throws IOException {
    new Training(release, home).run();
    Stamp.put(home.folder(), release.time());
  }

  private void run() throws IOException {
    var work = Folders.empty(release.work("training"));
    var job = job(work);
    // Of Java alone; jlink would make it before the runtime's files have their times.
    home.java(release).run(work, List.of("-Xshare:dump"));
    play(
        work,
        "commands.aot",
        List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", NATIVE),
        "org.framewright.cli.TrainingRun",
        List.of(
            home.folder().resolve("templates/fashion-days.yaml").toString(),
            job.getFileName().toString(),
            job.toString(),
            "001"));
    play(
        work,
        "app.aot",
        appOptions(work),
        "org.framewright.ui.TrainingRun",
        List.of(job.toString()));
  }

  /** The sample job, played without a cache. */
  private Path job(Path work) throws IOException {
    var folder = Files.createDirectories(work.resolve("jobs"));
    play(
        work,
        "",
        List.of(),
        "org.framewright.cli.Framewright",
        List.of("demo", "--tiny", "--into", folder.toString()));
    try (var jobs = Files.list(folder)) {
      return jobs.filter(Files::isDirectory)
          .findFirst()
          .orElseThrow(() -> new IOException("the demo has left no job in " + folder));
    }
  }

  /** Those of the launcher, on a window that nobody sees. */
  private List<String> appOptions(Path work) {
    var bin = home.folder().resolve("bin");
    var options =
        new ArrayList<>(List.of(NATIVE + ",javafx.graphics", "@" + bin.resolve("app.options")));
    if (OperatingSystem.current() == OperatingSystem.LINUX) {
      options.add("@" + bin.resolve("linux.options"));
    }
    options.addAll(List.of("-Dglass.platform=Headless", "-Dprism.order=sw"));
    options.add("-Dframewright.settings=" + work.resolve("settings"));
    return options;
  }

  private void play(
      Path work, String cache, List<String> options, String main, List<String> arguments)
      throws IOException {
    var words = new ArrayList<>(options);
    if (!cache.isEmpty()) {
      words.add("-XX:AOTCacheOutput=" + home.lib().resolve(cache));
    }
    words.addAll(List.of("-Dframewright.home=" + home.folder(), "-cp", classPath(), main));
    words.addAll(arguments);
    home.java(release).run(work, words);
  }

  /** As the launchers have it: the program first, then what reads its arguments, then the rest. */
  private String classPath() throws IOException {
    var first = List.of(home.jar("framewright-").toString(), home.jar("picocli-").toString());
    var all = new ArrayList<>(first);
    if (OperatingSystem.current() == OperatingSystem.WINDOWS) {
      all.add(home.lib() + File.separator + "*"); // a path may not have a star there
    } else {
      try (var jars = Files.list(home.lib())) {
        jars.map(Path::toString)
            .filter(jar -> jar.endsWith(".jar") && !first.contains(jar))
            .sorted()
            .forEach(all::add);
      }
    }
    return String.join(File.pathSeparator, all);
  }
}
