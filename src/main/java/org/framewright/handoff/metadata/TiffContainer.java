package org.framewright.handoff.metadata;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;

/**
 * A TIFF (TIFF 6.0, section 2), which a DNG is too. A new packet comes to its end, with the first
 * directory once more, which then points at it; of all bytes before, only those that say where the
 * first directory lies are changed.
 */
record TiffContainer(
    boolean bigEndian,
    long size,
    List<Entry> entries,
    long next,
    Optional<byte[]> packet,
    Optional<byte[]> iim)
    implements Container {
  private static final int CLASSIC = 42;
  private static final int BIG = 43;
  private static final int XMP = 700;
  private static final int IIM = 33723;
  private static final int RESOURCES = 34377;
  private static final int BYTE = 1;
  private static final int MOST_ENTRIES = 4096;
  private static final int PADDING = 2048;
  private static final int HEADER = 8;
  private static final int[] SIZES = {0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4};

  /** A field, as its twelve bytes say it. */
  @SuppressWarnings("ArrayRecordComponent") // Never compared, and nobody else has it.
  record Entry(int tag, int type, long count, byte[] value) {
    long bytes() {
      return count * (type < SIZES.length ? SIZES[type] : 0);
    }
  }

  static TiffContainer of(Stretch file, boolean bigEndian) throws IOException, NotUsable {
    int magic = file.u16(2, bigEndian);
    if (magic == BIG) {
      throw new NotUsable(Text.of("it is a BigTIFF"));
    }
    if (magic != CLASSIC) {
      throw new NotUsable(Text.of("it is neither a JPEG nor a TIFF"));
    }
    long at = file.u32(4, bigEndian);
    int count = file.u16(at, bigEndian);
    if (count == 0 || count > MOST_ENTRIES) {
      throw new NotUsable(Text.of("its parts do not lie where it says"));
    }
    var entries = new ArrayList<Entry>();
    for (int i = 0; i < count; i++) {
      long entry = at + 2 + 12L * i;
      entries.add(
          new Entry(
              file.u16(entry, bigEndian),
              file.u16(entry + 2, bigEndian),
              file.u32(entry + 4, bigEndian),
              file.bytes(entry + 8, 4)));
    }
    return new TiffContainer(
        bigEndian,
        file.size(),
        List.copyOf(entries),
        file.u32(at + 2 + 12L * count, bigEndian),
        value(file, entries, XMP, bigEndian),
        iim(file, entries, bigEndian));
  }

  private static Optional<byte[]> iim(Stretch file, List<Entry> entries, boolean bigEndian)
      throws IOException, NotUsable {
    var iim = value(file, entries, IIM, bigEndian);
    return iim.isPresent()
        ? iim
        : value(file, entries, RESOURCES, bigEndian).flatMap(Iim::inResources);
  }

  private static Optional<byte[]> value(
      Stretch file, List<Entry> entries, int tag, boolean bigEndian) throws IOException, NotUsable {
    for (var entry : entries) {
      if (entry.tag() == tag) {
        long bytes = entry.bytes();
        return Optional.of(
            bytes <= 4
                ? Arrays.copyOf(entry.value(), (int) bytes)
                : file.bytes(u32(entry.value(), bigEndian), bytes));
      }
    }
    return Optional.empty();
  }

  private static long u32(byte[] value, boolean bigEndian) {
    return Integer.toUnsignedLong(order(ByteBuffer.wrap(value), bigEndian).getInt());
  }

  private static ByteBuffer order(ByteBuffer bytes, boolean bigEndian) {
    return bytes.order(bigEndian ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN);
  }

  @Override
  public Rewriting with(Packet packet, Path file) throws NotUsable {
    var said = packet.padded(PADDING);
    // A directory begins on a word.
    int gap = (int) (size % 2);
    int odd = said.length % 2;
    long at = size + gap;
    long directory = at + said.length + odd;
    var kept = entries.stream().filter(entry -> entry.tag() != XMP).toList();
    int length = 2 + 12 * (kept.size() + 1) + 4;
    if (directory + length > 0xFFFF_FFFFL) {
      throw new NotUsable(Text.of("with the job's data it would be larger than a TIFF can be"));
    }
    var all = new ArrayList<>(kept);
    all.add(
        new Entry(
            XMP,
            BYTE,
            said.length,
            order(ByteBuffer.allocate(4), bigEndian).putInt((int) at).array()));
    all.sort(Comparator.comparingInt(Entry::tag));
    var end = order(ByteBuffer.allocate(gap + said.length + odd + length), bigEndian);
    end.position(gap);
    end.put(said);
    end.position(gap + said.length + odd);
    end.putShort((short) all.size());
    for (var entry : all) {
      end.putShort((short) entry.tag());
      end.putShort((short) entry.type());
      end.putInt((int) entry.count());
      end.put(entry.value());
    }
    end.putInt((int) next);
    var header = order(ByteBuffer.allocate(4), bigEndian).putInt((int) directory).array();
    return new Rewriting(
        List.of(
            new Rewriting.Piece.Kept(0, 4),
            new Rewriting.Piece.Put(header),
            new Rewriting.Piece.Kept(HEADER, size),
            new Rewriting.Piece.Put(end.array())));
  }
}
