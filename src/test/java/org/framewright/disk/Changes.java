package org.framewright.disk;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The one door to the disk: each change is judged, done and recorded while no other one is, so the
 * record's order is the disk's.
 */
final class Changes {
  interface Action<T> {
    T run() throws IOException;
  }

  /** An action without a result. */
  interface Step {
    void run() throws IOException;
  }

  /** Whether the disk would refuse the call, or the call would change nothing. */
  interface Idle {
    boolean holds() throws IOException;
  }

  interface Writer {
    int write(ByteBuffer bytes) throws IOException;
  }

  /** Where the bytes of a write begin, which only the open file knows. */
  interface Offset {
    long get() throws IOException;
  }

  /** Follows the changes with the bytes that are written. */
  interface Witness {
    void saw(DiskOp op, byte[] bytes);
  }

  private static final byte[] NO_BYTES = {};
  private static final int NEVER = -1;

  private final List<DiskOp> ops = new ArrayList<>();
  private final List<Witness> witnesses = new ArrayList<>();
  private final Set<RecordingChannel> open = Collections.newSetFromMap(new IdentityHashMap<>());
  private Fault fault = Fault.never();
  private boolean locks = true;
  private int index;
  private int killAt = NEVER;
  private boolean killWithin;
  private Optional<DiskOp> death = Optional.empty();

  synchronized List<DiskOp> ops() {
    return List.copyOf(ops);
  }

  synchronized void withoutLocks() {
    locks = false;
  }

  /** As a share of Windows answers a Mac, see err_advlock in xnu, bsd/vfs/vfs_support.c. */
  synchronized void requireLocks() throws IOException {
    if (!locks) {
      throw new IOException("Operation not supported");
    }
  }

  synchronized void clear() {
    ops.clear();
    index = 0;
  }

  synchronized void fail(Fault by) {
    fault = by;
  }

  synchronized void killAt(int n, boolean within) {
    killAt = n;
    killWithin = within;
  }

  synchronized boolean isKilled() {
    return death.isPresent();
  }

  synchronized <W extends Witness> W watchedBy(Action<W> begin) throws IOException {
    var witness = begin.run();
    witnesses.add(witness);
    return witness;
  }

  synchronized <T> T make(DiskOp op, Idle idle, Action<T> action) throws IOException {
    requireLife();
    if (idle.holds()) {
      return action.run();
    }
    judge(op, () -> {});
    var result = action.run();
    index++;
    record(op, NO_BYTES);
    return result;
  }

  synchronized void make(DiskOp op, Idle idle, Step step) throws IOException {
    Action<Boolean> action =
        () -> {
          step.run();
          return true;
        };
    make(op, idle, action);
  }

  synchronized int write(RecordingChannel channel, Offset at, ByteBuffer bytes, Writer writer)
      throws IOException {
    requireLife();
    if (!bytes.hasRemaining() || !channel.isOpen()) {
      return writer.write(bytes);
    }
    var path = channel.name();
    var offset = at.get();
    var op = new DiskOp.Write(path, offset, bytes.remaining());
    judge(op, () -> writeHalf(path, offset, bytes, writer));
    var written = writePart(path, offset, bytes, writer);
    index++;
    return written;
  }

  private void writeHalf(String path, long offset, ByteBuffer bytes, Writer writer)
      throws IOException {
    var end = bytes.limit();
    bytes.limit(bytes.position() + bytes.remaining() / 2);
    try {
      if (bytes.hasRemaining()) {
        writePart(path, offset, bytes, writer);
      }
    } finally {
      bytes.limit(end);
    }
  }

  private int writePart(String path, long offset, ByteBuffer bytes, Writer writer)
      throws IOException {
    var before = bytes.duplicate();
    var count = writer.write(bytes);
    var copy = NO_BYTES;
    if (!witnesses.isEmpty()) {
      copy = new byte[count];
      before.get(copy);
    }
    record(new DiskOp.Write(path, offset, count), copy);
    return count;
  }

  synchronized void opened(RecordingChannel channel) {
    open.add(channel);
  }

  synchronized void closed(RecordingChannel channel) {
    open.remove(channel);
  }

  private void requireLife() {
    if (death.isPresent()) {
      throw new Killed(death.get());
    }
  }

  private void judge(DiskOp op, Step half) throws IOException {
    if (index == killAt) {
      if (killWithin) {
        half.run();
      }
      death = Optional.of(op);
      // The kernel would do this, and whoever opens the folder next must not wait for the dead.
      for (var channel : open) {
        channel.releaseLocks();
      }
      throw new Killed(op);
    }
    var failure = fault.at(op, index);
    if (failure.isPresent()) {
      index++;
      if (fault.writesHalf()) {
        half.run();
      }
      throw failure.get();
    }
  }

  private void record(DiskOp op, byte[] bytes) {
    ops.add(op);
    for (var witness : witnesses) {
      witness.saw(op, bytes);
    }
    switch (op) {
      case DiskOp.Move move ->
          open.forEach(
              channel -> {
                channel.fileDeleted(move.to());
                channel.fileMoved(move.from(), move.to());
              });
      case DiskOp.Delete delete -> open.forEach(channel -> channel.fileDeleted(delete.path()));
      default -> {}
    }
  }
}
