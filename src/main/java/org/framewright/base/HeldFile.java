package org.framewright.base;

import java.io.Closeable;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A file that one work of one process holds, as long as it is open. The system lets go of it when
 * the process ends, however it ends.
 */
public final class HeldFile implements Closeable {
  /**
   * POSIX drops a process's lock when any channel of the file is closed, so a file that this
   * process holds must not be opened again to see whether it is held.
   */
  private static final Set<Path> HELD = ConcurrentHashMap.newKeySet();

  private final Path name;
  private final FileChannel channel;
  private final boolean certain;

  private HeldFile(Path name, FileChannel channel, boolean certain) {
    this.name = name;
    this.channel = channel;
    this.certain = certain;
  }

  /**
   * Opens and holds a file for reading and writing; a link is not followed.
   *
   * @return nothing where somebody else holds it
   */
  public static Optional<HeldFile> hold(Path file, OpenOption... more) throws IOException {
    var name = file.toAbsolutePath().getParent().toRealPath().resolve(file.getFileName());
    if (!HELD.add(name)) {
      return Optional.empty();
    }
    HeldFile held = null;
    try {
      held = opened(name, more);
    } finally {
      if (held == null) {
        HELD.remove(name);
      }
    }
    return Optional.ofNullable(held);
  }

  private static HeldFile opened(Path name, OpenOption... more) throws IOException {
    var options = new HashSet<OpenOption>(Arrays.asList(more));
    options.add(StandardOpenOption.READ);
    options.add(StandardOpenOption.WRITE);
    options.add(LinkOption.NOFOLLOW_LINKS);
    var channel = FileChannel.open(name, options);
    boolean certain;
    try {
      if (channel.tryLock() == null) {
        channel.close();
        return null;
      }
      certain = true;
    } catch (OverlappingFileLockException e) {
      channel.close(); // Another part of this program has it.
      return null;
    } catch (IOException e) {
      certain = false;
    }
    return new HeldFile(name, channel, certain);
  }

  /** Whether nobody else can hold it; a volume without locks leaves that open. */
  public boolean isCertain() {
    return certain;
  }

  /** The open file. */
  public FileChannel channel() {
    return channel;
  }

  @Override
  public void close() throws IOException {
    if (!channel.isOpen()) {
      return; // Somebody else may hold it since.
    }
    try {
      channel.close();
    } finally {
      HELD.remove(name);
    }
  }
}
