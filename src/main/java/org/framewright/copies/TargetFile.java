package org.framewright.copies;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributeView;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Optional;
import org.framewright.base.DurableFiles;
import org.framewright.base.Progress;
import org.framewright.copies.device.Reading;
import org.framewright.copies.device.Volumes;
import org.framewright.renaming.NoReplaceMove;

/**
 * One file on its way to one target: opened, written piece by piece, then settled. By one thread at
 * a time, which need not be the same one.
 */
final class TargetFile {
  private final CopyFile file;
  private final Path place;
  private final Path part;
  private final SameFolder root;
  private final Volumes volumes;
  private final BusyTime busy;

  /** Whether its name was taken from the start, so that nothing is written. */
  private boolean taken;

  private FileChannel out;
  private boolean written;
  private boolean left;
  private Optional<IOException> failure = Optional.empty();

  /** What became of it. */
  sealed interface Outcome {
    record Copied(Reading back) implements Outcome {}

    record AlreadyThere(Reading there) implements Outcome {}

    /** Another content has its name. */
    record Blocked() implements Outcome {}

    record Failed(IOException why) implements Outcome {}
  }

  /** The disk gave back other bytes than it was given. */
  static final class WrittenWrongly extends FileSystemException {
    private static final long serialVersionUID = 1L;

    WrittenWrongly(Path file) {
      super(file.toString());
    }
  }

  /** Work on the disk that may fail. */
  private interface DiskWork {
    void run() throws IOException;
  }

  /**
   * A file that is to be copied.
   *
   * @param part the name that it has until it is whole
   */
  TargetFile(
      CopyFile file, Path place, Path part, SameFolder root, Volumes volumes, BusyTime busy) {
    this.file = file;
    this.place = place;
    this.part = part;
    this.root = root;
    this.volumes = volumes;
    this.busy = busy;
  }

  CopyFile file() {
    return file;
  }

  Path place() {
    return place;
  }

  /** Why it cannot be copied, once that shows. */
  Optional<IOException> failure() {
    return failure;
  }

  /** Whether something half-made could not be removed. */
  boolean isLeft() {
    return left;
  }

  private void attempt(DiskWork work) {
    if (failure.isPresent()) {
      return;
    }
    busy.begin();
    try {
      work.run();
    } catch (IOException e) {
      failure = Optional.of(e);
      discard();
    } finally {
      busy.end();
    }
  }

  /**
   * Opens it, unless something lies under its name already.
   *
   * @param folders makes the folders that it is to be in
   */
  void open(Folders folders) {
    attempt(
        () -> {
          root.require();
          taken = Files.exists(place, LinkOption.NOFOLLOW_LINKS);
          if (!taken) {
            folders.make(place);
            out = FileChannel.open(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
            written = true;
          }
        });
  }

  /** Makes the folders on the way to a file. */
  interface Folders {
    void make(Path file) throws IOException;
  }

  void write(ByteBuffer piece) {
    if (out != null) {
      attempt(() -> DurableFiles.writeFully(out, piece));
    }
  }

  /** Begins anew. */
  void rewind() {
    if (out != null) {
      attempt(
          () -> {
            out.truncate(0);
            out.position(0);
          });
    }
  }

  /**
   * Flushes what was written, reads it back and gives it its name; or compares what lies under that
   * name.
   */
  Outcome settle(Reading source) {
    var outcome = new Outcome[1];
    attempt(() -> outcome[0] = taken ? compare(source) : finish(source));
    return failure.<Outcome>map(Outcome.Failed::new).orElse(outcome[0]);
  }

  private Outcome finish(Reading source) throws IOException {
    Files.getFileAttributeView(part, BasicFileAttributeView.class, LinkOption.NOFOLLOW_LINKS)
        .setTimes(source.modified(), null, null);
    out.force(true);
    out.close();
    out = null;
    var back = volumes.read(part, _ -> {}, Progress.NONE);
    if (!back.sha256().equals(source.sha256()) || back.bytes() != source.bytes()) {
      throw new WrittenWrongly(place);
    }
    try {
      NoReplaceMove.move(part, place);
    } catch (FileAlreadyExistsException e) {
      discard();
      return new Outcome.Blocked();
    }
    written = false;
    root.require();
    return new Outcome.Copied(back);
  }

  private Outcome compare(Reading source) throws IOException {
    var attributes =
        Files.readAttributes(place, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
    if (!attributes.isRegularFile() || attributes.size() != source.bytes()) {
      return new Outcome.Blocked();
    }
    var there = volumes.read(place, _ -> {}, Progress.NONE);
    return there.sha256().equals(source.sha256())
        ? new Outcome.AlreadyThere(there)
        : new Outcome.Blocked();
  }

  /** Removes what is half-made. */
  void discard() {
    try {
      if (out != null) {
        out.close();
      }
    } catch (IOException e) {
      // It is removed all the same.
    }
    out = null;
    left |= written && !CopyParts.remove(part, root);
    written = false;
  }
}
