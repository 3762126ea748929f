package org.framewright.frames;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.security.MessageDigest;
import org.framewright.base.Text;

/**
 * A stretch of a file, read where it is asked for. Nothing outside the stretch can be read, no
 * single reading is larger than {@link #MOST_AT_ONCE}, and all readings of one file together take
 * no more than {@link #MOST_IN_ALL}: so a file that claims anything costs no more than that. The
 * readers keep less than {@link #MOST_AT_ONCE} of it; what they make of one file takes less than 64
 * MiB of memory, and is garbage when the file was read.
 */
final class Bytes implements Closeable {
  /** Eight mebibytes: more than any preview or maker's note known. */
  static final int MOST_AT_ONCE = 8 << 20;

  /** Sixty-four mebibytes. */
  static final long MOST_IN_ALL = 64L << 20;

  private final File file;
  private final long start;
  private final long size;

  private Bytes(File file, long start, long size) {
    this.file = file;
    this.start = start;
    this.size = size;
  }

  /**
   * Memory for the piece of a file that was read last. Many files can be read one after the other
   * in one room, never two at a time.
   */
  static final class Room {
    private static final int SIZE = 16 << 10;

    private final byte[] piece;
    private final ByteBuffer buffer;

    Room() {
      this(new byte[SIZE]);
    }

    private Room(byte[] piece) {
      this.piece = piece;
      this.buffer = ByteBuffer.wrap(piece);
    }
  }

  static Bytes open(Path path) throws IOException {
    return open(path, new Room());
  }

  static Bytes open(Path path, Room room) throws IOException {
    var attributes =
        Files.readAttributes(path, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
    if (!attributes.isRegularFile()) {
      // To open a pipe or a device may wait for ever.
      throw new FileSystemException(path.toString(), null, "not a regular file");
    }
    var channel = FileChannel.open(path, StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS);
    return new Bytes(new File(channel, room, true), 0, channel.size());
  }

  static Bytes of(byte[] content) {
    return new Bytes(new File(content), 0, content.length);
  }

  long size() {
    return size;
  }

  /** The same stretch, without the bound on all readings together: for one pass from end to end. */
  Bytes unmetered() {
    return new Bytes(file.unmetered(), start, size);
  }

  boolean holds(long offset, long length) {
    return offset >= 0 && length >= 0 && offset <= size && length <= size - offset;
  }

  Bytes slice(long offset, long length) throws Malformed {
    if (!holds(offset, length)) {
      throw new Malformed(
          Text.of(
              "a part of {0} bytes at byte {1} lies outside its {2} bytes", length, offset, size));
    }
    return new Bytes(file, start + offset, length);
  }

  byte[] read(long offset, int length) throws IOException {
    check(offset, length);
    var into = new byte[length];
    file.read(start + offset, into);
    return into;
  }

  /** Adds a part to a digest. */
  void digest(long offset, int length, MessageDigest into) throws IOException {
    check(offset, length);
    file.digest(start + offset, length, into);
  }

  private void check(long offset, int length) throws Malformed {
    if (!holds(offset, length)) {
      throw new Malformed(
          Text.of(
              "it ends at byte {0}, where a part reaches to byte {1}",
              size, offset + Math.max(0, length)));
    }
    if (length > MOST_AT_ONCE) {
      throw new Malformed(Text.of("a part claims {0} bytes, more than is sensible", length));
    }
  }

  int u8(long offset) throws IOException {
    if (!holds(offset, 1)) {
      throw new Malformed(Text.of("it ends at byte {0}, in the middle of a part", size));
    }
    return file.at(start + offset) & 0xFF;
  }

  int u16(long offset, boolean bigEndian) throws IOException {
    int first = u8(offset);
    int second = u8(offset + 1);
    return bigEndian ? first << 8 | second : second << 8 | first;
  }

  long u32(long offset, boolean bigEndian) throws IOException {
    long first = u16(offset, bigEndian);
    long second = u16(offset + 2, bigEndian);
    return bigEndian ? first << 16 | second : second << 16 | first;
  }

  /** A 64-bit number; one that does not fit becomes the largest that does. */
  long u64(long offset, boolean bigEndian) throws IOException {
    long first = u32(offset, bigEndian);
    long second = u32(offset + 4, bigEndian);
    long value = bigEndian ? first << 32 | second : second << 32 | first;
    return value < 0 ? Long.MAX_VALUE : value;
  }

  /** Whether a part holds nothing but zeros; an empty part does. */
  boolean isZero(long offset, int length) throws IOException {
    for (byte b : read(offset, length)) {
      if (b != 0) {
        return false;
      }
    }
    return true;
  }

  String ascii(long offset, int length) throws IOException {
    return new String(read(offset, length), StandardCharsets.ISO_8859_1);
  }

  boolean startsWith(String text) throws IOException {
    return holds(0, text.length()) && ascii(0, text.length()).equals(text);
  }

  @Override
  public void close() throws IOException {
    file.close();
  }

  /** The open file below all its stretches, with the piece of it that was read last. */
  private static final class File implements Closeable {
    private final FileChannel channel;
    private final Room room;
    private long pieceStart;
    private int pieceLength;
    private final boolean metered;
    private long spent;

    File(FileChannel channel, Room room, boolean metered) {
      this.channel = channel;
      this.room = room;
      this.metered = metered;
    }

    File(byte[] content) {
      this(null, new Room(content), false);
      this.pieceLength = content.length;
    }

    File unmetered() {
      return channel == null ? this : new File(channel, new Room(), false);
    }

    byte at(long position) throws IOException {
      load(position, 1);
      return room.piece[(int) (position - pieceStart)];
    }

    void read(long position, byte[] into) throws IOException {
      if (channel != null && into.length > Room.SIZE) {
        spend(into.length);
        fill(position, ByteBuffer.wrap(into), into.length);
        return;
      }
      load(position, into.length);
      System.arraycopy(room.piece, (int) (position - pieceStart), into, 0, into.length);
    }

    void digest(long position, int length, MessageDigest into) throws IOException {
      if (channel != null && length > Room.SIZE) {
        var part = new byte[length];
        read(position, part);
        into.update(part);
        return;
      }
      load(position, length);
      into.update(room.piece, (int) (position - pieceStart), length);
    }

    private void load(long position, int length) throws IOException {
      if (position >= pieceStart && position + length <= pieceStart + pieceLength) {
        return;
      }
      pieceLength = 0;
      pieceStart = position;
      spend(Room.SIZE);
      pieceLength = fill(position, room.buffer.clear(), length);
    }

    private int fill(long position, ByteBuffer into, int least) throws IOException {
      while (into.hasRemaining()) {
        int read = channel.read(into, position + into.position());
        if (read < 0) {
          break;
        }
      }
      if (into.position() < least) {
        throw new Malformed(Text.of("it became shorter while it was read"));
      }
      return into.position();
    }

    private void spend(int bytes) throws Malformed {
      spent += bytes;
      if (metered && spent > MOST_IN_ALL) {
        throw new Malformed(Text.of("its parts lead to more reading than is sensible"));
      }
    }

    @Override
    public void close() throws IOException {
      if (channel != null) {
        channel.close();
      }
    }
  }
}
