package org.framewright.frames;

import java.awt.Color;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Whole small files of the formats of which no real ones lie beside the project, built from what is
 * published of their layout; the sources stand with their readers.
 */
final class TestFormats {
  static final LocalDateTime TIME = LocalDateTime.of(2026, 11, 25, 12, 34, 56);

  private static final long SECONDS = TIME.toEpochSecond(ZoneOffset.UTC);

  /** Raws that are TIFF with a directory of Exif, whatever makers keep besides. */
  static final List<String> TIFF_RAWS =
      List.of(
          "3fr", "arq", "arw", "cr2", "dcr", "dng", "erf", "fff", "gpr", "iiq", "k25", "kdc", "mef",
          "mos", "nef", "nrw", "ori", "pef", "sr2", "srf", "srw");

  private TestFormats() {}

  static Map<String, byte[]> all() {
    var all = new LinkedHashMap<String, byte[]>();
    all.put("a.crw", crw(ByteOrder.LITTLE_ENDIAN));
    all.put("b.crw", crw(ByteOrder.BIG_ENDIAN));
    all.put("a.mrw", mrw());
    all.put("a.x3f", x3f());
    all.put("a.avif", TestContainers.heif("avif"));
    all.put("a.hif", TestContainers.heif("heix"));
    all.putAll(clips());
    return all;
  }

  static Map<String, byte[]> clips() {
    var all = new LinkedHashMap<String, byte[]>();
    all.put("a.mp4", mp4(movieHeader(0)));
    all.put("b.mp4", mp4(movieHeader(1)));
    all.put("keys.mov", mp4(movieHeader(0), keys()));
    all.put("text.mov", mp4(movieHeader(0), userText()));
    all.put("fields.mov", mp4(movieHeader(0), fields()));
    all.put("exif.mov", mp4(movieHeader(0), exifInUserData()));
    all.put("xml.mp4", film(nonRealTime(), movieHeader(0)));
    all.put("a.mxf", mxf());
    all.put("a.avi", avi("Wed Nov 25 12:34:56 2026\n\0"));
    all.put("b.avi", avi("2026:11:25 12:34:56\0"));
    return all;
  }

  /** A raw of TIFF: as others write it, but for the two bytes behind the byte order. */
  static byte[] tiff(int magic) {
    byte[] raw = new TestCamera("Studio Body A", "A-1001").raw(TIME.withNano(250_000_000), 900);
    ByteBuffer.wrap(raw).order(ByteOrder.LITTLE_ENDIAN).putShort(2, (short) magic);
    return raw;
  }

  // CRW

  private static final class Entry {
    private final int tag;
    private final byte[] value;

    Entry(int tag, byte[] value) {
      this.tag = tag;
      this.value = value;
    }
  }

  private static byte[] crw(ByteOrder order) {
    var time = ByteBuffer.allocate(12).order(order).putInt((int) SECONDS).array();
    var image = ByteBuffer.allocate(28).order(order).putInt(0, 3072).putInt(4, 2048);
    image.putFloat(8, 1).putInt(12, 90).putInt(16, 12).putInt(20, 36).putInt(24, 1);
    var camera =
        heap(
            order, new Entry(0x080A, "Works\0Studio Body A\0".getBytes(StandardCharsets.US_ASCII)));
    var specification =
        heap(order, new Entry(0x580B, ByteBuffer.allocate(8).order(order).putInt(4711).array()));
    var properties =
        heap(
            order,
            new Entry(0x180E, time),
            new Entry(0x1810, image.array()),
            new Entry(0x2807, camera),
            new Entry(0x3004, specification));
    var root =
        heap(
            order,
            new Entry(0x2005, TestContainers.filled(700)),
            new Entry(0x2008, TestCamera.picture(160, 120, Color.RED)),
            new Entry(0x300A, properties));
    var header = ByteBuffer.allocate(26).order(order);
    header.put((order == ByteOrder.BIG_ENDIAN ? "MM" : "II").getBytes(StandardCharsets.US_ASCII));
    header.putInt(26).put("HEAPCCDR".getBytes(StandardCharsets.US_ASCII)).putInt(0x00010002);
    return TestContainers.join(header.array(), root);
  }

  /** Values, then their directory, then where that lies. */
  private static byte[] heap(ByteOrder order, Entry... entries) {
    var values = new ArrayList<byte[]>();
    var directory = ByteBuffer.allocate(2 + 10 * entries.length + 4).order(order);
    directory.putShort((short) entries.length);
    int at = 0;
    for (var entry : entries) {
      directory.putShort((short) entry.tag);
      if ((entry.tag & 0xC000) == 0x4000) {
        directory.put(entry.value, 0, 8);
      } else {
        directory.putInt(entry.value.length).putInt(at);
        values.add(entry.value);
        at += entry.value.length;
      }
    }
    directory.putInt(at);
    values.add(directory.array());
    return TestContainers.join(values.toArray(byte[][]::new));
  }

  // MRW

  private static byte[] mrw() {
    byte[] exif =
        new TestCamera("Studio Body A", "A-1001")
            .exif(TIME, 6, TestCamera.picture(160, 120, Color.RED));
    var dimensions = ByteBuffer.allocate(24);
    dimensions.put("27660001".getBytes(StandardCharsets.US_ASCII));
    dimensions.putShort((short) 20).putShort((short) 30).putShort((short) 20).putShort((short) 30);
    dimensions.put((byte) 16).put((byte) 12).put((byte) 0x52);
    byte[] blocks =
        TestContainers.join(
            block("\0PRD", dimensions.array()),
            block("\0TTW", exif),
            block("\0WBG", new byte[12]),
            block("\0PAD", new byte[9]));
    return TestContainers.join(block("\0MRM", blocks), TestContainers.filled(20 * 30 * 2));
  }

  private static byte[] block(String name, byte[] content) {
    return ByteBuffer.allocate(8 + content.length)
        .put(name.getBytes(StandardCharsets.US_ASCII))
        .putInt(content.length)
        .put(content)
        .array();
  }

  // X3F

  private static byte[] x3f() {
    byte[] header =
        little(40)
            .put("FOVb".getBytes(StandardCharsets.US_ASCII))
            .putInt(0x00020002)
            .put(new byte[16])
            .putInt(0)
            .putInt(640)
            .putInt(480)
            .putInt(270)
            .array();
    byte[] properties =
        properties(
            Map.of(
                "TIME", "" + SECONDS,
                "CAMMANUF", "Invented Works",
                "CAMMODEL", "Studio Body A",
                "CAMSERIAL", "A-1001"));
    byte[] image = TestContainers.join(image(2, 18), TestCamera.picture(160, 120, Color.RED));
    byte[] raw = TestContainers.join(image(1, 6), TestContainers.filled(500));
    int first = header.length;
    var directory = ByteBuffer.allocate(12 + 3 * 12 + 4).order(ByteOrder.LITTLE_ENDIAN);
    directory.put("SECd".getBytes(StandardCharsets.US_ASCII)).putInt(0x00020000).putInt(3);
    section(directory, first, properties.length, "PROP");
    section(directory, first + properties.length, image.length, "IMA2");
    section(directory, first + properties.length + image.length, raw.length, "IMAG");
    directory.putInt(first + properties.length + image.length + raw.length);
    return TestContainers.join(header, properties, image, raw, directory.array());
  }

  private static void section(ByteBuffer directory, int at, int length, String type) {
    directory.putInt(at).putInt(length).put(type.getBytes(StandardCharsets.US_ASCII));
  }

  private static byte[] image(int type, int format) {
    return little(28)
        .put("SECi".getBytes(StandardCharsets.US_ASCII))
        .putInt(0x00020000)
        .putInt(type)
        .putInt(format)
        .putInt(160)
        .putInt(120)
        .putInt(0)
        .array();
  }

  private static byte[] properties(Map<String, String> values) {
    var texts = new StringBuilder();
    var table = ByteBuffer.allocate(24 + 8 * values.size()).order(ByteOrder.LITTLE_ENDIAN);
    table.put("SECp".getBytes(StandardCharsets.US_ASCII)).putInt(0x00020000).putInt(values.size());
    table.putInt(0).putInt(0);
    table.putInt(
        values.entrySet().stream()
            .mapToInt(e -> e.getKey().length() + e.getValue().length() + 2)
            .sum());
    values.forEach(
        (name, value) -> {
          table.putInt(texts.length());
          texts.append(name).append('\0');
          table.putInt(texts.length());
          texts.append(value).append('\0');
        });
    return TestContainers.join(table.array(), texts.toString().getBytes(StandardCharsets.UTF_16LE));
  }

  private static ByteBuffer little(int size) {
    return ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
  }

  // Clips

  private static byte[] mp4(byte[]... movie) {
    return film(new byte[0], movie);
  }

  private static byte[] film(byte[] before, byte[]... movie) {
    return TestContainers.join(
        TestCamera.box("ftyp", "mp42\0\0\0\0mp42isom".getBytes(StandardCharsets.US_ASCII)),
        before,
        TestCamera.box("moov", movie),
        TestCamera.box("mdat", TestContainers.filled(600)));
  }

  private static byte[] movieHeader(int version) {
    var box = ByteBuffer.allocate(version == 0 ? 100 : 112);
    long created = SECONDS + 2_082_844_800L;
    box.put((byte) version).put(new byte[3]);
    if (version == 0) {
      box.putInt((int) created).putInt((int) created).putInt(1000).putInt(5000);
    } else {
      box.putLong(created).putLong(created).putInt(1000).putLong(5000);
    }
    return TestCamera.box("mvhd", box.array());
  }

  private static byte[] keys() {
    var names = List.of("creationdate", "make", "model");
    var texts = List.of("2026-11-25T13:34:56+0100", "Invented Works", "Studio Body A");
    var keys = new ArrayList<byte[]>();
    var items = new ArrayList<byte[]>();
    keys.add(ByteBuffer.allocate(8).putInt(4, names.size()).array());
    for (int i = 0; i < names.size(); i++) {
      keys.add(
          TestCamera.box(
              "mdta", ("com.apple.quicktime." + names.get(i)).getBytes(StandardCharsets.US_ASCII)));
      byte[] data =
          TestCamera.box(
              "data",
              ByteBuffer.allocate(8).putInt(1).array(),
              texts.get(i).getBytes(StandardCharsets.US_ASCII));
      items.add(ByteBuffer.allocate(8).putInt(8 + data.length).putInt(i + 1).array());
      items.add(data);
    }
    var handler = ByteBuffer.allocate(25).put(8, "mdta".getBytes(StandardCharsets.US_ASCII));
    return TestCamera.box(
        "meta",
        TestCamera.box("hdlr", handler.array()),
        TestCamera.box("keys", keys.toArray(byte[][]::new)),
        TestCamera.box("ilst", items.toArray(byte[][]::new)));
  }

  private static byte[] userText() {
    return TestCamera.box(
        "udta",
        text("\u00A9day", "2026-11-25T13:34:56+0100"),
        text("\u00A9mak", "Invented Works"),
        text("\u00A9mod", "Studio Body A"));
  }

  private static byte[] text(String type, String text) {
    var box = ByteBuffer.allocate(12 + text.length());
    box.putInt(12 + text.length()).put(type.getBytes(StandardCharsets.ISO_8859_1));
    box.putShort((short) text.length()).putShort((short) 0x55C4);
    return box.put(text.getBytes(StandardCharsets.US_ASCII)).array();
  }

  private static byte[] fields() {
    return TestCamera.box(
        "udta",
        TestCamera.box(
            "NCDT",
            TestCamera.box(
                "NCTG",
                field(1, "Invented Works"),
                field(2, "Studio Body A"),
                field(0x12, "2026:11:25 13:34:56"))));
  }

  private static byte[] field(int tag, String text) {
    byte[] value = (text + "\0").getBytes(StandardCharsets.US_ASCII);
    return ByteBuffer.allocate(8 + value.length)
        .putInt(tag)
        .putShort((short) 2)
        .putShort((short) value.length)
        .put(value)
        .array();
  }

  private static byte[] exifInUserData() {
    return TestCamera.box(
        "udta",
        TestCamera.box(
            "CNTH", TestCamera.box("CNDA", new TestCamera("Studio Body A", "A-1001").jpeg(TIME))));
  }

  private static byte[] nonRealTime() {
    var xml =
        """
        <?xml version="1.0" encoding="UTF-8"?>
        <NonRealTimeMeta xmlns="urn:schemas-professionalDisc:nonRealTimeMeta:ver.2.00">
          <CreationDate value="2026-11-25T13:34:56+01:00"/>
          <Device manufacturer="Invented Works" modelName="Studio Body A" serialNo="A-1001"/>
        </NonRealTimeMeta>
        """;
    var handler = ByteBuffer.allocate(25).put(8, "nrtm".getBytes(StandardCharsets.US_ASCII));
    return TestCamera.box(
        "meta",
        new byte[4],
        TestCamera.box("hdlr", handler.array()),
        TestCamera.box("xml ", new byte[4], xml.getBytes(StandardCharsets.UTF_8)));
  }

  /** A header's partition, the set of its package, and the footer's partition. */
  private static byte[] mxf() {
    var stamp = ByteBuffer.allocate(8).putShort((short) 2026);
    stamp.put((byte) 11).put((byte) 25).put((byte) 12).put((byte) 34).put((byte) 56).put((byte) 0);
    byte[] set =
        TestContainers.join(
            item(0x3C0A, TestContainers.filled(16)),
            item(0x4401, TestContainers.filled(32)),
            item(0x4405, stamp.array()));
    byte[] primer =
        TestContainers.join(
            ByteBuffer.allocate(8).putInt(3).putInt(18).array(),
            local(0x3C0A, "060e2b34010101010101150200000000"),
            local(0x4401, "060e2b34010101010101151000000000"),
            local(0x4405, "060e2b34010101020702011001030000"));
    byte[] sets =
        TestContainers.join(
            klv("060e2b34020501010d01020101050100", primer),
            klv("060e2b34025301010d01010101013600", set));
    byte[] header = partition("060e2b34020501010d01020101020400", 0, sets.length);
    byte[] essence = klv("060e2b34010201010d01030115010500", TestContainers.filled(400));
    int footer = header.length + sets.length + essence.length;
    return TestContainers.join(
        partition("060e2b34020501010d01020101020400", footer, sets.length),
        sets,
        essence,
        partition("060e2b34020501010d01020101040400", footer, 0));
  }

  private static byte[] partition(String key, long footer, long metadata) {
    var value = ByteBuffer.allocate(88);
    value.putShort((short) 1).putShort((short) 2).putInt(1);
    value.putLong(0).putLong(0).putLong(footer).putLong(metadata);
    // Not all zero at the end, as a real list of essence containers is not.
    value.put(87, (byte) 1);
    return klv(key, value.array());
  }

  private static byte[] klv(String key, byte[] value) {
    return TestContainers.join(
        HexFormat.of().parseHex(key),
        ByteBuffer.allocate(4).putInt(0x83000000 | value.length).array(),
        value);
  }

  private static byte[] local(int tag, String key) {
    return ByteBuffer.allocate(18).putShort((short) tag).put(HexFormat.of().parseHex(key)).array();
  }

  private static byte[] item(int tag, byte[] value) {
    return ByteBuffer.allocate(4 + value.length)
        .putShort((short) tag)
        .putShort((short) value.length)
        .put(value)
        .array();
  }

  private static byte[] avi(String date) {
    byte[] idit = chunk("IDIT", date.getBytes(StandardCharsets.US_ASCII));
    byte[] header = list("hdrl", chunk("avih", new byte[56]), idit);
    byte[] film = list("movi", chunk("00dc", TestContainers.filled(200)));
    byte[] content = TestContainers.join("AVI ".getBytes(StandardCharsets.US_ASCII), header, film);
    return chunk("RIFF", content);
  }

  private static byte[] list(String type, byte[]... chunks) {
    return chunk(
        "LIST",
        TestContainers.join(type.getBytes(StandardCharsets.US_ASCII), TestContainers.join(chunks)));
  }

  private static byte[] chunk(String name, byte[] content) {
    return little(8 + content.length + content.length % 2)
        .put(name.getBytes(StandardCharsets.US_ASCII))
        .putInt(content.length)
        .put(content)
        .array();
  }
}
