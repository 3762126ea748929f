package org.framewright.copies;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.Random;
import java.util.function.LongSupplier;
import org.framewright.base.DurableFiles;
import org.framewright.base.Progress;
import org.framewright.base.RealPaths;
import org.framewright.job.Job;

/**
 * How fast the disk that a job's frames arrive on writes, flushed and not only remembered.
 *
 * @param bytesPerSecond as it was measured
 */
public record WriteSpeed(double bytesPerSecond) {
  private static final int PIECE = 4 << 20;
  private static final long MOST = 256L << 20;

  /** What stays free while it is measured, so that a frame that arrives finds room. */
  private static final long SPARE = 1L << 30;

  private static final long LONGEST_NANOS = 3_000_000_000L;

  /** In the program's own folder, where a later measurement removes it if a kill left it. */
  private static final String NAME = "write-speed.part";

  /** Whether frames come faster than this disk takes them, once the camera's memory is full. */
  public boolean isSlowerThan(Burst burst) {
    return bytesPerSecond < burst.bytesPerSecond();
  }

  /**
   * Measures it by writing up to 256 MiB into the job's own folder, for three seconds at most, and
   * removing them again.
   *
   * @return nothing if it was stopped, or if there is not enough room
   */
  public static Optional<WriteSpeed> measure(Job job, Progress progress) throws IOException {
    return measure(job, progress, System::nanoTime);
  }

  static Optional<WriteSpeed> measure(Job job, Progress progress, LongSupplier nanos)
      throws IOException {
    return measure(job, progress, nanos, (speed, _) -> speed);
  }

  /** What is done with the file that was written before it is removed. */
  @FunctionalInterface
  interface Use<T> {
    T of(WriteSpeed speed, Path file) throws IOException;
  }

  static <T> Optional<T> measure(Job job, Progress progress, LongSupplier nanos, Use<T> use)
      throws IOException {
    if (Files.getFileStore(job.folder()).getUsableSpace() < MOST + SPARE) {
      return Optional.empty();
    }
    var folder = Evidence.folder(job.folder());
    if (!RealPaths.isOwnFolder(folder)) {
      DurableFiles.createFolder(folder);
    }
    var file = folder.resolve(NAME);
    Files.deleteIfExists(file);
    try {
      var speed = written(file, progress, nanos);
      return speed.isEmpty() ? Optional.empty() : Optional.of(use.of(speed.get(), file));
    } finally {
      Files.deleteIfExists(file);
    }
  }

  private static Optional<WriteSpeed> written(Path file, Progress progress, LongSupplier nanos)
      throws IOException {
    // Bytes that no disk can press together.
    var bytes = new byte[PIECE];
    new Random(PIECE).nextBytes(bytes);
    long written = 0;
    long begun = nanos.getAsLong();
    try (var out =
        FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      while (written < MOST && nanos.getAsLong() - begun < LONGEST_NANOS) {
        if (progress.cancelled()) {
          return Optional.empty();
        }
        DurableFiles.writeFully(out, ByteBuffer.wrap(bytes));
        // Each piece is flushed: what waits in memory would be flushed long after the time is up.
        out.force(false);
        written += PIECE;
        progress.step((int) (written / PIECE), (int) (MOST / PIECE));
      }
    }
    double seconds = Math.max(1, nanos.getAsLong() - begun) / 1e9;
    return Optional.of(new WriteSpeed(written / seconds));
  }
}
