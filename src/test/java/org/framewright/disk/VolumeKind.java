package org.framewright.disk;

import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.nio.file.FileStore;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileAttributeView;
import java.nio.file.attribute.FileStoreAttributeView;
import java.nio.file.attribute.FileTime;
import java.text.Normalizer;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** What kind of volume a recording plays, where that is not the one that the folder lies on. */
final class VolumeKind {
  private final Path folder;
  private volatile boolean links = true;
  private volatile boolean macNames;
  private volatile Duration timeStep = Duration.ZERO;
  private volatile Optional<String> type = Optional.empty();

  /**
   * As the folder's volume is.
   *
   * @param folder a real path
   */
  VolumeKind(Path folder) {
    this.folder = folder;
  }

  void withoutLinks() {
    links = false;
  }

  void withMacNames() {
    macNames = true;
  }

  void withTimesInSteps(Duration step) {
    timeStep = step;
  }

  void ofType(String name) {
    type = Optional.of(name);
  }

  /** As FAT of macOS answers, which has neither kind of link (msdosfs_vnops.c). */
  void requireLinks(Path link) throws FileSystemException {
    if (!links) {
      throw new FileSystemException(link.toString(), null, "Operation not supported");
    }
  }

  // ---- names

  /** The real path under which a path is kept; as it would be kept, if nothing has that name. */
  Path kept(Path real) {
    var whole = real.toAbsolutePath();
    if (!macNames || !whole.startsWith(folder)) {
      return real;
    }
    var at = folder;
    for (var name : folder.relativize(whole)) {
      at = at.resolve(spelled(at, name.toString()));
    }
    return at;
  }

  private static String spelled(Path at, String name) {
    if (name.isEmpty() || Files.exists(at.resolve(name), LinkOption.NOFOLLOW_LINKS)) {
      return name;
    }
    var names = at.toFile().list();
    for (var there : names == null ? new String[0] : names) {
      if (key(there).equals(key(name))) {
        return there;
      }
    }
    return decomposed(name);
  }

  /** The target of a rename; by another spelling of its own name a file gets that spelling. */
  Path renamed(Path from, Path real) {
    var to = kept(real);
    return macNames && to.equals(from)
        ? to.resolveSibling(decomposed(real.getFileName().toString()))
        : to;
  }

  private static String decomposed(String name) {
    return Normalizer.normalize(name, Normalizer.Form.NFD);
  }

  private static String key(String name) {
    return decomposed(name)
        .codePoints()
        .map(Character::toUpperCase)
        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
        .toString();
  }

  // ---- times

  /**
   * What a call has told, with coarse times if it told attributes.
   *
   * @param type as what it told them
   */
  Object coarse(Object told, Class<?> type) {
    return timeStep.isZero() || !(told instanceof BasicFileAttributes)
        ? told
        : Proxy.newProxyInstance(
            VolumeKind.class.getClassLoader(),
            new Class<?>[] {type},
            (_, method, arguments) -> {
              try {
                return coarse(method.invoke(told, arguments));
              } catch (InvocationTargetException e) {
                throw e.getCause();
              }
            });
  }

  Map<String, Object> coarse(Map<String, Object> attributes) {
    var coarse = new HashMap<>(attributes);
    coarse.replaceAll((_, value) -> coarse(value));
    return coarse;
  }

  private Object coarse(Object value) {
    if (timeStep.isZero() || !(value instanceof FileTime time)) {
      return value;
    }
    long step = timeStep.toSeconds();
    return FileTime.from(
        Instant.ofEpochSecond(Math.floorDiv(time.toInstant().getEpochSecond(), step) * step));
  }

  // ---- the volume

  FileStore store(FileStore real) {
    return type.<FileStore>map(name -> new Named(real, name)).orElse(real);
  }

  /** A volume under the name of another kind. */
  private static final class Named extends FileStore {
    private final FileStore real;
    private final String type;

    Named(FileStore real, String type) {
      this.real = real;
      this.type = type;
    }

    @Override
    public String name() {
      return real.name();
    }

    @Override
    public String type() {
      return type;
    }

    @Override
    public boolean isReadOnly() {
      return real.isReadOnly();
    }

    @Override
    public long getTotalSpace() throws IOException {
      return real.getTotalSpace();
    }

    @Override
    public long getUsableSpace() throws IOException {
      return real.getUsableSpace();
    }

    @Override
    public long getUnallocatedSpace() throws IOException {
      return real.getUnallocatedSpace();
    }

    @Override
    public boolean supportsFileAttributeView(Class<? extends FileAttributeView> view) {
      return real.supportsFileAttributeView(view);
    }

    @Override
    public boolean supportsFileAttributeView(String name) {
      return real.supportsFileAttributeView(name);
    }

    @Override
    public <V extends FileStoreAttributeView> V getFileStoreAttributeView(Class<V> view) {
      return real.getFileStoreAttributeView(view);
    }

    @Override
    public Object getAttribute(String attribute) throws IOException {
      return real.getAttribute(attribute);
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Named named && named.real.equals(real);
    }

    @Override
    public int hashCode() {
      return real.hashCode();
    }

    @Override
    public String toString() {
      return real.toString();
    }
  }
}
