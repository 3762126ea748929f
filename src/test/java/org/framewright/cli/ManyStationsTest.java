package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.cli.Ran.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Station;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Many processes on one job at the same time: ticks, an import, renames and a hand-off. */
@Tag("slow")
class ManyStationsTest {
  private static final int PROCESSES = 8;
  private static final int TICKS = 25;
  private static final int IMPORTS = 5;
  private static final int FIRST_NEW = 901;

  @TempDir private Path folder;

  /** A process that ticks; half of them share one station, and so one log. */
  static final class Ticking {
    private Ticking() {}

    public static void main(String[] args) throws Exception {
      int number = Integer.parseInt(args[1]);
      var station = new Station(number % 2 == 0 ? "shared" : "station" + number);
      var job = Job.open(Path.of(args[0]), Clock.systemUTC(), station);
      var codes = job.shotList().codes();
      for (int i = 0; i < TICKS; i++) {
        var code = codes.get((number * TICKS + i) % codes.size());
        job.mark(
            code,
            i % 3 == 0 ? SetupState.ON_SET : SetupState.PICKUP,
            MarkDetails.NONE.andReason("tick-%d-%d.".formatted(number, i)));
      }
    }
  }

  private static Process java(String main, Object... arguments) throws IOException {
    var command = new ArrayList<String>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("--enable-native-access=ALL-UNNAMED");
    command.add("-Dframewright.settings=" + System.getProperty("framewright.settings", ""));
    command.addAll(List.of("-cp", System.getProperty("java.class.path"), main));
    for (var argument : arguments) {
      command.add(argument.toString());
    }
    return new ProcessBuilder(command).inheritIO().start();
  }

  private static Map<String, Integer> contents(Path frames) throws Exception {
    var contents = new TreeMap<String, Integer>();
    try (var files = Files.walk(frames)) {
      for (var file : files.filter(Files::isRegularFile).toList()) {
        var digest = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file));
        contents.merge(HexFormat.of().formatHex(digest), 1, Integer::sum);
      }
    }
    return contents;
  }

  private static int count(String text, String part) {
    int count = 0;
    for (int at = text.indexOf(part); at >= 0; at = text.indexOf(part, at + 1)) {
      count++;
    }
    return count;
  }

  @Test
  void noTickIsLostOrDoubledWhileOthersImportRenameAndDeliver() throws Exception {
    var said =
        run("demo", "--tiny", "--into", folder.resolve("demo")).out().strip().lines().toList();
    var job = Path.of(said.getLast().replace("The job folder: ", "").strip());
    var frames = Job.open(job, Clock.systemUTC()).framesFolder();
    var before = contents(frames);
    assertThat(run("undo", job).status()).as("there is something to rename again").isZero();

    var processes = new ArrayList<Process>();
    for (int i = 0; i < PROCESSES; i++) {
      processes.add(java(Ticking.class.getName(), job, i));
    }
    processes.add(java("org.framewright.cli.Framewright", "rename", job));
    processes.add(
        java(
            "org.framewright.cli.Framewright",
            "deliver",
            job,
            "--to",
            folder.resolve("package"),
            "--rating",
            5));
    for (int i = 0; i < IMPORTS; i++) {
      var list =
          Files.writeString(
              folder.resolve("list" + i + ".csv"), "Code,Title\n%d,New\n".formatted(FIRST_NEW + i));
      assertThat(run("list", job, "--import", list).status()).isLessThanOrEqualTo(1);
    }
    for (var process : processes) {
      assertThat(process.waitFor(10, TimeUnit.MINUTES)).isTrue();
    }
    assertThat(processes.subList(0, PROCESSES)).allMatch(process -> process.exitValue() == 0);
    assertThat(processes.get(PROCESSES).exitValue()).as("rename").isLessThanOrEqualTo(1);
    assertThat(processes.get(PROCESSES + 1).exitValue()).as("deliver").isIn(0, 1, 3);

    var logs = new StringBuilder();
    try (var files = Files.newDirectoryStream(job.resolve(".framewright/log"), "*.jsonl")) {
      for (var file : files) {
        logs.append(Files.readString(file));
      }
    }
    int lost = 0;
    int doubled = 0;
    for (int number = 0; number < PROCESSES; number++) {
      for (int i = 0; i < TICKS; i++) {
        int times = count(logs.toString(), "\"tick-%d-%d.\"".formatted(number, i));
        lost += times == 0 ? 1 : 0;
        doubled += times > 1 ? 1 : 0;
      }
    }
    System.out.println(
        PROCESSES
            + " processes, "
            + PROCESSES * TICKS
            + " ticks: "
            + lost
            + " lost, "
            + doubled
            + " doubled");
    assertThat(lost).isZero();
    assertThat(doubled).isZero();
    var found = Job.open(job, Clock.systemUTC(), new Station("newcomer"));
    assertThat(found.warnings()).noneMatch(line -> line.contains("line "));
    assertThat(found.shotList().codes()).contains(String.valueOf(FIRST_NEW + IMPORTS - 1));
    assertThat(contents(frames)).as("every frame once").isEqualTo(before);
  }
}
