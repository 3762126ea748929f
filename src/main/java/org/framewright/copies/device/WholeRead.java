package org.framewright.copies.device;

import java.io.IOException;
import java.lang.foreign.Arena;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import org.framewright.base.FileProblems;
import org.framewright.base.Progress;
import org.framewright.base.Sha256;
import org.framewright.base.SmallFiles;

/** One file, read from its beginning to its end, past the memory of the system where it may be. */
final class WholeRead {
  /** A larger one costs memory, a smaller one a look at what the disk delivered more often. */
  static final int PIECE = 4 << 20;

  private static final int MIB = 1 << 20;

  /** More than any file system has; a greater one would only cost memory. */
  private static final long LARGEST_BLOCK = 1 << 26;

  /** Below this, a second thread costs more than it saves. */
  private static final long AHEAD = PIECE;

  /** Of a module that a runtime may lack, and that the compiler warns of. */
  static final Optional<OpenOption> DIRECT = direct();

  private final Path file;
  private final Consumer<ByteBuffer> each;
  private final Progress progress;

  WholeRead(Path file, Consumer<ByteBuffer> each, Progress progress) {
    this.file = file;
    this.each = each;
    this.progress = progress;
  }

  /** A volume took a direct open and refuses direct reads. */
  private static final class Refused extends Exception {
    private static final long serialVersionUID = 1L;
  }

  /**
   * Reads, directly where the volume lets us.
   *
   * @param proof how a thread knows what disks deliver to it
   * @param canProve whether that proves anything here
   */
  Reading read(Proof.Maker proof, boolean canProve) throws IOException {
    var before = look();
    SmallFiles.requirePlain(file, before);
    try {
      long block = Files.getFileStore(file).getBlockSize();
      if (block > 0 && block <= LARGEST_BLOCK && DIRECT.isPresent()) {
        try (var channel = open(DIRECT.get())) {
          return read(channel, before, (int) block, proof, canProve);
        }
      }
    } catch (Refused | UnsupportedOperationException e) {
      // Read it as any program does, and claim nothing.
    }
    return plain();
  }

  /** Reads through the memory of the system. */
  Reading plain() throws IOException {
    var before = look();
    SmallFiles.requirePlain(file, before);
    try (var channel = open()) {
      return read(channel, before, 1, () -> Proof.NONE, false);
    } catch (Refused e) {
      throw new IllegalStateException(e);
    } catch (IOException e) {
      throw FileProblems.named(file, e);
    }
  }

  private static Optional<OpenOption> direct() {
    try {
      return Arrays.stream(Class.forName("com.sun.nio.file.ExtendedOpenOption").getEnumConstants())
          .filter(option -> option.toString().equals("DIRECT"))
          .map(OpenOption.class::cast)
          .findFirst();
    } catch (ClassNotFoundException e) {
      return Optional.empty();
    }
  }

  private FileChannel open() throws IOException {
    return FileChannel.open(file, StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS);
  }

  private FileChannel open(OpenOption how) throws IOException, Refused {
    try {
      return FileChannel.open(file, StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS, how);
    } catch (IOException e) {
      throw new Refused(); // If it is for another reason, the plain open says so.
    }
  }

  private Reading read(
      FileChannel channel,
      BasicFileAttributes before,
      int block,
      Proof.Maker proof,
      boolean canProve)
      throws IOException, Refused {
    long size = before.size();
    var digest = Sha256.digest();
    boolean proved;
    try (var arena = Arena.ofShared()) {
      var pieces = new Pieces(channel, size, block, arena, proof);
      if (size > AHEAD) {
        pieces.readAhead();
      }
      try {
        int done = 0;
        int total = (int) Math.min(Integer.MAX_VALUE, (size + MIB - 1) / MIB);
        for (long at = 0; at < size; ) {
          if (progress.cancelled()) {
            throw new CancellationException();
          }
          var piece = pieces.next();
          at += piece.remaining();
          digest.update(piece.duplicate());
          each.accept(piece.asReadOnlyBuffer());
          pieces.done(piece);
          int now = (int) Math.min(Integer.MAX_VALUE, (at + MIB - 1) / MIB);
          if (now > done) {
            done = now;
            progress.step(done, total);
          }
        }
      } catch (IOException e) {
        if (block > 1 && pieces.taken() == 0 && isRefusal(e)) {
          throw new Refused();
        }
        throw FileProblems.named(file, e);
      } finally {
        pieces.close();
      }
      proved = pieces.proved();
    }
    requireUnchanged(before);
    return new Reading(
        Sha256.hex(digest),
        size,
        canProve && proved && block > 1 ? Medium.READ : Medium.UNSURE,
        before.lastModifiedTime());
  }

  /** The words of strerror(3) for EINVAL: the device wants a larger block than the volume has. */
  private static boolean isRefusal(IOException failure) {
    return String.valueOf(failure.getMessage()).endsWith("Invalid argument");
  }

  private void requireUnchanged(BasicFileAttributes before) throws IOException {
    var after = look();
    if (after.size() != before.size()
        || !after.lastModifiedTime().equals(before.lastModifiedTime())) {
      throw new ChangedFileException(file.toString());
    }
  }

  private BasicFileAttributes look() throws IOException {
    return Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
  }
}
