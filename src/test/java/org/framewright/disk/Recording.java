package org.framewright.disk;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.function.Function;

/**
 * A real folder seen through a file system that records, fails and stops. What a path of {@link
 * #root} is used for is done in the real folder, unless a fault or a kill was asked for.
 *
 * <p>Changes are numbered from 0, as they stand in {@link #ops}. A call that the disk itself
 * refuses (a folder that is there already, a file that is not there) is no change and has no
 * number, so each change of an undisturbed run can be failed, or be where the program dies, by its
 * place in that run's record.
 */
public final class Recording {
  private final Changes changes = new Changes();
  private final VolumeKind kind;
  private final RecordingFileSystem system;
  private final Path folder;

  private Recording(Path folder) {
    this.folder = folder;
    this.kind = new VolumeKind(folder);
    this.system = new RecordingFileSystem(folder, kind, changes);
  }

  /** A recording over a folder of the default file system, of which nothing is changed yet. */
  public static Recording on(Path realFolder) throws IOException {
    return new Recording(realFolder.toRealPath());
  }

  /** The folder, as the program under test shall see it. */
  public Path root() {
    return system.wrapped(folder);
  }

  /** Answers each question for a lock as a volume that has none. */
  public void withoutLocks() {
    changes.withoutLocks();
  }

  /** Makes no links, hard or symbolic, as FAT. */
  public void withoutLinks() {
    kind.withoutLinks();
  }

  /** Tells times in steps of whole seconds, as FAT in two. */
  public void withTimesInSteps(Duration step) {
    kind.withTimesInSteps(step);
  }

  /**
   * Keeps names as HFS+ does: lists them decomposed, and finds them whatever their case and however
   * their accents are written. Names that are there already should be of that kind.
   */
  public void withMacNames() {
    kind.withMacNames();
  }

  /** Says that it is a volume of this kind, as a {@link java.nio.file.FileStore} says it. */
  public void ofType(String name) {
    kind.ofType(name);
  }

  /** The path of the default file system behind a path of this one. */
  public Path real(Path wrapped) {
    return system.real(wrapped);
  }

  /** The changes that were done, in their order. */
  public List<DiskOp> ops() {
    return changes.ops();
  }

  /** Forgets the record and counts from 0 again; a fault or kill that was asked for stays. */
  public void clear() {
    changes.clear();
  }

  /** Fails by this from now on, and by no earlier fault. */
  public void fail(Fault fault) {
    changes.fail(fault);
  }

  /** Fails the n-th change only, for instance with {@link Fault#noSpace}. */
  public void failAt(int n, Function<DiskOp, IOException> failure) {
    fail(Fault.onceAt(n, failure));
  }

  /** Fails the n-th change and all after it. */
  public void failFrom(int n, Function<DiskOp, IOException> failure) {
    fail(Fault.fromOn(n, failure));
  }

  /** Lets every change pass again; a killed program stays dead. */
  public void heal() {
    fail(Fault.never());
  }

  /** Kills the program just before the n-th change. */
  public void killAt(int n) {
    changes.killAt(n, false);
  }

  /** Kills the program at the n-th change; if that is a write, half of its bytes are written. */
  public void killWithin(int n) {
    changes.killAt(n, true);
  }

  public boolean isKilled() {
    return changes.isKilled();
  }

  /**
   * Follows from now on what a power cut would leave. What lies in the folder now is taken to be
   * flushed. Files should not be open for writing yet.
   */
  public CutDisk cutDisk() throws IOException {
    return changes.watchedBy(() -> new CutDisk(folder));
  }
}
