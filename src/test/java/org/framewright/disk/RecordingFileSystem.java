package org.framewright.disk;

import java.nio.file.FileStore;
import java.nio.file.FileSystem;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.nio.file.ProviderMismatchException;
import java.nio.file.WatchService;
import java.nio.file.attribute.UserPrincipalLookupService;
import java.nio.file.spi.FileSystemProvider;
import java.util.ArrayList;
import java.util.Set;

/** The file system of one recording; a thin coat around the default one. */
final class RecordingFileSystem extends FileSystem {
  private final Path folder;
  private final FileSystem real;
  private final RecordingProvider provider;
  private final VolumeKind kind;

  RecordingFileSystem(Path folder, VolumeKind kind, Changes changes) {
    this.kind = kind;
    this.folder = folder;
    this.real = folder.getFileSystem();
    this.provider = new RecordingProvider(this, changes);
  }

  Path wrapped(Path path) {
    return new RecordingPath(this, path);
  }

  Path real(Path path) {
    if (path instanceof RecordingPath recording && recording.getFileSystem() == this) {
      return recording.real();
    }
    throw new ProviderMismatchException(path + " is no path of this recording");
  }

  /** The real path under which the volume keeps what is asked for. */
  Path kept(Path path) {
    return kind.kept(real(path));
  }

  VolumeKind kind() {
    return kind;
  }

  /** How the record names a path. */
  String name(Path path) {
    var whole = path.toAbsolutePath().normalize();
    var shown = whole.startsWith(folder) ? folder.relativize(whole) : whole;
    var name = shown.toString().replace(real.getSeparator(), "/");
    return name.isEmpty() ? "." : name;
  }

  FileSystem real() {
    return real;
  }

  @Override
  public FileSystemProvider provider() {
    return provider;
  }

  /** Refused, as the default file system refuses it. */
  @Override
  public void close() {
    throw new UnsupportedOperationException();
  }

  @Override
  public boolean isOpen() {
    return true;
  }

  @Override
  public boolean isReadOnly() {
    return real.isReadOnly();
  }

  @Override
  public String getSeparator() {
    return real.getSeparator();
  }

  @Override
  public Iterable<Path> getRootDirectories() {
    var roots = new ArrayList<Path>();
    real.getRootDirectories().forEach(root -> roots.add(wrapped(root)));
    return roots;
  }

  @Override
  public Iterable<FileStore> getFileStores() {
    return real.getFileStores();
  }

  @Override
  public Set<String> supportedFileAttributeViews() {
    return real.supportedFileAttributeViews();
  }

  @Override
  public Path getPath(String first, String... more) {
    return wrapped(real.getPath(first, more));
  }

  @Override
  public PathMatcher getPathMatcher(String syntaxAndPattern) {
    var matcher = real.getPathMatcher(syntaxAndPattern);
    return path -> matcher.matches(real(path));
  }

  @Override
  public UserPrincipalLookupService getUserPrincipalLookupService() {
    return real.getUserPrincipalLookupService();
  }

  @Override
  public WatchService newWatchService() {
    throw new UnsupportedOperationException("a recording is not watched");
  }
}
