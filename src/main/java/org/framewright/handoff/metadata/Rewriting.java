package org.framewright.handoff.metadata;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystemException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import org.framewright.base.DurableFiles;
import org.framewright.base.FileProblems;

/**
 * How a new file is made of an old one: stretches of it that are kept, and new bytes between them.
 * With that it can be proved of the new file that it is nothing else.
 */
record Rewriting(List<Piece> pieces) {
  private static final int STEP = 1 << 18;

  Rewriting {
    pieces = List.copyOf(pieces);
  }

  /** A piece of the new file. */
  sealed interface Piece {
    /** Bytes of the old one, from and up to. */
    record Kept(long from, long to) implements Piece {}

    /** New bytes. */
    @SuppressWarnings("ArrayRecordComponent") // Never compared, and nobody else has it.
    record Put(byte[] bytes) implements Piece {}
  }

  /** Writes the new file, which must not be there yet, and flushes it. */
  void write(Path old, Path made) throws IOException {
    try (var in = open(old);
        var out = FileChannel.open(made, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      for (var piece : pieces) {
        switch (piece) {
          case Piece.Kept(long from, long to) -> {
            for (long at = from; at < to; at += STEP) {
              DurableFiles.writeFully(out, bytes(in, old, at, (int) Math.min(STEP, to - at)));
            }
          }
          case Piece.Put put -> DurableFiles.writeFully(out, ByteBuffer.wrap(put.bytes()));
        }
      }
      out.force(true);
    } catch (IOException e) {
      throw FileProblems.named(made, e);
    }
  }

  /** Whether a file is what this makes of the old one, each byte of both read again. */
  boolean isWhatLiesIn(Path made, Path old) throws IOException {
    try (var in = open(old);
        var out = open(made)) {
      long at = 0;
      for (var piece : pieces) {
        switch (piece) {
          case Piece.Kept(long from, long to) -> {
            for (long kept = from; kept < to; kept += STEP) {
              int length = (int) Math.min(STEP, to - kept);
              if (out.size() < at + length
                  || !bytes(in, old, kept, length).equals(bytes(out, made, at, length))) {
                return false;
              }
              at += length;
            }
          }
          case Piece.Put put -> {
            int length = put.bytes().length;
            if (out.size() < at + length
                || !ByteBuffer.wrap(put.bytes()).equals(bytes(out, made, at, length))) {
              return false;
            }
            at += length;
          }
        }
      }
      return out.size() == at;
    } catch (IOException e) {
      throw FileProblems.named(made, e);
    }
  }

  private static FileChannel open(Path file) throws IOException {
    return FileChannel.open(file, StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS);
  }

  private static ByteBuffer bytes(FileChannel file, Path path, long from, int length)
      throws IOException {
    var bytes = ByteBuffer.allocate(length);
    while (bytes.hasRemaining()) {
      if (file.read(bytes, from + bytes.position()) < 0) {
        throw new FileSystemException(path.toString(), null, "it ends early");
      }
    }
    return bytes.flip();
  }
}
