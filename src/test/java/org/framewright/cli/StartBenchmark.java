package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;

/**
 * How long commands take from start to end as a person starts them, by the launcher, beside a
 * program of one line on the same Java: each once a round, the rounds one after the other, and the
 * middle of the ratios. {@code mvn -q -Pbench -Dbench=Start -Dbench.arguments="FOLDER ROUNDS"}: the
 * folder of the program, {@code target/framewright} without one, and 9 rounds.
 */
final class StartBenchmark {
  private static final String CONVENTION = "templates/fashion-days.yaml";
  private static final String JOB = "2026-11-02_KVO_aw-look-book";

  private StartBenchmark() {}

  public static void main(String[] args) throws Exception {
    var home = Path.of(args.length > 0 ? args[0] : "target/framewright").toAbsolutePath();
    int rounds = args.length > 1 ? Integer.parseInt(args[1]) : 9;
    var work = Files.createTempDirectory("framewright-start");
    var launcher = home.resolve("bin/framewright").toString();
    time(List.of(launcher, "demo", "--tiny", "--into", work.toString()));
    var job = work.resolve(JOB).toString();
    var convention = home.resolve(CONVENTION).toString();
    var commands = new LinkedHashMap<String, List<String>>();
    commands.put("one line", oneLine(home, work));
    commands.put("--version", List.of(launcher, "--version"));
    commands.put("--help", List.of(launcher, "--help"));
    commands.put("read", List.of(launcher, "read", JOB, "--by", convention));
    commands.put(
        "name",
        List.of(
            launcher,
            "name",
            "job",
            "--by",
            convention,
            "day=2026-11-02",
            "client=KVO",
            "title=look"));
    commands.put("check", List.of(launcher, "check", convention));
    commands.put("mark", List.of(launcher, "mark", job, "001", "on-set"));
    commands.put("day", List.of(launcher, "day", job));
    var taken = new LinkedHashMap<String, List<Long>>();
    for (int round = 0; round <= rounds; round++) {
      for (var command : commands.entrySet()) {
        long nanos = time(command.getValue());
        if (round > 0) {
          taken.computeIfAbsent(command.getKey(), _ -> new ArrayList<>()).add(nanos);
        }
      }
    }
    print(taken);
  }

  private static void print(Map<String, List<Long>> taken) {
    var base = taken.get("one line");
    taken.forEach(
        (name, nanos) -> {
          var ratios = new ArrayList<Double>();
          for (int i = 0; i < nanos.size(); i++) {
            ratios.add(1.0 * nanos.get(i) / base.get(i));
          }
          ratios.sort(null);
          var sorted = nanos.stream().sorted().toList();
          System.out.printf(
              "%-10s %5.0f ms (%.0f to %.0f)   %4.1f times%n",
              name,
              sorted.get(sorted.size() / 2) / 1e6,
              sorted.getFirst() / 1e6,
              sorted.getLast() / 1e6,
              ratios.get(ratios.size() / 2));
        });
  }

  private static long time(List<String> command) throws IOException, InterruptedException {
    long begin = System.nanoTime();
    var process =
        new ProcessBuilder(command)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    int status = process.waitFor();
    long nanos = System.nanoTime() - begin;
    if (status > 1) {
      throw new IOException(command + " ended with " + status);
    }
    return nanos;
  }

  private static List<String> oneLine(Path home, Path work) throws IOException {
    var name = OneLine.class.getName();
    var file = name.replace('.', '/') + ".class";
    var jar = work.resolve("line.jar");
    try (var out = new JarOutputStream(Files.newOutputStream(jar));
        var in = OneLine.class.getClassLoader().getResourceAsStream(file)) {
      out.putNextEntry(new JarEntry(file));
      in.transferTo(out);
    }
    var own = home.resolve("runtime/bin/java");
    var java =
        Files.isExecutable(own) ? own : Path.of(System.getProperty("java.home"), "bin", "java");
    return List.of(java.toString(), "-XX:+UseSerialGC", "-cp", jar.toString(), name);
  }
}
