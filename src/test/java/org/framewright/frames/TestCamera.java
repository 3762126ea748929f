package org.framewright.frames;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoField;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import javax.imageio.ImageIO;

/** An invented body that writes files with real Exif, built here byte by byte. */
final class TestCamera {
  private static final DateTimeFormatter EXIF = DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss");

  private static final Map<String, byte[]> PICTURES = new ConcurrentHashMap<>();

  private final String model;
  private final String serial;
  private final Optional<String> offset;

  TestCamera(String model, String serial) {
    this(model, serial, Optional.empty());
  }

  TestCamera(String model, String serial, Optional<String> offset) {
    this.model = model;
    this.serial = serial;
    this.offset = offset;
  }

  /** A JPEG whose thumbnail is {@code thumbnail}, 160 by 120. */
  byte[] jpeg(LocalDateTime time, int orientation) {
    return jpeg(time, orientation, picture(320, 240, Color.GRAY));
  }

  /** The same of another picture, a JPEG. */
  byte[] jpeg(LocalDateTime time, int orientation, byte[] plain) {
    byte[] tiff = exif(time, orientation, picture(160, 120, Color.RED));
    var out = new ByteArrayOutputStream();
    out.write(0xFF);
    out.write(0xD8);
    out.write(0xFF);
    out.write(0xE1);
    out.write((tiff.length + 8) >> 8);
    out.write((tiff.length + 8) & 0xFF);
    out.writeBytes("Exif\0\0".getBytes(StandardCharsets.US_ASCII));
    out.writeBytes(tiff);
    out.write(plain, 2, plain.length - 2);
    return out.toByteArray();
  }

  byte[] jpeg(LocalDateTime time) {
    return jpeg(time, 1);
  }

  /** The same with an XMP packet in it whose description has these attributes. */
  byte[] judgedJpeg(LocalDateTime time, String attributes) {
    byte[] jpeg = jpeg(time);
    var packet =
        new String(sidecar("1"), StandardCharsets.UTF_8).replace("xmp:Rating=\"1\"", attributes);
    byte[] segment = ("http://ns.adobe.com/xap/1.0/\0" + packet).getBytes(StandardCharsets.UTF_8);
    var out = new ByteArrayOutputStream();
    out.write(jpeg, 0, 2);
    out.write(0xFF);
    out.write(0xE1);
    out.write((segment.length + 2) >> 8);
    out.write((segment.length + 2) & 0xFF);
    out.writeBytes(segment);
    out.write(jpeg, 2, jpeg.length - 2);
    return out.toByteArray();
  }

  /** A raw in the manner of TIFF-based ones: a JPEG preview, Exif, and a strip of sensor data. */
  byte[] raw(LocalDateTime time, int sensorBytes) {
    byte[] sensor = new byte[sensorBytes];
    new java.util.Random(time.hashCode()).nextBytes(sensor);
    var ifd = new Tiff();
    describe(ifd, 1);
    ifd.shorts(0x0103, 1);
    ifd.data(0x0111, 0x0117, sensor);
    ifd.data(0x0201, 0x0202, picture(160, 120, Color.RED));
    ifd.child(0x8769, exifIfd(time));
    return ifd.file();
  }

  /** The same with an XMP packet in it that has this rating. */
  byte[] ratedRaw(LocalDateTime time, String rating) {
    var ifd = new Tiff();
    describe(ifd, 1);
    ifd.shorts(0x0103, 1);
    ifd.data(0x0111, 0x0117, new byte[] {1, 2, 3, 4});
    ifd.data(0x0201, 0x0202, picture(160, 120, Color.RED));
    ifd.bytes(0x02BC, sidecar(rating));
    ifd.child(0x8769, exifIfd(time));
    return ifd.file();
  }

  /** The TIFF block of an Exif segment. */
  byte[] exif(LocalDateTime time, int orientation, byte[] thumbnail) {
    var ifd = new Tiff();
    describe(ifd, orientation);
    ifd.child(0x8769, exifIfd(time));
    var second = new Tiff();
    second.shorts(0x0103, 6);
    second.data(0x0201, 0x0202, thumbnail);
    ifd.next(second);
    return ifd.file();
  }

  /** A TIFF block of the description only, as box CMT1 of a CR3 holds. */
  byte[] description(int orientation) {
    var ifd = new Tiff();
    describe(ifd, orientation);
    return ifd.file();
  }

  /** A TIFF block of the capture only, as box CMT2 of a CR3 holds. */
  byte[] capture(LocalDateTime time) {
    return exifIfd(time).file();
  }

  private void describe(Tiff ifd, int orientation) {
    ifd.ascii(0x010F, "Invented Works");
    ifd.ascii(0x0110, model);
    ifd.shorts(0x0112, orientation);
  }

  private Tiff exifIfd(LocalDateTime time) {
    var exif = new Tiff();
    exif.ascii(0x9003, EXIF.format(time));
    offset.ifPresent(text -> exif.ascii(0x9011, text));
    exif.ascii(0x9291, "%03d".formatted(time.get(ChronoField.MILLI_OF_SECOND)));
    exif.ascii(0xA431, serial);
    return exif;
  }

  /** A JPEG of one colour whose top left corner is white; drawn once. */
  static byte[] picture(int width, int height, Color colour) {
    return PICTURES.computeIfAbsent(
        width + "x" + height + colour, key -> draw(width, height, colour));
  }

  private static byte[] draw(int width, int height, Color colour) {
    var image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    var g = image.createGraphics();
    g.setColor(colour);
    g.fillRect(0, 0, width, height);
    g.setColor(Color.WHITE);
    g.fillRect(0, 0, width / 4, height / 4);
    g.dispose();
    var out = new ByteArrayOutputStream();
    try {
      ImageIO.write(image, "jpeg", out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  static byte[] sidecar(String rating) {
    return """
    <x:xmpmeta xmlns:x="adobe:ns:meta/">
     <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
      <rdf:Description rdf:about="" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmp:Rating="%s"/>
     </rdf:RDF>
    </x:xmpmeta>
    """
        .formatted(rating)
        .getBytes(StandardCharsets.UTF_8);
  }

  /** A box of an ISO media file. */
  static byte[] box(String type, byte[]... parts) {
    int size = 8;
    for (var part : parts) {
      size += part.length;
    }
    var box = ByteBuffer.allocate(size);
    box.putInt(size).put(type.getBytes(StandardCharsets.US_ASCII));
    for (var part : parts) {
      box.put(part);
    }
    return box.array();
  }

  /** One TIFF directory, little-endian, with its data behind it. */
  static final class Tiff {
    private static final class Field {
      final int type;
      final int count;
      final byte[] value;

      Field(int type, int count, byte[] value) {
        this.type = type;
        this.count = count;
        this.value = value;
      }
    }

    private final TreeMap<Integer, Field> fields = new TreeMap<>();
    private final TreeMap<Integer, byte[]> data = new TreeMap<>();
    private final TreeMap<Integer, Tiff> children = new TreeMap<>();
    private Tiff next;

    void ascii(int tag, String text) {
      byte[] bytes = (text + "\0").getBytes(StandardCharsets.US_ASCII);
      fields.put(tag, new Field(2, bytes.length, bytes));
    }

    void shorts(int tag, int... values) {
      var bytes = ByteBuffer.allocate(values.length * 2).order(ByteOrder.LITTLE_ENDIAN);
      for (int value : values) {
        bytes.putShort((short) value);
      }
      fields.put(tag, new Field(3, values.length, bytes.array()));
    }

    void bytes(int tag, byte[] value) {
      fields.put(tag, new Field(1, value.length, value));
    }

    void number(int tag, int value) {
      var bytes = ByteBuffer.allocate(4).order(ByteOrder.LITTLE_ENDIAN).putInt(value);
      fields.put(tag, new Field(4, 1, bytes.array()));
    }

    void data(int offsetTag, int lengthTag, byte[] content) {
      number(offsetTag, 0);
      number(lengthTag, content.length);
      data.put(offsetTag, content);
    }

    void child(int tag, Tiff child) {
      number(tag, 0);
      children.put(tag, child);
    }

    void next(Tiff directory) {
      next = directory;
    }

    byte[] file() {
      var out = new ByteArrayOutputStream();
      out.writeBytes(new byte[] {'I', 'I', 42, 0, 8, 0, 0, 0});
      out.writeBytes(at(8));
      return out.toByteArray();
    }

    private byte[] at(int offset) {
      int room = 2 + fields.size() * 12 + 4;
      var behind = new ByteArrayOutputStream();
      List<Integer> tags = new ArrayList<>(fields.keySet());
      var table = ByteBuffer.allocate(room).order(ByteOrder.LITTLE_ENDIAN);
      table.putShort((short) tags.size());
      for (int tag : tags) {
        var field = fields.get(tag);
        var value = field.value;
        if (data.containsKey(tag)) {
          value = number(place(behind, offset + room, data.get(tag)));
        } else if (children.containsKey(tag)) {
          int start = offset + room + behind.size();
          behind.writeBytes(children.get(tag).at(start));
          value = number(start);
        }
        table.putShort((short) tag).putShort((short) field.type).putInt(field.count);
        if (value.length <= 4) {
          table.put(value).put(new byte[4 - value.length]);
        } else {
          table.putInt(place(behind, offset + room, value));
        }
      }
      if (next == null) {
        table.putInt(0);
      } else {
        int start = offset + room + behind.size();
        behind.writeBytes(next.at(start));
        table.putInt(start);
      }
      var out = new ByteArrayOutputStream();
      out.writeBytes(table.array());
      out.writeBytes(behind.toByteArray());
      return out.toByteArray();
    }

    private static int place(ByteArrayOutputStream behind, int base, byte[] content) {
      int start = base + behind.size();
      behind.writeBytes(content);
      return start;
    }

    private static byte[] number(int value) {
      return ByteBuffer.allocate(4).order(ByteOrder.LITTLE_ENDIAN).putInt(value).array();
    }
  }
}
