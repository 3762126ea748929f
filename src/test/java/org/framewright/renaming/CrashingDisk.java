package org.framewright.renaming;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * A disk on which the program dies just before, or just after, a chosen change; or on which the
 * change fails.
 */
final class CrashingDisk implements Disk {
  /** The death; not an exception, so that nobody cleans up behind it. */
  static final class Crash extends Error {
    private static final long serialVersionUID = 1L;

    Crash() {
      super("crash", null, false, false);
    }
  }

  /** What happens at the chosen point. */
  private interface Trouble {
    void strike() throws IOException;
  }

  private final Disk disk;
  private final Trouble trouble;
  private final boolean lasting;
  private int left;

  /**
   * Dies.
   *
   * @param point twice the number of changes done before; one more to die after the change
   */
  CrashingDisk(Disk disk, int point) {
    this(
        disk,
        point,
        false,
        () -> {
          throw new Crash();
        });
  }

  private CrashingDisk(Disk disk, int point, boolean lasting, Trouble trouble) {
    this.disk = disk;
    this.left = point;
    this.lasting = lasting;
    this.trouble = trouble;
  }

  /**
   * A disk that fails.
   *
   * @param point twice the number of changes done before; one more to fail after the change
   * @param lasting whether all that follows fails, too
   * @param reason as the system puts it, {@code No space left on device}
   */
  static CrashingDisk failing(Disk disk, int point, boolean lasting, String reason) {
    return new CrashingDisk(
        disk,
        point,
        lasting,
        () -> {
          throw new FileSystemException("file", null, reason);
        });
  }

  /** Whether the point was not reached. */
  boolean survived() {
    return left >= 0;
  }

  private void step() throws IOException {
    left--;
    if (left == -1 || (lasting && left < 0)) {
      trouble.strike();
    }
  }

  private interface Change {
    void make() throws IOException;
  }

  private void around(Change change) throws IOException {
    step();
    change.make();
    step();
  }

  @Override
  public MoveResult move(Path from, Path to) throws IOException {
    step();
    var result = disk.move(from, to);
    step();
    return result;
  }

  @Override
  public HeldFolders hold(Path root, List<Path> folders) throws MoveFailure {
    var held = disk.hold(root, folders);
    return new HeldFolders() {
      @Override
      public MoveResult move(int in, Path from, int into, Path to) throws IOException {
        step();
        var result = held.move(in, from, into, to);
        step();
        return result;
      }

      @Override
      public void sync(int folder) throws IOException {
        around(() -> held.sync(folder));
      }

      @Override
      public void close() {
        held.close();
      }
    };
  }

  @Override
  public void sync(Path folder) throws IOException {
    around(() -> disk.sync(folder));
  }

  @Override
  public void write(Path file, List<byte[]> parts) throws IOException {
    around(() -> disk.write(file, parts));
  }

  @Override
  public void writeTail(Path file, long position, byte[] bytes) throws IOException {
    around(() -> disk.writeTail(file, position, bytes));
  }

  @Override
  public Look look(Path path) throws IOException {
    return disk.look(path);
  }

  @Override
  public List<Path> names(Path folder) throws IOException {
    return disk.names(folder);
  }

  @Override
  public boolean areOneFile(Path a, Path b) throws IOException {
    return disk.areOneFile(a, b);
  }

  @Override
  public String volume(Path folder) throws IOException {
    return disk.volume(folder);
  }

  @Override
  public String home(Path folder) throws IOException {
    return disk.home(folder);
  }

  @Override
  public Traits traits() {
    return disk.traits();
  }

  @Override
  public String hash(Path file) throws IOException {
    return disk.hash(file);
  }

  @Override
  public void settle(Path scratch) throws IOException {
    around(() -> disk.settle(scratch));
  }

  @Override
  public Guarantee guarantee() {
    return disk.guarantee();
  }

  @Override
  public boolean removePlaceholder(Path file) throws IOException {
    return disk.removePlaceholder(file);
  }

  @Override
  public boolean dropSecondName(Path keep, Path drop) throws IOException {
    return disk.dropSecondName(keep, drop);
  }

  @Override
  public void makeFolder(Path folder) throws IOException {
    around(() -> disk.makeFolder(folder));
  }

  @Override
  public byte[] read(Path file, long position, int most) throws IOException {
    return disk.read(file, position, most);
  }

  @Override
  public void remove(Path file) throws IOException {
    around(() -> disk.remove(file));
  }

  @Override
  public Optional<Closeable> lock(Path file) throws IOException {
    step();
    return disk.lock(file);
  }
}
