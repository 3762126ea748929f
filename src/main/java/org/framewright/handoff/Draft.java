package org.framewright.handoff;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import org.framewright.base.DurableFiles;
import org.framewright.base.HeldFile;
import org.framewright.base.OwnFolder;
import org.framewright.base.SmallFiles;
import org.framewright.renaming.NoReplaceMove;

/**
 * A package in the making: a hidden folder beside the target that holds the package and a note on
 * whose it is. The note is locked while somebody writes. A kill leaves the folder; the next
 * hand-off of the same job recognises its note and removes it.
 */
final class Draft implements Closeable {
  private static final Pattern NAME =
      Pattern.compile("\\.framewright-[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}");
  private static final String NOTE = "draft.txt";
  private static final String PACKAGE = "package";
  private static final int LONGEST_NOTE = 1 << 14;

  private final Path folder;
  private final HeldFile note;

  private Draft(Path folder, HeldFile note) {
    this.folder = folder;
    this.note = note;
  }

  /** What became of a folder that was to be removed. */
  enum Cleared {
    /** It is removed. */
    REMOVED,
    /** There was none. */
    ABSENT,
    /** Somebody is writing it. */
    IN_USE,
    /** It is not certainly this hand-off's, or nobody can know whether it is in use. */
    NOT_OURS
  }

  /** A name that nobody else has. */
  static Path beside(Path target) {
    return target.resolveSibling(".framewright-" + UUID.randomUUID());
  }

  static boolean isName(String name) {
    return NAME.matcher(name).matches();
  }

  /** The note of a hand-off's draft: for people who find it, and to recognise it. */
  static String note(String job, int number, Path draft) {
    return "The unfinished package of hand-off %d of %s, draft %s, by Framewright.%n"
            .formatted(number, job, draft.getFileName())
            .replace(System.lineSeparator(), "\n")
        + "The next hand-off of that job removes it; nothing else needs it.\n";
  }

  /** Makes the folder with its note, on the disk when this returns. */
  static Draft create(Path folder, String note) throws IOException {
    Files.createDirectory(folder);
    HeldFile held = null;
    boolean written = false;
    try {
      held =
          HeldFile.hold(folder.resolve(NOTE), StandardOpenOption.CREATE_NEW)
              .orElseThrow(() -> new FileAlreadyExistsException(folder.toString()));
      DurableFiles.writeFully(
          held.channel(), ByteBuffer.wrap(note.getBytes(StandardCharsets.UTF_8)));
      held.channel().force(true);
      DurableFiles.syncFolder(folder);
      DurableFiles.syncFolder(folder.getParent());
      written = true;
      return new Draft(folder, held);
    } catch (IOException | RuntimeException e) {
      removeQuietly(folder, e);
      throw e;
    } finally {
      if (!written && held != null) {
        held.close();
      }
    }
  }

  private static void removeQuietly(Path folder, Exception cause) {
    try {
      remove(folder);
    } catch (IOException e) {
      cause.addSuppressed(e);
    }
  }

  /** Where the package is made. */
  Path packageFolder() {
    return folder.resolve(PACKAGE);
  }

  /** Whether a draft still holds its package. */
  static boolean holdsPackage(Path folder) {
    return Files.exists(folder.resolve(PACKAGE), LinkOption.NOFOLLOW_LINKS);
  }

  /**
   * Gives the finished package its place; the folder around it is to be flushed then.
   *
   * @throws java.nio.file.FileAlreadyExistsException where something took the place; it is as it
   *     was
   */
  void place(Path target) throws IOException {
    DurableFiles.syncFolder(folder);
    NoReplaceMove.move(packageFolder(), target);
  }

  /** Removes the folder and what is still in it. */
  void discard() throws IOException {
    note.close();
    remove(folder);
  }

  @Override
  public void close() throws IOException {
    note.close();
  }

  /**
   * Removes what a kill left of a draft, if it is certainly that one and nobody writes it.
   *
   * @param note what the draft's note says
   */
  static Cleared clear(Path folder, String note) throws IOException {
    if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      return Cleared.ABSENT;
    }
    if (!isName(folder.getFileName().toString())
        || !Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
      return Cleared.NOT_OURS;
    }
    var file = folder.resolve(NOTE);
    if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      // Killed before it had a note, so there is nothing in it.
      return removedIfEmpty(folder);
    }
    Optional<HeldFile> held;
    try {
      held = HeldFile.hold(file);
    } catch (NoSuchFileException e) {
      return removedIfEmpty(folder);
    }
    if (held.isEmpty()) {
      return Cleared.IN_USE;
    }
    try (var own = held.get()) {
      if (!own.isCertain() || !says(own, note, !holdsPackage(folder))) {
        return Cleared.NOT_OURS;
      }
    }
    return remove(folder);
  }

  /**
   * What a kill left of a draft with a package in it, held as if it were written on; empty where it
   * is not certainly that one, or where somebody writes it.
   *
   * @param note what the draft's note says
   */
  static Optional<Draft> takeOver(Path folder, String note) {
    if (!isName(folder.getFileName().toString())
        || !Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)
        || !Files.isDirectory(folder.resolve(PACKAGE), LinkOption.NOFOLLOW_LINKS)) {
      return Optional.empty();
    }
    HeldFile held = null;
    boolean taken = false;
    try {
      held = HeldFile.hold(folder.resolve(NOTE)).orElse(null);
      taken = held != null && held.isCertain() && says(held, note, false);
      return taken ? Optional.of(new Draft(folder, held)) : Optional.empty();
    } catch (IOException e) {
      return Optional.empty(); // Whoever is to remove it finds the same and says so.
    } finally {
      if (held != null && !taken) {
        closeQuietly(held);
      }
    }
  }

  private static void closeQuietly(HeldFile held) {
    try {
      held.close();
    } catch (IOException e) {
      // Its lock is gone with it.
    }
  }

  /** Whether somebody is writing a draft. */
  static boolean isInUse(Path folder) {
    var file = folder.resolve(NOTE);
    if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      return false;
    }
    try {
      var held = HeldFile.hold(file);
      if (held.isPresent()) {
        held.get().close();
      }
      return held.isEmpty();
    } catch (IOException e) {
      return false;
    }
  }

  private static boolean says(HeldFile held, String note, boolean partly) throws IOException {
    var wanted = note.getBytes(StandardCharsets.UTF_8);
    var found = SmallFiles.rest(held.channel(), LONGEST_NOTE);
    // Killed while the note was written: its beginning is there, or nothing.
    return found.isPresent()
        && (partly
            ? Arrays.equals(found.get(), Arrays.copyOf(wanted, found.get().length))
            : Arrays.equals(found.get(), wanted));
  }

  private static Cleared removedIfEmpty(Path folder) throws IOException {
    try {
      Files.delete(folder);
      DurableFiles.syncFolder(folder.getParent());
      return Cleared.REMOVED;
    } catch (DirectoryNotEmptyException e) {
      return Cleared.NOT_OURS;
    }
  }

  /** Removes the package first and the note last, so that what is left can be recognised. */
  private static Cleared remove(Path folder) throws IOException {
    OwnFolder.remove(folder.resolve(PACKAGE));
    Files.deleteIfExists(folder.resolve(NOTE));
    return removedIfEmpty(folder);
  }
}
