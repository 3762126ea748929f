package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.framewright.disk.Volume;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/** Faults of disks, made true: too small, read-only, slow. */
@Tag("slow")
class ReadyOnVolumesTest {
  private static final Path LIMITS = Path.of("/sys/fs/cgroup/blkio");

  @TempDir(cleanup = CleanupMode.ON_SUCCESS)
  private Path scratch;

  private static Path job(Path volume) {
    var job = Ran.startIn(volume);
    assertThat(Ran.run("list", job, "--import", "samples/shot-list.csv").status()).isZero();
    return job;
  }

  private static Map<String, String> outcomes(JsonNode answer) {
    return answer
        .get("measured")
        .valueStream()
        .collect(
            Collectors.toMap(
                one -> one.get("check").asText(),
                one -> one.get("outcome").asText() + ": " + one.get("said").asText(),
                (one, _) -> one));
  }

  @Test
  void aSmallDiskStopsTheDayAndIsNotMeasured() throws Exception {
    try (var volume = Volume.tmpfs(scratch, 8 << 10)) {
      var job = job(volume.root());
      var ran = Ran.run("ready", job, "--json");
      assertThat(ran.status()).isEqualTo(1);
      assertThat(ran.json().get("answer").asText()).isEqualTo("not-ready");
      assertThat(outcomes(ran.json()).get("space"))
          .startsWith("stops: ")
          .endsWith("less than 20 frames of 60 MB need");
      assertThat(outcomes(ran.json()).get("speed")).startsWith("cannot-tell: ");
    }
  }

  @Test
  void aDiskThatCanOnlyBeReadIsToldInWords() throws Exception {
    try (var volume = Volume.tmpfs(scratch, 8 << 10)) {
      var job = job(volume.root());
      volume.remountReadOnly();
      var ran = Ran.run("ready", job, "--quick");
      assertThat(ran.status()).isEqualTo(4);
      assertThat(ran.err()).contains("can only be read");
    }
  }

  /** The kernel holds a program to 20 MB a second on this one disk (control groups, version 1). */
  @Test
  void aSlowDiskIsMeasuredAsSlowAsItIs() throws Exception {
    Assumptions.assumeTrue(
        Files.isWritable(LIMITS.resolve("blkio.throttle.write_bps_device")),
        "programs cannot be held to a speed here");
    try (var volume = Volume.loop(scratch, "ext4", 2048, "mkfs.ext4", "-q", "-F")) {
      var job = job(volume.root());
      var group = LIMITS.resolve("framewright-test-" + ProcessHandle.current().pid());
      Files.createDirectory(group);
      try {
        Files.writeString(
            group.resolve("blkio.throttle.write_bps_device"), number(volume.root()) + " 20000000");
        var answer = held(group, "ready", job.toString(), "--json");
        var said = outcomes(answer).get("speed");
        assertThat(said).startsWith("remark: it writes ").contains("over 40 setups about");
        int megabytes = Integer.parseInt(said.replaceAll(".*writes (\\d+) MB.*", "$1"));
        assertThat(megabytes).isBetween(17, 23);
        try (var left = Files.list(job.resolve(".framewright/copies"))) {
          assertThat(left.toList()).isEmpty();
        }
      } finally {
        Files.delete(group);
      }
    }
  }

  /** Major and minor number of the disk that a folder lies on. */
  private static String number(Path folder) throws IOException {
    var process = new ProcessBuilder("mountpoint", "-d", folder.toString()).start();
    return new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
  }

  /** What a command answers as a program of a group. */
  private static JsonNode held(Path group, String... words) throws Exception {
    var path =
        Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator, -1))
            .filter(entry -> !entry.isEmpty())
            .collect(Collectors.joining(File.pathSeparator));
    var command =
        new ArrayList<>(
            List.of(
                "sh",
                "-c",
                "echo $$ > \"$0\"/cgroup.procs && exec \"$@\"",
                group.toString(),
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "--enable-native-access=ALL-UNNAMED",
                "-cp",
                path,
                Framewright.class.getName()));
    command.addAll(List.of(words));
    var process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
    var answer = new JsonMapper().readTree(process.getInputStream());
    assertThat(process.waitFor()).isEqualTo(1);
    return answer;
  }
}
