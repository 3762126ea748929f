package org.framewright.handoff;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.framewright.base.Progress;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.handoff.metadata.MetadataOptions;
import org.framewright.handoff.metadata.Studio;
import org.framewright.job.Job;

/**
 * A hand-off of large selects, with sidecars, as a ratio to {@code cp}, {@code sync} and {@code
 * sha256sum} of the frames and of their copies, all in one run. The frames have holes, so that
 * reading them costs next to nothing; the copies are written whole by both. How many, of how many
 * megabytes and in how many rounds are the arguments, 20 of 60 in 3 without any; the disk needs
 * room for one package.
 */
final class HandOffBenchmark {
  private static final byte[] END_OF_IMAGE = {(byte) 0xFF, (byte) 0xD9}; // ITU-T T.81, table B.1

  private HandOffBenchmark() {}

  public static void main(String[] args) throws Exception {
    int frames = args.length == 0 ? 20 : Integer.parseInt(args[0]);
    long each = (args.length < 2 ? 60 : Integer.parseInt(args[1])) * 1_000_000L;
    int rounds = args.length < 3 ? 3 : Integer.parseInt(args[2]);
    var root = Files.createTempDirectory("hand-off-benchmark");
    var job = Scene.ofMany(root, frames).job();
    enlarge(job, each);
    var options = new MetadataOptions(MetadataMode.SIDECAR, false, Studio.NOTHING);
    double handOff = Double.MAX_VALUE;
    double tools = Double.MAX_VALUE;
    long bytes = 0;
    for (int round = 0; round < rounds; round++) {
      var target = root.resolve("package" + round);
      var one = Scene.handOff(job);
      long start = System.nanoTime();
      var done = one.deliver(one.rated(5), target, options, Progress.NONE);
      handOff = Math.min(handOff, (System.nanoTime() - start) / 1e9);
      if (!(done instanceof Delivery.Delivered delivered) || delivered.selects() != frames) {
        throw new IllegalStateException(done.toString());
      }
      bytes = delivered.bytes();
      remove(target);
      var copied = root.resolve("copied" + round);
      start = System.nanoTime();
      tools(job.framesFolder(), copied);
      tools = Math.min(tools, (System.nanoTime() - start) / 1e9);
      remove(copied);
    }
    System.out.printf(
        "%d selects, %.1f GB: hand-off %.1f s (%.2f GB/s), cp, sync and sha256sum of both %.1f s;"
            + " ratio %.2f%n",
        frames, bytes / 1e9, handOff, bytes / 1e9 / handOff, tools, handOff / tools);
    remove(root);
  }

  private static void enlarge(Job job, long bytes) throws IOException {
    try (var files = Files.walk(job.framesFolder())) {
      for (var file : files.filter(file -> file.toString().endsWith(".JPG")).toList()) {
        try (var open = new RandomAccessFile(file.toFile(), "rw")) {
          open.setLength(bytes);
          open.seek(bytes - END_OF_IMAGE.length);
          open.write(END_OF_IMAGE); // without it the frame counts as one that is still written
        }
        Files.setLastModifiedTime(file, FileTime.from(Instant.now().minus(Duration.ofHours(1))));
      }
    }
  }

  private static void tools(Path from, Path to) throws IOException, InterruptedException {
    run(List.of("cp", "-r", "--sparse=never", from.toString(), to.toString()));
    run(List.of("sync"));
    run(List.of("sh", "-c", "find '" + from + "' '" + to + "' -type f -exec sha256sum {} +"));
  }

  private static void remove(Path folder) throws IOException, InterruptedException {
    run(List.of("rm", "-r", folder.toString()));
  }

  private static void run(List<String> command) throws IOException, InterruptedException {
    var process =
        new ProcessBuilder(command).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
    if (process.waitFor() != 0) {
      throw new IOException("failed: " + command);
    }
  }
}
