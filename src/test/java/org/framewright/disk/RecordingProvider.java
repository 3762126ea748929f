package org.framewright.disk;

import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.net.URI;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.AccessMode;
import java.nio.file.CopyOption;
import java.nio.file.DirectoryStream;
import java.nio.file.FileStore;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributeView;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.FileAttributeView;
import java.nio.file.spi.FileSystemProvider;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Passes reading calls on, and changing ones through {@link Changes}. */
final class RecordingProvider extends FileSystemProvider {
  private static final int COPY_BYTES = 1 << 16;

  private final RecordingFileSystem system;
  private final FileSystemProvider real;
  private final Changes changes;

  RecordingProvider(RecordingFileSystem system, Changes changes) {
    this.system = system;
    this.real = system.real().provider();
    this.changes = changes;
  }

  @Override
  public String getScheme() {
    return "recording";
  }

  @Override
  public FileSystem newFileSystem(URI uri, Map<String, ?> environment) {
    throw new UnsupportedOperationException();
  }

  @Override
  public FileSystem getFileSystem(URI uri) {
    return system;
  }

  @Override
  public Path getPath(URI uri) {
    return system.wrapped(real.getPath(uri));
  }

  // ---- open files

  @Override
  public SeekableByteChannel newByteChannel(
      Path path, Set<? extends OpenOption> options, FileAttribute<?>... attributes)
      throws IOException {
    return newFileChannel(path, options, attributes);
  }

  @Override
  public FileChannel newFileChannel(
      Path path, Set<? extends OpenOption> options, FileAttribute<?>... attributes)
      throws IOException {
    var file = system.kept(path);
    var wanted = new HashSet<OpenOption>(options);
    var deletes = wanted.remove(StandardOpenOption.DELETE_ON_CLOSE);
    var channel = opened(file, wanted, attributes);
    return new RecordingChannel(
        channel,
        changes,
        system.name(file),
        Files.isDirectory(file),
        wanted.contains(StandardOpenOption.APPEND),
        deletes ? () -> deleteIfExists(path) : () -> {});
  }

  private FileChannel opened(Path file, Set<OpenOption> options, FileAttribute<?>... attributes)
      throws IOException {
    var name = system.name(file);
    Changes.Action<FileChannel> open = () -> real.newFileChannel(file, options, attributes);
    var append = options.contains(StandardOpenOption.APPEND);
    if (!append && !options.contains(StandardOpenOption.WRITE)) {
      return open.run();
    }
    if (options.contains(StandardOpenOption.CREATE_NEW)) {
      return changes.make(new DiskOp.Create(name), () -> !isFree(file), open);
    }
    if (options.contains(StandardOpenOption.CREATE) && !Files.exists(file)) {
      return changes.make(new DiskOp.Create(name), () -> !isFree(file), open);
    }
    if (options.contains(StandardOpenOption.TRUNCATE_EXISTING) && !append) {
      return changes.make(
          new DiskOp.Truncate(name, 0), () -> !Files.isRegularFile(file, follow(options)), open);
    }
    return open.run();
  }

  private static LinkOption[] follow(Set<OpenOption> options) {
    return options.contains(LinkOption.NOFOLLOW_LINKS)
        ? new LinkOption[] {LinkOption.NOFOLLOW_LINKS}
        : new LinkOption[0];
  }

  // ---- names

  @Override
  public void createDirectory(Path path, FileAttribute<?>... attributes) throws IOException {
    var folder = system.kept(path);
    changes.make(
        new DiskOp.CreateFolder(system.name(folder)),
        () -> !isFree(folder),
        () -> real.createDirectory(folder, attributes));
  }

  @Override
  public void createLink(Path path, Path existing) throws IOException {
    var link = system.kept(path);
    var file = system.kept(existing);
    system.kind().requireLinks(link);
    changes.make(
        new DiskOp.Link(system.name(link), system.name(file)),
        () -> !isFree(link) || !isThere(file),
        () -> real.createLink(link, file));
  }

  @Override
  public void createSymbolicLink(Path path, Path target, FileAttribute<?>... attributes)
      throws IOException {
    var link = system.kept(path);
    var end = system.real(target);
    system.kind().requireLinks(link);
    changes.make(
        new DiskOp.SymbolicLink(system.name(link), end.toString()),
        () -> !isFree(link),
        () -> real.createSymbolicLink(link, end, attributes));
  }

  @Override
  public Path readSymbolicLink(Path link) throws IOException {
    return system.wrapped(real.readSymbolicLink(system.kept(link)));
  }

  @Override
  public void delete(Path path) throws IOException {
    var file = system.kept(path);
    changes.make(
        new DiskOp.Delete(system.name(file)),
        () -> !isThere(file) || holdsNames(file),
        () -> real.delete(file));
  }

  @Override
  public void move(Path source, Path target, CopyOption... options) throws IOException {
    var from = system.kept(source);
    var to = system.kind().renamed(from, system.real(target));
    var asked = List.of(options);
    var replacing =
        asked.contains(StandardCopyOption.REPLACE_EXISTING)
            || asked.contains(StandardCopyOption.ATOMIC_MOVE);
    changes.make(
        new DiskOp.Move(system.name(from), system.name(to), replacing),
        () ->
            !isThere(from)
                || (isThere(to) ? !replacing || Files.isSameFile(from, to) : !isFree(to)),
        () -> real.move(from, to, options));
  }

  /** Copies by calls that are recorded; the default file system would do it unseen. */
  @Override
  public void copy(Path source, Path target, CopyOption... options) throws IOException {
    var from = system.kept(source);
    var asked = new HashSet<>(Arrays.asList(options));
    var follow =
        asked.contains(LinkOption.NOFOLLOW_LINKS)
            ? new LinkOption[] {LinkOption.NOFOLLOW_LINKS}
            : new LinkOption[0];
    var attributes = Files.readAttributes(from, BasicFileAttributes.class, follow);
    if (asked.contains(StandardCopyOption.REPLACE_EXISTING)) {
      if (isThere(system.kept(target)) && isSameFile(source, target)) {
        return;
      }
      deleteIfExists(target);
    }
    if (attributes.isSymbolicLink()) {
      createSymbolicLink(target, readSymbolicLink(source));
      return;
    }
    if (attributes.isDirectory()) {
      createDirectory(target);
    } else {
      copyBytes(source, target);
    }
    if (asked.contains(StandardCopyOption.COPY_ATTRIBUTES)) {
      getFileAttributeView(target, BasicFileAttributeView.class)
          .setTimes(
              attributes.lastModifiedTime(),
              attributes.lastAccessTime(),
              attributes.creationTime());
    }
  }

  private static void copyBytes(Path source, Path target) throws IOException {
    try (var in = FileChannel.open(source, StandardOpenOption.READ);
        var out =
            FileChannel.open(target, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      var bytes = ByteBuffer.allocate(COPY_BYTES);
      while (in.read(bytes) >= 0) {
        bytes.flip();
        while (bytes.hasRemaining()) {
          out.write(bytes);
        }
        bytes.clear();
      }
    }
  }

  private static boolean isThere(Path file) {
    return Files.exists(file, LinkOption.NOFOLLOW_LINKS);
  }

  /** Whether a name can be given: it is not taken, and its folder is there. */
  private static boolean isFree(Path file) {
    var parent = file.toAbsolutePath().getParent();
    return !isThere(file) && parent != null && Files.isDirectory(parent);
  }

  private static boolean holdsNames(Path folder) throws IOException {
    if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
      return false;
    }
    try (var names = Files.newDirectoryStream(folder)) {
      return names.iterator().hasNext();
    }
  }

  // ---- looking

  @Override
  public DirectoryStream<Path> newDirectoryStream(
      Path folder, DirectoryStream.Filter<? super Path> filter) throws IOException {
    var names =
        real.newDirectoryStream(
            system.kept(folder), path -> filter.accept(folder.resolve(listed(path))));
    return new DirectoryStream<>() {
      @Override
      public Iterator<Path> iterator() {
        var paths = names.iterator();
        return new Iterator<>() {
          @Override
          public boolean hasNext() {
            return paths.hasNext();
          }

          @Override
          public Path next() {
            return folder.resolve(listed(paths.next()));
          }
        };
      }

      @Override
      public void close() throws IOException {
        names.close();
      }
    };
  }

  private Path listed(Path path) {
    return system.wrapped(path.getFileName());
  }

  @Override
  public boolean isSameFile(Path path, Path other) throws IOException {
    return path.equals(other)
        || (other.getFileSystem() == system
            && real.isSameFile(system.kept(path), system.kept(other)));
  }

  @Override
  public boolean isHidden(Path path) throws IOException {
    return real.isHidden(system.kept(path));
  }

  @Override
  public FileStore getFileStore(Path path) throws IOException {
    return system.kind().store(real.getFileStore(system.kept(path)));
  }

  @Override
  public void checkAccess(Path path, AccessMode... modes) throws IOException {
    real.checkAccess(system.kept(path), modes);
  }

  @Override
  public <A extends BasicFileAttributes> A readAttributes(
      Path path, Class<A> type, LinkOption... options) throws IOException {
    return type.cast(
        system.kind().coarse(real.readAttributes(system.kept(path), type, options), type));
  }

  @Override
  public Map<String, Object> readAttributes(Path path, String attributes, LinkOption... options)
      throws IOException {
    return system.kind().coarse(real.readAttributes(system.kept(path), attributes, options));
  }

  // ---- attributes

  @Override
  public void setAttribute(Path path, String attribute, Object value, LinkOption... options)
      throws IOException {
    var file = system.kept(path);
    changes.make(
        attributeOp(system.name(file), attribute.substring(attribute.indexOf(':') + 1)),
        () -> !Files.exists(file, options),
        () -> real.setAttribute(file, attribute, value, options));
  }

  private static DiskOp attributeOp(String path, String attribute) {
    return switch (attribute) {
      case "times", "lastModifiedTime", "lastAccessTime", "creationTime" ->
          new DiskOp.SetTimes(path);
      case "permissions", "mode" -> new DiskOp.SetPermissions(path);
      default -> new DiskOp.SetAttribute(path, attribute);
    };
  }

  @Override
  public <V extends FileAttributeView> V getFileAttributeView(
      Path path, Class<V> type, LinkOption... options) {
    var file = system.kept(path);
    var view = real.getFileAttributeView(file, type, options);
    if (view == null) {
      return null;
    }
    return type.cast(
        Proxy.newProxyInstance(
            RecordingProvider.class.getClassLoader(),
            new Class<?>[] {type},
            (_, method, arguments) -> {
              Changes.Action<Object> call =
                  () ->
                      system.kind().coarse(called(view, method, arguments), method.getReturnType());
              var op = viewOp(system.name(file), method, arguments);
              return op.isPresent()
                  ? changes.make(op.get(), () -> !Files.exists(file, options), call)
                  : call.run();
            }));
  }

  /** The change that a call of an attribute view is, or empty if it only looks. */
  private static Optional<DiskOp> viewOp(String path, Method method, Object[] arguments) {
    var name = method.getName();
    if (name.startsWith("set")) {
      var attribute = name.substring(3, 4).toLowerCase(Locale.ROOT) + name.substring(4);
      return Optional.of(attributeOp(path, attribute));
    }
    return name.equals("write") || name.equals("delete")
        ? Optional.of(new DiskOp.SetAttribute(path, "user:" + arguments[0]))
        : Optional.empty();
  }

  private static Object called(Object view, Method method, Object[] arguments) throws IOException {
    try {
      return method.invoke(view, arguments);
    } catch (InvocationTargetException e) {
      switch (e.getCause()) {
        case IOException failure -> throw failure;
        case RuntimeException failure -> throw failure;
        case Error failure -> throw failure;
        default -> throw new IllegalStateException(e);
      }
    } catch (IllegalAccessException e) {
      throw new IllegalStateException(e);
    }
  }
}
