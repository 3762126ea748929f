package org.framewright.copies.device;

import java.io.IOException;
import java.lang.foreign.Arena;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.framewright.base.Progress;

/** How long a disk takes to read a file. */
public final class ReadTime {
  private ReadTime() {}

  /**
   * Reads a file once, past the memory of the system, and does nothing with what it reads.
   *
   * @param nanos a clock in nanoseconds
   * @return nothing where the volume does not let programs read past memory, or if it was stopped
   */
  public static Optional<Duration> of(Path file, Progress progress, LongSupplier nanos)
      throws IOException {
    if (WholeRead.DIRECT.isEmpty()) {
      return Optional.empty();
    }
    try (var channel =
            FileChannel.open(
                file, StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS, WholeRead.DIRECT.get());
        var arena = Arena.ofConfined()) {
      long block = Math.max(1, Files.getFileStore(file).getBlockSize());
      var piece = arena.allocate(WholeRead.PIECE, block).asByteBuffer();
      long begun = nanos.getAsLong();
      while (channel.read(piece.clear()) > 0) {
        if (progress.cancelled()) {
          return Optional.empty();
        }
      }
      return Optional.of(Duration.ofNanos(Math.max(1, nanos.getAsLong() - begun)));
    } catch (IOException | UnsupportedOperationException e) {
      // Volumes in memory and some servers refuse it.
      return Optional.empty();
    }
  }
}
