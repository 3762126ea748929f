package org.framewright.copies;

import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Pattern;
import org.framewright.base.Progress;

/**
 * The speed that is told of a disk, as a ratio to what {@code dd} and {@code fio} measure on the
 * same disk, in turns; the median of some rounds. All write pieces of 4 MiB that are flushed one by
 * one, 256 MiB in all, and read them past memory. The argument is the folder; else a temporary one.
 */
final class DiskSpeedBenchmark {
  private static final int ROUNDS = 9;
  private static final int SIZE = 256 << 20;
  private static final Pattern DD = Pattern.compile("([0-9]+) bytes .*, ([0-9.]+) s,");

  private DiskSpeedBenchmark() {}

  private record Rates(List<Double> written, List<Double> read) {
    Rates() {
      this(new ArrayList<>(), new ArrayList<>());
    }

    static double median(List<Double> values) {
      return values.stream().sorted().toList().get(values.size() / 2) / 1e6;
    }

    String told(String name, Rates ours) {
      return "%s writes %.0f MB/s, ours is %.2f of it; reads %.0f MB/s, ours is %.2f of it"
          .formatted(
              name,
              median(written),
              median(ours.written) / median(written),
              median(read),
              median(ours.read) / median(read));
    }
  }

  public static void main(String[] args) throws Exception {
    var folder =
        args.length > 0 ? Path.of(args[0]) : Files.createTempDirectory("disk-speed-benchmark");
    var scene = new CopiesScene(Files.createTempDirectory(folder, "job"));
    var source = Files.createTempFile("disk-speed", ".bin");
    var bytes = new byte[SIZE];
    new Random(1).nextBytes(bytes);
    Files.write(source, bytes);
    var ours = new Rates();
    var dd = new Rates();
    var fio = new Rates();
    var file = scene.job.folder().resolve("speed.bin");
    for (int round = 0; round < ROUNDS; round++) {
      var speed = DiskSpeed.measure(scene.job, Progress.NONE).orElseThrow();
      ours.written.add(speed.written());
      speed.read().ifPresent(ours.read::add);
      var size = List.of("bs=4M", "count=64");
      dd.written.add(dd(size, "if=" + source, "of=" + file, "oflag=dsync"));
      dd.read.add(dd(size, "if=" + file, "of=/dev/null", "iflag=direct"));
      Files.delete(file);
      fio.written.add(fio(file, "write", "--fdatasync=1", "--fallocate=none"));
      fio.read.add(fio(file, "read", "--direct=1"));
      Files.delete(file);
    }
    Files.delete(source);
    System.out.printf(
        "ours writes %.0f MB/s and reads %.0f MB/s%n%s%n%s%n",
        Rates.median(ours.written),
        Rates.median(ours.read),
        dd.told("dd", ours),
        fio.told("fio", ours));
  }

  private static String run(List<String> command) throws IOException {
    var process = new ProcessBuilder(command).redirectErrorStream(true).start();
    var said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (process.onExit().join().exitValue() != 0) {
      throw new IOException(said);
    }
    return said;
  }

  private static double dd(List<String> size, String... how) throws IOException {
    var command = new ArrayList<>(List.of("env", "LC_ALL=C", "dd"));
    command.addAll(size);
    command.addAll(List.of(how));
    var said = DD.matcher(run(command));
    if (!said.find()) {
      throw new IOException("dd says something else");
    }
    return Double.parseDouble(said.group(1)) / Double.parseDouble(said.group(2));
  }

  private static double fio(Path file, String direction, String... how) throws IOException {
    var command =
        new ArrayList<>(
            List.of(
                "fio",
                "--name=speed",
                "--filename=" + file,
                "--rw=" + direction,
                "--bs=4M",
                "--size=256M",
                "--ioengine=psync",
                "--output-format=json"));
    command.addAll(List.of(how));
    var said = run(command);
    return new JsonMapper()
        .readTree(said.substring(said.indexOf('{')))
        .at("/jobs/0/" + direction + "/bw_bytes")
        .asDouble();
  }
}
