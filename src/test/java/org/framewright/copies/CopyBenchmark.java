package org.framewright.copies;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.util.List;
import java.util.Random;

/**
 * A verified copy of four files of 96 MiB, as a ratio to reading and hashing plus writing and
 * flushing, and to {@code cp}, {@code sync} and {@code sha256sum} of both; the best of some rounds,
 * all in one run. The copy and the first of the two read the source from the disk, as a card that
 * was just put in is read; the tools may have it in memory.
 */
final class CopyBenchmark {
  private static final int FILES = 4;
  private static final int SIZE = 96 << 20;
  private static final int ROUNDS = 5;

  private CopyBenchmark() {}

  private interface Work {
    void run(Path to) throws Exception;
  }

  public static void main(String[] args) throws Exception {
    var scene = new CopyScene(Files.createTempDirectory("copy-benchmark"));
    var random = new Random(1);
    var bytes = new byte[SIZE];
    for (int i = 0; i < FILES; i++) {
      random.nextBytes(bytes);
      scene.file("f" + i, bytes);
    }
    double copy = Double.MAX_VALUE;
    double plain = Double.MAX_VALUE;
    double tools = Double.MAX_VALUE;
    for (int round = 0; round < ROUNDS; round++) {
      plain = Math.min(plain, seconds(scene, "plain" + round, to -> plain(scene.card, to)));
      copy = Math.min(copy, seconds(scene, "copy" + round, to -> CopyScene.done(scene.copy(to))));
      tools = Math.min(tools, seconds(scene, "tools" + round, to -> tools(scene.card, to)));
    }
    System.out.printf(
        "verified copy %.2f s; read, hash, write and flush %.2f s: ratio %.2f;"
            + " cp, sync, sha256sum of both %.2f s: ratio %.2f%n",
        copy, plain, copy / plain, tools, copy / tools);
  }

  private static double seconds(CopyScene scene, String name, Work work) throws Exception {
    var to = Files.createDirectory(scene.root.resolve(name));
    long start = System.nanoTime();
    work.run(to);
    return (System.nanoTime() - start) / 1e9;
  }

  private static void plain(Path from, Path to) throws Exception {
    var digest = MessageDigest.getInstance("SHA-256");
    int block = (int) Files.getFileStore(from).getBlockSize();
    var piece = ByteBuffer.allocateDirect((1 << 20) + block).alignedSlice(block).slice(0, 1 << 20);
    for (int i = 0; i < FILES; i++) {
      try (var in =
              FileChannel.open(
                  from.resolve("f" + i), StandardOpenOption.READ, CompareBenchmark.direct());
          var out =
              FileChannel.open(
                  to.resolve("f" + i), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
        while (in.read(piece.clear()) > 0) {
          digest.update(piece.flip().duplicate());
          while (piece.hasRemaining()) {
            out.write(piece);
          }
        }
        out.force(true);
      }
      digest.digest();
    }
  }

  private static void tools(Path from, Path to) throws IOException, InterruptedException {
    for (var command :
        List.of(
            List.of("cp", "-r", from + "/.", to.toString()),
            List.of("sync"),
            List.of("sh", "-c", "sha256sum '" + from + "'/f* '" + to + "'/f*"))) {
      var process =
          new ProcessBuilder(command).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
      if (process.waitFor() != 0) {
        throw new IOException("failed: " + command);
      }
    }
  }
}
