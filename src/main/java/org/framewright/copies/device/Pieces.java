package org.framewright.copies.device;

import java.io.EOFException;
import java.io.IOException;
import java.lang.foreign.Arena;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.util.ArrayDeque;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CancellationException;

/**
 * The pieces of an open file in order, read by the thread that asks for them or, so that a disk
 * need not wait for whoever uses them, by a thread of their own.
 *
 * <p>Positions, buffers and their room are multiples of the block, and nothing is read behind the
 * end: direct reads fail otherwise.
 */
final class Pieces {
  private static final int BUFFERS = 3;

  private final FileChannel channel;
  private final long size;
  private final int block;
  private final Proof.Maker proofs;
  private final ArrayDeque<ByteBuffer> own = new ArrayDeque<>();
  private final BlockingQueue<ByteBuffer> free = new ArrayBlockingQueue<>(BUFFERS);
  private final BlockingQueue<Read> read = new ArrayBlockingQueue<>(BUFFERS + 1);
  private final Arena arena;
  private Thread ahead;
  private Proof proof;
  private long at;
  private long taken;
  private volatile boolean unproved;

  /** A piece, or why there is none. */
  private sealed interface Read {
    record Filled(ByteBuffer piece) implements Read {}

    record Failed(Throwable failure) implements Read {}
  }

  Pieces(FileChannel channel, long size, int block, Arena arena, Proof.Maker proofs) {
    this.channel = channel;
    this.size = size;
    this.block = block;
    this.arena = arena;
    this.proofs = proofs;
  }

  private ByteBuffer buffer() {
    long room = Math.max(block, WholeRead.PIECE / block * (long) block);
    long needed = Math.max(1, (size + block - 1) / block) * block;
    return arena.allocate(Math.min(room, needed), Math.max(block, 8)).asByteBuffer();
  }

  /** Reads on a thread of its own from now on. */
  void readAhead() {
    for (int i = 0; i < BUFFERS; i++) {
      free.add(buffer());
    }
    ahead = Thread.ofPlatform().daemon().name("reading ahead").start(this::readAll);
  }

  private void readAll() {
    try {
      for (at = 0; at < size; ) {
        read.put(new Read.Filled(fill(free.take())));
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (IOException | RuntimeException | Error e) {
      read.offer(new Read.Failed(e));
    } finally {
      closeProof();
    }
  }

  /** The next piece; there must be one. */
  ByteBuffer next() throws IOException {
    if (ahead == null) {
      if (own.isEmpty()) {
        own.add(buffer());
      }
      var piece = fill(own.remove());
      taken++;
      return piece;
    }
    try {
      switch (read.take()) {
        case Read.Filled filled -> {
          taken++;
          return filled.piece();
        }
        case Read.Failed failed -> throw again(failed.failure());
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new CancellationException();
    }
  }

  private static IOException again(Throwable failure) {
    return switch (failure) {
      case IOException e -> e;
      case RuntimeException e -> throw e;
      case Error e -> throw e;
      default -> new IOException(failure);
    };
  }

  /** Gives a piece back, to be filled again. */
  void done(ByteBuffer piece) {
    if (ahead == null) {
      own.add(piece);
    } else {
      free.add(piece);
    }
  }

  private ByteBuffer fill(ByteBuffer piece) throws IOException {
    if (proof == null) {
      proof = proofs.make();
    }
    long wanted = Math.min(piece.capacity(), size - at);
    long room = (wanted + block - 1) / block * block;
    piece.clear().limit((int) room);
    long before = proof.delivered();
    while (piece.position() < wanted) {
      int count = channel.read(piece, at + piece.position());
      boolean stops = count <= 0 || (piece.position() < wanted && piece.position() % block != 0);
      if (stops) {
        throw new EOFException("it became shorter while it was read");
      }
    }
    // Each piece for itself: what one has too much must not make up for another from memory.
    if (proof.delivered() - before < wanted) {
      unproved = true;
    }
    piece.flip().limit((int) wanted);
    at += wanted;
    return piece;
  }

  /** How many pieces were handed out. */
  long taken() {
    return taken;
  }

  /** Whether a disk delivered all that was handed out. */
  boolean proved() {
    return !unproved;
  }

  private void closeProof() {
    if (proof != null) {
      try {
        proof.close();
      } catch (IOException e) {
        unproved = true;
      }
    }
  }

  /** Returns once nobody reads any more. */
  void close() {
    if (ahead == null) {
      closeProof();
      return;
    }
    boolean interrupted = false;
    ahead.interrupt();
    while (ahead.isAlive()) {
      try {
        ahead.join();
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
