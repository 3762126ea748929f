package org.framewright.sample;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Lays out a little-endian TIFF: directories of tags, their longer values, and blocks of bytes that
 * tags point to. Source: TIFF 6.0, section 2; Exif uses the same layout.
 */
final class TiffWriter {
  private static final int HEADER = 8;

  private TiffWriter() {}

  /** What a tag holds; bytes are ready to be read from their first to their limit. */
  private sealed interface Value {
    /** Stands in the directory, or behind it where it is longer than four bytes. */
    record Plain(int type, int count, ByteBuffer bytes) implements Value {}

    /** The offset of a block of bytes that is stored elsewhere in the file. */
    record Block(ByteBuffer bytes) implements Value {}

    /** The offset of another directory. */
    record Child(Directory directory) implements Value {}
  }

  /** One directory; its tags are kept in rising order, as TIFF asks. */
  static final class Directory {
    private final SortedMap<Integer, Value> tags = new TreeMap<>();

    private Directory put(int tag, Value value) {
      tags.put(tag, value);
      return this;
    }

    private Directory plain(int tag, int type, int count, ByteBuffer bytes) {
      return put(tag, new Value.Plain(type, count, bytes.flip()));
    }

    Directory ascii(int tag, String text) {
      var bytes = (text + "\0").getBytes(StandardCharsets.US_ASCII);
      return plain(tag, 2, bytes.length, little(bytes.length).put(bytes));
    }

    Directory shorts(int tag, int... numbers) {
      var bytes = little(2 * numbers.length);
      for (int number : numbers) {
        bytes.putShort((short) number);
      }
      return plain(tag, 3, numbers.length, bytes);
    }

    Directory longs(int tag, long... numbers) {
      var bytes = little(4 * numbers.length);
      for (long number : numbers) {
        bytes.putInt((int) number);
      }
      return plain(tag, 4, numbers.length, bytes);
    }

    Directory rational(int tag, int numerator, int denominator) {
      return plain(tag, 5, 1, little(8).putInt(numerator).putInt(denominator));
    }

    Directory bytes(int tag, int... octets) {
      var bytes = little(octets.length);
      for (int octet : octets) {
        bytes.put((byte) octet);
      }
      return plain(tag, 1, octets.length, bytes);
    }

    Directory undefined(int tag, byte[] bytes) {
      return plain(tag, 7, bytes.length, little(bytes.length).put(bytes));
    }

    Directory block(int tag, byte[] bytes) {
      return put(tag, new Value.Block(ByteBuffer.wrap(bytes)));
    }

    Directory child(int tag, Directory directory) {
      return put(tag, new Value.Child(directory));
    }

    private int length() {
      return 2 + 12 * tags.size() + 4;
    }
  }

  /** The file's bytes; the directories form a chain, the first one is that of the main image. */
  static byte[] write(Directory... chain) {
    var all = new ArrayList<Directory>();
    for (var directory : chain) {
      collect(directory, all);
    }
    // First every directory in turn, each followed by its longer values; then the blocks.
    int end = HEADER;
    var places = new ArrayList<Integer>();
    for (var directory : all) {
      places.add(end);
      end += directory.length();
      for (var value : directory.tags.values()) {
        end += value instanceof Value.Plain plain ? behind(plain) : 0;
      }
    }
    int block = end;
    for (var directory : all) {
      for (var value : directory.tags.values()) {
        end += value instanceof Value.Block stored ? even(stored.bytes().limit()) : 0;
      }
    }

    var file = new byte[end];
    var out = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN);
    out.put((byte) 'I').put((byte) 'I').putShort((short) 42).putInt(HEADER);
    for (int i = 0; i < all.size(); i++) {
      var directory = all.get(i);
      out.position(places.get(i));
      int behind = places.get(i) + directory.length();
      out.putShort((short) directory.tags.size());
      for (var tag : directory.tags.entrySet()) {
        out.putShort(tag.getKey().shortValue());
        switch (tag.getValue()) {
          case Value.Plain plain -> {
            out.putShort((short) plain.type()).putInt(plain.count());
            int inside = out.position();
            if (behind(plain) == 0) {
              out.put(inside, plain.bytes(), 0, plain.bytes().limit());
              out.position(inside + 4);
            } else {
              out.putInt(behind);
              out.put(behind, plain.bytes(), 0, plain.bytes().limit());
              behind += behind(plain);
            }
          }
          case Value.Block stored -> {
            out.putShort((short) 4).putInt(1).putInt(block);
            out.put(block, stored.bytes(), 0, stored.bytes().limit());
            block += even(stored.bytes().limit());
          }
          case Value.Child child ->
              out.putShort((short) 4).putInt(1).putInt(places.get(all.indexOf(child.directory())));
        }
      }
      int link = Arrays.asList(chain).indexOf(directory);
      boolean last = link < 0 || link + 1 == chain.length;
      out.putInt(last ? 0 : places.get(all.indexOf(chain[link + 1])));
    }
    return file;
  }

  private static void collect(Directory directory, List<Directory> all) {
    all.add(directory);
    for (var value : directory.tags.values()) {
      if (value instanceof Value.Child child) {
        collect(child.directory(), all);
      }
    }
  }

  private static int behind(Value.Plain plain) {
    return plain.bytes().limit() > 4 ? even(plain.bytes().limit()) : 0;
  }

  private static ByteBuffer little(int length) {
    return ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
  }

  /** TIFF 6.0 asks values to begin on a word boundary. */
  private static int even(int length) {
    return length + (length & 1);
  }
}
