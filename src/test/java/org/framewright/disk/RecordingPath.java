package org.framewright.disk;

import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.nio.file.FileSystem;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.WatchEvent;
import java.nio.file.WatchKey;
import java.nio.file.WatchService;
import java.util.Objects;

/** A path of the default file system in a coat. */
final class RecordingPath implements Path {
  private final RecordingFileSystem system;
  private final Path real;

  RecordingPath(RecordingFileSystem system, Path real) {
    this.system = system;
    this.real = real;
  }

  Path real() {
    return real;
  }

  private Path wrapped(Path path) {
    return path == null ? null : new RecordingPath(system, path);
  }

  @Override
  public FileSystem getFileSystem() {
    return system;
  }

  @Override
  public boolean isAbsolute() {
    return real.isAbsolute();
  }

  @Override
  public Path getRoot() {
    return wrapped(real.getRoot());
  }

  @Override
  public Path getFileName() {
    return wrapped(real.getFileName());
  }

  @Override
  public Path getParent() {
    return wrapped(real.getParent());
  }

  @Override
  public int getNameCount() {
    return real.getNameCount();
  }

  @Override
  public Path getName(int index) {
    return wrapped(real.getName(index));
  }

  @Override
  public Path subpath(int beginIndex, int endIndex) {
    return wrapped(real.subpath(beginIndex, endIndex));
  }

  @Override
  public boolean startsWith(Path other) {
    return other instanceof RecordingPath path
        && path.system == system
        && real.startsWith(path.real);
  }

  @Override
  public boolean endsWith(Path other) {
    return other instanceof RecordingPath path && path.system == system && real.endsWith(path.real);
  }

  @Override
  public Path normalize() {
    return wrapped(real.normalize());
  }

  @Override
  public Path resolve(Path other) {
    return wrapped(real.resolve(system.real(other)));
  }

  @Override
  public Path relativize(Path other) {
    return wrapped(real.relativize(system.real(other)));
  }

  /** The real file's address; whoever makes a path of it gets one that is not recorded. */
  @Override
  public URI toUri() {
    return real.toUri();
  }

  @Override
  public Path toAbsolutePath() {
    return wrapped(real.toAbsolutePath());
  }

  @Override
  public Path toRealPath(LinkOption... options) throws IOException {
    return wrapped(system.kept(this).toRealPath(options));
  }

  /** The real file; what is written through it is not recorded. */
  @Override
  public File toFile() {
    return real.toFile();
  }

  @Override
  public WatchKey register(
      WatchService watcher, WatchEvent.Kind<?>[] events, WatchEvent.Modifier... modifiers) {
    throw new UnsupportedOperationException("a recording is not watched");
  }

  @Override
  public int compareTo(Path other) {
    return real.compareTo(((RecordingPath) other).real);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof RecordingPath path && path.system == system && path.real.equals(real);
  }

  @Override
  public int hashCode() {
    return Objects.hash(system, real);
  }

  @Override
  public String toString() {
    return real.toString();
  }
}
