package org.framewright.renaming;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.framewright.base.LockFile;
import org.framewright.base.OperatingSystem;
import org.framewright.base.OwnFolder;
import org.framewright.base.Patience;
import org.framewright.base.Sha256;

/** A disk of this computer. */
final class NioDisk implements Disk {
  private static final int EDGE_BYTES = 64 * 1024;
  private static final boolean WINDOWS = OperatingSystem.current() == OperatingSystem.WINDOWS;

  private final Traits traits;
  private final List<Mover> movers;
  private final Optional<WindowsFolders> windows =
      WINDOWS ? WindowsFolders.find() : Optional.empty();
  private Mover mover;

  /**
   * The disk that holds a folder.
   *
   * @param movers ways to change a name, best first
   */
  NioDisk(Path root, List<Mover> movers) throws IOException {
    this(Traits.of(Files.getFileStore(root).type(), WINDOWS), movers);
  }

  NioDisk(Traits traits, List<Mover> movers) {
    this(traits, movers, new Patience());
  }

  NioDisk(Traits traits, List<Mover> movers, Patience patience) {
    this.traits = traits;
    this.movers = movers.stream().<Mover>map(mover -> new PatientMover(mover, patience)).toList();
  }

  @Override
  public Look look(Path path) throws IOException {
    BasicFileAttributes found;
    try {
      found = Files.readAttributes(path, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
    } catch (NoSuchFileException e) {
      return Look.NONE;
    }
    if (found.isRegularFile()) {
      var key = traits.stableKeys() ? number(found.fileKey()) : "";
      long modified = found.lastModifiedTime().to(TimeUnit.NANOSECONDS);
      return new Look(Look.Kind.FILE, new Seen(key, found.size(), modified));
    }
    var kind =
        found.isDirectory()
            ? Look.Kind.FOLDER
            : found.isSymbolicLink() ? Look.Kind.LINK : Look.Kind.OTHER;
    return new Look(kind, Seen.NOTHING);
  }

  /** The file's number without that of the device, which differs from computer to computer. */
  private static String number(Object fileKey) {
    if (fileKey == null) {
      return "";
    }
    var text = fileKey.toString();
    int at = text.indexOf("ino=");
    return at < 0 ? text : text.substring(at + 4, text.length() - 1);
  }

  @Override
  public List<Path> names(Path folder) throws IOException {
    var names = new ArrayList<Path>();
    try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder)) {
      for (var entry : entries) {
        names.add(entry.getFileName());
      }
    }
    return names;
  }

  /** Asks the system, which knows it also where the runtime gives no numbers, as on Windows. */
  @Override
  public boolean areOneFile(Path a, Path b) throws IOException {
    try {
      return Files.isSameFile(a, b);
    } catch (NoSuchFileException e) {
      return false; // Removed since it was listed.
    }
  }

  @Override
  public String volume(Path folder) throws IOException {
    return folder.getFileSystem().supportedFileAttributeViews().contains("unix")
        ? Files.getAttribute(folder, "unix:dev").toString()
        : Files.getFileStore(folder).toString();
  }

  @Override
  public String home(Path folder) throws IOException {
    if (!traits.stableKeys()) {
      return "";
    }
    var found = Files.readAttributes(folder, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
    var made = found.creationTime();
    // Where a volume does not keep when a folder was made, Java says when it was changed.
    return made.equals(found.lastModifiedTime())
        ? number(found.fileKey())
        : number(found.fileKey()) + "@" + made.to(TimeUnit.NANOSECONDS);
  }

  @Override
  public Traits traits() {
    return traits;
  }

  @Override
  public String hash(Path file) throws IOException {
    try (var channel = FileChannel.open(file, StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS)) {
      var digest = Sha256.digest();
      var edge = ByteBuffer.allocate(EDGE_BYTES);
      long size = channel.size();
      readFully(channel, edge, 0);
      digest.update(edge.flip());
      edge.clear();
      readFully(channel, edge, Math.max(0, size - EDGE_BYTES));
      digest.update(edge.flip());
      return Sha256.hex(digest);
    }
  }

  private static void readFully(FileChannel channel, ByteBuffer into, long position)
      throws IOException {
    long at = position;
    while (into.hasRemaining()) {
      int count = channel.read(into, at);
      if (count < 0) {
        return;
      }
      at += count;
    }
  }

  @Override
  public void settle(Path scratch) throws IOException {
    if (mover == null) {
      mover = MoverFallback.pick(movers, scratch);
    }
  }

  @Override
  public Guarantee guarantee() {
    return mover.guarantee();
  }

  @Override
  public MoveResult move(Path from, Path to) throws IOException {
    return mover.move(from, to);
  }

  @Override
  public HeldFolders hold(Path root, List<Path> folders) throws MoveFailure {
    var held = mover.hold(root, folders);
    return held.isPresent() ? held.get() : Disk.super.hold(root, folders);
  }

  @Override
  public void sync(Path folder) throws IOException {
    if (WINDOWS) {
      windows.ifPresent(calls -> calls.flush(folder, traits));
      return;
    }
    try (var channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    }
  }

  @Override
  public boolean removePlaceholder(Path file) throws IOException {
    if (!ReserveMover.isMarked(file)) {
      return false;
    }
    Files.delete(file);
    return true;
  }

  @Override
  public boolean dropSecondName(Path keep, Path drop) throws IOException {
    if (!Links.areOneFile(keep, drop)) {
      return false;
    }
    Files.delete(drop);
    return true;
  }

  @Override
  public void makeFolder(Path folder) throws IOException {
    try {
      Files.createDirectory(folder);
      OwnFolder.hide(folder);
      sync(folder.getParent());
    } catch (FileAlreadyExistsException e) {
      if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
        throw e;
      }
    }
  }

  @Override
  public void write(Path file, List<byte[]> parts) throws IOException {
    try (var channel =
        FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      long position = 0;
      for (var part : parts) {
        writeFully(channel, part, position);
        position += part.length;
      }
      channel.force(true);
    }
  }

  @Override
  public void writeTail(Path file, long position, byte[] bytes) throws IOException {
    try (var channel =
        FileChannel.open(file, StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS)) {
      channel.truncate(position);
      writeFully(channel, bytes, position);
      channel.force(true);
    }
  }

  private static void writeFully(FileChannel channel, byte[] bytes, long position)
      throws IOException {
    var rest = ByteBuffer.wrap(bytes);
    while (rest.hasRemaining()) {
      channel.write(rest, position + rest.position());
    }
  }

  @Override
  public byte[] read(Path file, long position, int most) throws IOException {
    try (var channel = FileChannel.open(file, StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS)) {
      long length = Math.clamp(channel.size() - position, 0, most);
      var bytes = ByteBuffer.allocate((int) length);
      readFully(channel, bytes, position);
      return bytes.position() == length
          ? bytes.array()
          : Arrays.copyOf(bytes.array(), bytes.position());
    }
  }

  @Override
  public void remove(Path file) throws IOException {
    Files.deleteIfExists(file);
  }

  @Override
  public Optional<Closeable> lock(Path file) throws IOException {
    return LockFile.hold(file).map(held -> held);
  }
}
