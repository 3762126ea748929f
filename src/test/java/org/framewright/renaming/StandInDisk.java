package org.framewright.renaming;

import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.framewright.base.LockFile;
import org.framewright.base.Patience;
import org.framewright.disk.Recording;

/** A folder of this computer that answers as a volume of macOS or Windows does. */
final class StandInDisk implements Disk {
  /** FAT of macOS answers link(2) with ENOTSUP. */
  private static final Mover NO_LINKS =
      new Mover() {
        @Override
        public MoveResult move(Path from, Path to) throws IOException {
          throw new FileSystemException(from.toString(), null, "Operation not supported");
        }

        @Override
        public Guarantee guarantee() {
          return Guarantee.LINKED;
        }
      };

  private final SystemVolume volume;
  private final Path root;
  private final NioDisk disk;
  private final Recording withoutLocks;

  StandInDisk(SystemVolume volume, Path root) throws IOException {
    this(volume, root, new StandInCalls(volume));
  }

  StandInDisk(SystemVolume volume, Path root, StandInCalls calls) throws IOException {
    this.volume = volume;
    this.root = root;
    this.disk =
        new NioDisk(
            volume.traits(),
            List.of(calls.mover(), volume.links ? new LinkMover() : NO_LINKS, new ReserveMover()),
            Patience.ofTests());
    this.withoutLocks = Recording.on(root);
    withoutLocks.withoutLocks();
  }

  /** The path under which the folder of this computer has what the volume finds under this one. */
  private Path real(Path path) throws IOException {
    if (!path.startsWith(root) || path.equals(root)) {
      return path;
    }
    var at = root;
    for (var name : root.relativize(path)) {
      at = at.resolve(stored(at, name));
    }
    return at;
  }

  private Path stored(Path folder, Path name) throws IOException {
    if (disk.look(folder).isFolder()) {
      for (var there : disk.names(folder)) {
        if (volume.key().apply(there.toString()).equals(volume.key().apply(name.toString()))) {
          return there;
        }
      }
    }
    return Path.of(volume.listed(name.toString()));
  }

  @Override
  public Look look(Path path) throws IOException {
    var look = disk.look(real(path));
    var seen = look.seen();
    long time = seen.modifiedNanos() / volume.timeStepNanos * volume.timeStepNanos;
    return look.isFile() ? new Look(look.kind(), new Seen(seen.key(), seen.size(), time)) : look;
  }

  @Override
  public List<Path> names(Path folder) throws IOException {
    return disk.names(real(folder));
  }

  @Override
  public boolean areOneFile(Path a, Path b) throws IOException {
    return disk.areOneFile(real(a), real(b));
  }

  @Override
  public String volume(Path folder) throws IOException {
    return disk.volume(real(folder));
  }

  @Override
  public String home(Path folder) throws IOException {
    return disk.home(real(folder));
  }

  @Override
  public Traits traits() {
    return disk.traits();
  }

  @Override
  public String hash(Path file) throws IOException {
    return disk.hash(real(file));
  }

  @Override
  public void settle(Path scratch) throws IOException {
    disk.settle(real(scratch));
  }

  @Override
  public Guarantee guarantee() {
    return disk.guarantee();
  }

  @Override
  public MoveResult move(Path from, Path to) throws IOException {
    return disk.move(real(from), real(to));
  }

  @Override
  public HeldFolders hold(Path top, List<Path> folders) throws MoveFailure {
    try {
      var there = new Path[folders.size()];
      for (int i = 0; i < there.length; i++) {
        there[i] = real(folders.get(i));
      }
      return named(disk.hold(top, List.of(there)), List.of(there));
    } catch (MoveFailure e) {
      throw e;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private HeldFolders named(HeldFolders held, List<Path> folders) {
    return new HeldFolders() {
      @Override
      public MoveResult move(int in, Path from, int into, Path to) throws IOException {
        return held.move(in, stored(folders.get(in), from), into, stored(folders.get(into), to));
      }

      @Override
      public void sync(int folder) throws IOException {
        held.sync(folder);
      }

      @Override
      public void close() {
        held.close();
      }
    };
  }

  @Override
  public void sync(Path folder) throws IOException {
    disk.sync(real(folder));
  }

  @Override
  public boolean removePlaceholder(Path file) throws IOException {
    return disk.removePlaceholder(real(file));
  }

  @Override
  public boolean dropSecondName(Path keep, Path drop) throws IOException {
    return disk.dropSecondName(real(keep), real(drop));
  }

  @Override
  public void makeFolder(Path folder) throws IOException {
    disk.makeFolder(real(folder));
  }

  @Override
  public void write(Path file, List<byte[]> parts) throws IOException {
    disk.write(real(file), parts);
  }

  @Override
  public void writeTail(Path file, long position, byte[] bytes) throws IOException {
    disk.writeTail(real(file), position, bytes);
  }

  @Override
  public byte[] read(Path file, long position, int most) throws IOException {
    return disk.read(real(file), position, most);
  }

  @Override
  public void remove(Path file) throws IOException {
    disk.remove(real(file));
  }

  @Override
  public Optional<Closeable> lock(Path file) throws IOException {
    return volume.locks
        ? disk.lock(real(file))
        : LockFile.hold(withoutLocks.root().resolve(root.relativize(file).toString()))
            .map(held -> held);
  }
}
