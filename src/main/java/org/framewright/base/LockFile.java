package org.framewright.base;

import java.io.Closeable;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Lets one work in a folder be done at a time: a file that the system locks, and lets go of when
 * the process ends, however it ends.
 *
 * <p>Some volumes have no locks: a share of Windows seen from a Mac answers ENOTSUP (xnu,
 * bsd/vfs/vfs_support.c, err_advlock). There a second file, {@code NAME.owner}, that only one
 * computer can create says which one is at work; beside it, a lock in this computer's own temporary
 * folder says whether that work goes on. So what a crash left on this computer is seen and cleared,
 * and what another computer left is left to people, who can look.
 */
public final class LockFile implements Closeable {
  private static final int LONGEST_OWNER = 4096;
  private static final String OWNER = ".owner";

  private final HeldFile held;
  private final Optional<Owner> owner;

  private LockFile(HeldFile held, Optional<Owner> owner) {
    this.held = held;
    this.owner = owner;
  }

  /**
   * Locks a file, which is made if it is not there; a link is not followed.
   *
   * @return nothing where another program of this computer, or another part of this one, has it
   * @throws FileProblemException where another computer has it, as far as is known
   * @throws IOException if it is no plain file, or the disk fails
   */
  public static Optional<LockFile> hold(Path file) throws IOException {
    return hold(file, LockFile::computer, Path.of(System.getProperty("java.io.tmpdir")));
  }

  /**
   * The same on another computer.
   *
   * @param computer its name; asked for only where the volume has no locks
   * @param own a folder of this computer's own, which has locks
   */
  static Optional<LockFile> hold(Path file, Supplier<String> computer, Path own)
      throws IOException {
    // To open a pipe would wait for whoever reads from it.
    if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)
        && !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new FileSystemException(file.toString(), null, "not a regular file");
    }
    var held = HeldFile.hold(file, StandardOpenOption.CREATE);
    if (held.isEmpty() || held.get().isCertain()) {
      return held.map(certain -> new LockFile(certain, Optional.empty()));
    }
    Optional<Owner> owner = Optional.empty();
    try {
      owner = Owner.take(file, computer.get(), own);
      return owner.map(mine -> new LockFile(held.get(), Optional.of(mine)));
    } finally {
      if (owner.isEmpty()) {
        held.get().close();
      }
    }
  }

  @Override
  public void close() throws IOException {
    try {
      if (owner.isPresent()) {
        owner.get().release();
      }
    } finally {
      held.close();
    }
  }

  private static String computer() {
    return HostName.get().orElse("a computer without a name");
  }

  /**
   * The file that says which computer is at work.
   *
   * @param local held as long as the work goes on
   */
  private record Owner(Path file, HeldFile local) {
    /** Empty where another program of this computer is at work. */
    static Optional<Owner> take(Path lock, String computer, Path own) throws IOException {
      var place = lock.toAbsolutePath().getParent().toRealPath().resolve(lock.getFileName());
      var mark = Sha256.of(place.toString().getBytes(StandardCharsets.UTF_8));
      var local =
          HeldFile.hold(own.resolve("framewright-" + mark + ".lock"), StandardOpenOption.CREATE);
      if (local.isEmpty()) {
        return Optional.empty();
      }
      boolean taken = false;
      try {
        var file = lock.resolveSibling(lock.getFileName() + OWNER);
        if (local.get().isCertain() && isOf(file, computer)) {
          Files.deleteIfExists(file); // Whoever wrote it would hold the lock.
        }
        write(file, computer);
        taken = true;
        return Optional.of(new Owner(file, local.get()));
      } finally {
        if (!taken) {
          local.get().close();
        }
      }
    }

    private static boolean isOf(Path file, String computer) throws IOException {
      return Files.exists(file, LinkOption.NOFOLLOW_LINKS)
          && text(file).startsWith(computer + "\n");
    }

    private static void write(Path file, String computer) throws IOException {
      var now = Instant.now().truncatedTo(ChronoUnit.SECONDS);
      try {
        DurableFiles.writeFlushed(
            file, (computer + "\n" + now + "\n").getBytes(StandardCharsets.UTF_8));
      } catch (FileAlreadyExistsException e) {
        throw new FileProblemException(inUse(file));
      }
    }

    private static Problem inUse(Path file) throws IOException {
      var lines = text(file).lines().limit(2).toList();
      return new Problem(
          switch (lines.size()) {
            case 0 -> Text.of("this folder is in use by another computer");
            case 1 -> Text.of("this folder is in use by the computer {0}", lines.getFirst());
            default ->
                Text.of(
                    "this folder is in use by the computer {0} since {1}",
                    lines.getFirst(), lines.getLast());
          },
          file.toString(),
          "Wait until it is done there. If nobody works there any more (it was switched off, or"
              + " lost the network), remove this file and do it again.");
    }

    private static String text(Path file) throws IOException {
      return new String(SmallFiles.read(file, LONGEST_OWNER), StandardCharsets.UTF_8);
    }

    void release() throws IOException {
      try {
        Files.deleteIfExists(file);
      } finally {
        local.close();
      }
    }
  }
}
