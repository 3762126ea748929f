package org.framewright.disk;

import java.io.IOException;
import java.lang.foreign.Arena;
import java.lang.foreign.MemorySegment;
import java.nio.ByteBuffer;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.ReadableByteChannel;
import java.nio.channels.WritableByteChannel;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** An open file or folder. */
final class RecordingChannel extends FileChannel {
  private static final int TRANSFER_BYTES = 1 << 16;
  private static final String DELETED = " (deleted)";

  private final FileChannel real;
  private final Changes changes;
  private final boolean isFolder;
  private final boolean append;
  private final Changes.Step afterClose;
  private final List<FileLock> locks = new ArrayList<>();
  private volatile String name;

  RecordingChannel(
      FileChannel real,
      Changes changes,
      String name,
      boolean isFolder,
      boolean append,
      Changes.Step afterClose) {
    this.real = real;
    this.changes = changes;
    this.name = name;
    this.isFolder = isFolder;
    this.append = append;
    this.afterClose = afterClose;
    changes.opened(this);
  }

  String name() {
    return name;
  }

  void fileMoved(String from, String to) {
    if (name.equals(from) || name.startsWith(from + "/")) {
      name = to + name.substring(from.length());
    }
  }

  void fileDeleted(String path) {
    if (name.equals(path)) {
      name = path + DELETED;
    }
  }

  // ---- reading

  @Override
  public int read(ByteBuffer into) throws IOException {
    return real.read(into);
  }

  @Override
  public long read(ByteBuffer[] into, int offset, int length) throws IOException {
    return real.read(into, offset, length);
  }

  @Override
  public int read(ByteBuffer into, long position) throws IOException {
    return real.read(into, position);
  }

  @Override
  public long position() throws IOException {
    return real.position();
  }

  @Override
  public FileChannel position(long position) throws IOException {
    real.position(position);
    return this;
  }

  @Override
  public long size() throws IOException {
    return real.size();
  }

  @Override
  public long transferTo(long position, long count, WritableByteChannel target) throws IOException {
    return real.transferTo(position, count, target);
  }

  @Override
  public MappedByteBuffer map(MapMode mode, long position, long size) throws IOException {
    requireUnshared(mode);
    return real.map(mode, position, size);
  }

  @Override
  public MemorySegment map(MapMode mode, long offset, long size, Arena arena) throws IOException {
    requireUnshared(mode);
    return real.map(mode, offset, size, arena);
  }

  private static void requireUnshared(MapMode mode) {
    if (mode.equals(MapMode.READ_WRITE)) {
      throw new UnsupportedOperationException("writes to a mapped file cannot be recorded");
    }
  }

  // ---- writing

  @Override
  public int write(ByteBuffer bytes) throws IOException {
    return changes.write(this, append ? real::size : real::position, bytes, real::write);
  }

  @Override
  public int write(ByteBuffer bytes, long position) throws IOException {
    if (position < 0) {
      return real.write(bytes, position);
    }
    return changes.write(
        this, append ? real::size : () -> position, bytes, part -> real.write(part, position));
  }

  @Override
  public long write(ByteBuffer[] sources, int offset, int length) throws IOException {
    Objects.checkFromIndexSize(offset, length, sources.length);
    var written = 0L;
    for (var source : List.of(sources).subList(offset, offset + length)) {
      written += write(source);
      if (source.hasRemaining()) {
        break;
      }
    }
    return written;
  }

  @Override
  public long transferFrom(ReadableByteChannel source, long position, long count)
      throws IOException {
    if (position > size()) {
      return 0;
    }
    var bytes = ByteBuffer.allocate((int) Math.min(count, TRANSFER_BYTES));
    var done = 0L;
    while (done < count) {
      bytes.clear().limit((int) Math.min(count - done, bytes.capacity()));
      if (source.read(bytes) <= 0) {
        break;
      }
      bytes.flip();
      while (bytes.hasRemaining()) {
        done += write(bytes, position + done);
      }
    }
    return done;
  }

  @Override
  public FileChannel truncate(long size) throws IOException {
    changes.make(
        new DiskOp.Truncate(name, size),
        () -> size < 0 || size >= real.size(),
        () -> real.truncate(size));
    return this;
  }

  @Override
  public void force(boolean metaData) throws IOException {
    changes.make(
        new DiskOp.Force(name, isFolder), () -> !real.isOpen(), () -> real.force(metaData));
  }

  // ---- locks

  @Override
  public FileLock lock(long position, long size, boolean shared) throws IOException {
    changes.requireLocks();
    // Waits outside the changes: another thread's must go on meanwhile.
    return held(real.lock(position, size, shared));
  }

  @Override
  public FileLock tryLock(long position, long size, boolean shared) throws IOException {
    changes.requireLocks();
    var lock = real.tryLock(position, size, shared);
    return lock == null ? null : held(lock);
  }

  private FileLock held(FileLock lock) throws IOException {
    var recorded = false;
    try {
      changes.make(
          new DiskOp.Lock(name, lock.isShared()),
          () -> false,
          () -> {
            locks.add(lock);
          });
      recorded = true;
      return new HeldLock(this, lock);
    } finally {
      if (!recorded) {
        lock.release();
      }
    }
  }

  /** Called by {@link Changes} alone, as all that touches the locks. */
  void releaseLocks() throws IOException {
    for (var lock : locks) {
      if (lock.isValid()) {
        lock.release();
      }
    }
    locks.clear();
  }

  @Override
  protected void implCloseChannel() throws IOException {
    real.close();
    changes.closed(this);
    afterClose.run();
  }

  /** A lock that tells this channel as its own. */
  private static final class HeldLock extends FileLock {
    private final FileLock real;

    HeldLock(FileChannel channel, FileLock real) {
      super(channel, real.position(), real.size(), real.isShared());
      this.real = real;
    }

    @Override
    public boolean isValid() {
      return real.isValid();
    }

    @Override
    public void release() throws IOException {
      real.release();
    }
  }
}
