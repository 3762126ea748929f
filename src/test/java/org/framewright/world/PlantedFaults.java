package org.framewright.world;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import javax.tools.ToolProvider;

/**
 * How many days the simulator plays until it finds a fault: each fault is planted in a copy of one
 * source, which is compiled and put before the program. {@code mvn -q -Psimulate
 * -Dsimulate.main=org.framewright.world.PlantedFaults -Ddays=1000}.
 */
final class PlantedFaults {
  private static final Path SOURCES = Path.of("src/main/java/org/framewright");
  private static final Pattern FAILED = Pattern.compile("(?s).*\\nfailed after (\\d+) days.*");

  /**
   * A fault.
   *
   * @param source below the sources of the program
   * @param right what stands there; {@code wrong} takes its place, everywhere in the file
   */
  private record Fault(String name, String source, String right, String wrong) {}

  private static final List<Fault> FAULTS =
      List.of(
          new Fault("a tick is not flushed", "job/FileEventLog.java", "channel.force(true);", ""),
          new Fault(
              "the folder of a new log is not flushed",
              "job/FileEventLog.java",
              "DurableFiles.syncFolder(file.getParent());",
              ""),
          new Fault(
              "what is appended is glued to a torn line",
              "job/FileEventLog.java",
              "if (tail.open()) {",
              "if (false) {"),
          new Fault(
              "an event that is in two files counts twice",
              "job/FileEventLog.java",
              "if (seen.add(entry.stamp())) {",
              "if (seen.add(entry.stamp()) || true) {"),
          new Fault(
              "what a failed write left is not cut off",
              "job/FileEventLog.java",
              "cut(channel, end, e);",
              ""),
          new Fault(
              "a tick is dated without hearing what others said",
              "job/Job.java",
              "    refresh();\n    var ticks = new ArrayList<Event>();",
              "    var ticks = new ArrayList<Event>();"),
          new Fault(
              "a retry doubles a tick",
              "job/Job.java",
              "  public synchronized Receipt receive(Device device, Numbered numbered)",
              """
                public synchronized Receipt receive(Device device, Numbered numbered)
                    throws IOException {
                  return received(
                      device, new Numbered(last(device) + 1, numbered.at(), numbered.asked()));
                }

                private Receipt received(Device device, Numbered numbered)\
              """),
          new Fault(
              "an event that comes too early is kept",
              "job/Job.java",
              "if (numbered.number() > last + 1) {",
              "if (numbered.number() > last + 2) {"),
          new Fault(
              "what is taken back is the last tick of anybody",
              "job/Folding.java",
              "        .filter(entry -> entry.stamp().station().equals(station))\n"
                  + "        .filter(entry -> !takenBack",
              "        .filter(entry -> !takenBack"),
          new Fault(
              "what was taken back is taken back again",
              "job/Folding.java",
              "        .filter(entry -> !takenBack.contains(entry.stamp()))\n        .findFirst();",
              "        .findFirst();"),
          new Fault(
              "the fold minds the order in which logs arrive",
              "job/Folding.java",
              "stamp.compareTo(entries.getLast().stamp()) < 0",
              "false"),
          new Fault(
              "the later arrival of a frame counts",
              "job/LogState.java",
              "arrivals.putIfAbsent(",
              "arrivals.put("),
          new Fault(
              "a setup lingers on set for two hours",
              "job/LogState.java",
              "Duration.ofHours(1)",
              "Duration.ofHours(2)"),
          new Fault(
              "a dropped setup stays on set",
              "job/LogState.java",
              "marked.state() == SetupState.TO_SHOOT || marked.state() == SetupState.DROPPED",
              "marked.state() == SetupState.TO_SHOOT"),
          new Fault(
              "a new list takes out what was worked on",
              "job/ListMerge.java",
              "setup -> isWorkedOn.test(key(setup))",
              "setup -> false"),
          new Fault(
              "off by one: the span before the right one",
              "frames/SetCourse.java",
              "return low - 1;",
              "return low < 2 ? low - 1 : low - 2;"),
          new Fault(
              "the first move of a frame counts",
              "frames/Attribution.java",
              "latest.put(move.frame(), move)",
              "latest.putIfAbsent(move.frame(), move)"),
          new Fault(
              "a body’s clock is not put right",
              "frames/BodyClock.java",
              "capture.plusNanos((long) (median(together) * 1e9))",
              "capture"),
          new Fault(
              "a copy of a frame counts as another one",
              "frames/FrameScan.java",
              ".filter(frame -> seen.add(frame.id()))",
              ""),
          new Fault(
              "a half-written file is whole",
              "frames/Known.java",
              "        && reading.whole()\n",
              ""),
          new Fault(
              "numbers that exist are used again",
              "job/FrameNamer.java",
              "scan.frames().stream().map(Frame::stem).toList()",
              "List.of()"),
          new Fault(
              "the journal of a rename is not flushed",
              "renaming/NioDisk.java",
              "      channel.force(true);\n    }\n  }\n\n  @Override\n  public void writeTail",
              "    }\n  }\n\n  @Override\n  public void writeTail"),
          new Fault(
              "names are not flushed",
              "renaming/Epochs.java",
              "held.sync(i);",
              "if (i < 0) {\n          throw new IOException();\n        }"),
          new Fault(
              "a recovery takes half for all",
              "renaming/Recoverer.java",
              "if (found.all(Position.TARGET)) {",
              "if (found.all(Position.TARGET) || journal.ops().size() > 3) {"),
          new Fault(
              "a copy trusts memory",
              "copies/DiskReader.java",
              "reading.medium() == Medium.READ ||",
              "true ||"),
          new Fault(
              "two partitions are two disks",
              "copies/device/Device.java",
              "return Sameness.SAME;",
              "return Sameness.DISTINCT;"),
          new Fault(
              "one copy besides the card is enough",
              "copies/CopiesRequest.java",
              "USUALLY_NEEDED = 2",
              "USUALLY_NEEDED = 1"),
          new Fault("copies are not flushed", "copies/TargetFile.java", "out.force(true);", ""),
          new Fault("a package is not flushed", "handoff/Checksum.java", "out.force(true);", ""),
          new Fault(
              "a package’s folders are not flushed",
              "handoff/Bag.java",
              "DurableFiles.syncFolder(data(folder));",
              ""));

  private PlantedFaults() {}

  public static void main(String[] args) throws Exception {
    var days = args.length > 0 ? args[0] : "1000";
    var seed = args.length > 1 && !args[1].isBlank() ? args[1] : "1";
    int first = args.length > 2 ? Integer.parseInt(args[2]) : 0;
    var faults = FAULTS.subList(first, FAULTS.size());
    int found = 0;
    for (var fault : faults) {
      var told = days(fault, days, seed);
      found += told.startsWith("found") ? 1 : 0;
      System.out.println(fault.name + ": " + told);
    }
    System.out.println(found + " of " + faults.size() + " found");
  }

  private static String days(Fault fault, String days, String seed) throws IOException {
    var patch = Files.createTempDirectory("framewright-planted");
    try {
      if (!planted(fault, patch)) {
        return "could not be planted";
      }
      var command =
          new ArrayList<>(
              List.of(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-Xmx1g",
                  "-XX:+UseSerialGC",
                  "-XX:TieredStopAtLevel=1",
                  "-Djava.awt.headless=true",
                  "--enable-native-access=ALL-UNNAMED",
                  "-cp",
                  patch
                      + System.getProperty("path.separator")
                      + System.getProperty("java.class.path"),
                  Simulator.class.getName(),
                  days,
                  seed,
                  "1",
                  "2",
                  "untold"));
      var process = new ProcessBuilder(command).redirectErrorStream(true).start();
      var told = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      process.onExit().join();
      var failed = FAILED.matcher("\n" + told);
      return failed.matches()
          ? "found after "
              + failed.group(1)
              + " days: "
              + told.lines()
                  .filter(line -> line.startsWith("  then: "))
                  .findFirst()
                  .orElse("")
                  .strip()
          : "not found in " + days + " days";
    } finally {
      Contents.delete(patch);
    }
  }

  private static boolean planted(Fault fault, Path patch) throws IOException {
    var text = Files.readString(SOURCES.resolve(fault.source));
    if (!text.contains(fault.right) || fault.right.equals(fault.wrong)) {
      return false;
    }
    var source = patch.resolve("src").resolve(fault.source);
    Files.createDirectories(source.getParent());
    Files.writeString(source, text.replace(fault.right, fault.wrong));
    return ToolProvider.getSystemJavaCompiler()
            .run(
                null,
                System.err,
                System.err,
                "-proc:none",
                "-nowarn",
                "-cp",
                System.getProperty("java.class.path"),
                "-d",
                patch.toString(),
                source.toString())
        == 0;
  }
}
