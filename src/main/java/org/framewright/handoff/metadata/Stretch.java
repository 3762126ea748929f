package org.framewright.handoff.metadata;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.framewright.base.Text;

/** A file of which small stretches are read; what lies behind its end is no use. */
final class Stretch implements Closeable {
  private static final int PIECE = 1 << 16;

  private final FileChannel channel;
  private final long size;
  private final ByteBuffer piece = ByteBuffer.allocate(PIECE).limit(0);
  private long start;

  private Stretch(FileChannel channel) throws IOException {
    this.channel = channel;
    this.size = channel.size();
  }

  static Stretch of(Path file) throws IOException {
    var channel = FileChannel.open(file, StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS);
    try {
      return new Stretch(channel);
    } catch (IOException e) {
      channel.close();
      throw e;
    }
  }

  long size() {
    return size;
  }

  byte[] bytes(long from, long length) throws IOException, NotUsable {
    if (from < 0 || length < 0 || length > Packet.LARGEST || from > size - length) {
      throw new NotUsable(Text.of("its parts do not lie where it says"));
    }
    var bytes = ByteBuffer.allocate((int) length);
    while (bytes.hasRemaining()) {
      if (channel.read(bytes, from + bytes.position()) < 0) {
        throw new NotUsable(Text.of("its parts do not lie where it says"));
      }
    }
    return bytes.array();
  }

  int u8(long at) throws IOException, NotUsable {
    if (at < 0 || at >= size) {
      throw new NotUsable(Text.of("its parts do not lie where it says"));
    }
    if (at < start || at >= start + piece.limit()) {
      start = at;
      piece.clear();
      while (piece.hasRemaining() && channel.read(piece, start + piece.position()) >= 0) {
        // Once more, until it is full or the file at its end.
      }
      piece.flip();
      if (piece.limit() == 0) {
        throw new NotUsable(Text.of("its parts do not lie where it says"));
      }
    }
    return piece.get((int) (at - start)) & 0xFF;
  }

  int u16(long at, boolean bigEndian) throws IOException, NotUsable {
    return bigEndian ? (u8(at) << 8) | u8(at + 1) : (u8(at + 1) << 8) | u8(at);
  }

  long u32(long at, boolean bigEndian) throws IOException, NotUsable {
    return bigEndian
        ? ((long) u16(at, true) << 16) | u16(at + 2, true)
        : ((long) u16(at + 2, false) << 16) | u16(at, false);
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
