package org.framewright.renaming;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * All that renaming asks of a disk. The first half touches people's files and can only look at
 * them, and rename them without replacing; the second half writes files of our own below {@code
 * .framewright/renames}.
 */
interface Disk {
  /** What lies under a name; no link is followed. */
  Look look(Path path) throws IOException;

  /** The names in a folder, exactly as the volume spells them. */
  List<Path> names(Path folder) throws IOException;

  /** Whether two names that were listed are those of one file (hard links). */
  boolean areOneFile(Path a, Path b) throws IOException;

  /** What distinguishes a volume from others. */
  String volume(Path folder) throws IOException;

  /**
   * What distinguishes a folder from its copies: its number and when it was made, which no copy can
   * take along. Empty where the volume has no stable numbers.
   */
  String home(Path folder) throws IOException;

  /** What kind of volume the root lies on. */
  Traits traits();

  /** SHA-256 of the first and last 64 KiB, in hexadecimal. */
  String hash(Path file) throws IOException;

  /** Finds the way to rename, by trying it in a folder of our own; once. */
  void settle(Path scratch) throws IOException;

  /** How {@link #move} works here; known once settled. */
  Guarantee guarantee();

  /** Renames without replacing. */
  MoveResult move(Path from, Path to) throws IOException;

  /**
   * Holds the folders of a batch, so that what is renamed is renamed in them.
   *
   * @param root a real path, that of a folder which all lie in or below
   * @throws MoveFailure if a folder cannot be opened, or is none any more
   */
  default HeldFolders hold(Path root, List<Path> folders) throws MoveFailure {
    return new FoldersByPath(this, folders);
  }

  /** Returns once the names in this folder are on the disk. */
  void sync(Path folder) throws IOException;

  /** Removes what a move by {@link Guarantee#RESERVED} left behind, and nothing else. */
  boolean removePlaceholder(Path file) throws IOException;

  /**
   * Removes the second of two names of one file, left behind by a move by {@link Guarantee#LINKED}.
   * Both names must have been seen in a listing; does nothing unless they are links of one file.
   */
  boolean dropSecondName(Path keep, Path drop) throws IOException;

  /** Makes a folder of our own unless it is there. */
  void makeFolder(Path folder) throws IOException;

  /** Writes a new file of our own, in parts; returns once it is on the disk. */
  void write(Path file, List<byte[]> parts) throws IOException;

  /** Replaces what follows a position in a file of our own; returns once it is on the disk. */
  void writeTail(Path file, long position, byte[] bytes) throws IOException;

  /** Bytes of a file of our own: at most so many from a position on. */
  byte[] read(Path file, long position, int most) throws IOException;

  /** Removes a file of our own. */
  void remove(Path file) throws IOException;

  /**
   * Locks a file of our own against other processes; empty if another holds it.
   *
   * @throws IOException if it is no plain file: a link, a pipe, a folder
   */
  Optional<Closeable> lock(Path file) throws IOException;
}
