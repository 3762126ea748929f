package org.framewright.frames;

import java.awt.Color;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.CRC32;

/** Whole small files of each kind of container, of an invented body. */
final class TestContainers {
  static final LocalDateTime TIME = LocalDateTime.of(2026, 11, 25, 12, 34, 56, 789_000_000);

  private static final TestCamera CAMERA = new TestCamera("Studio Body A", "A-1001");

  private TestContainers() {}

  static Map<String, byte[]> all() {
    var all = new LinkedHashMap<String, byte[]>();
    all.put("a.jpg", CAMERA.jpeg(TIME, 6));
    all.put("a.cr2", CAMERA.raw(TIME, 700));
    all.put("a.cr3", cr3());
    all.put("a.heic", heif());
    all.put("a.raf", raf());
    all.put("a.png", png());
    all.put("a.xmp", TestCamera.sidecar("4"));
    return all;
  }

  /** CR3: the Exif in boxes of {@code moov}, a thumbnail there, a preview in a box of its own. */
  static byte[] cr3() {
    byte[] thumbnail = TestCamera.picture(160, 120, Color.RED);
    byte[] preview = TestCamera.picture(400, 300, Color.RED);
    var metadata =
        TestCamera.box(
            "uuid",
            HexFormat.of().parseHex("85c0b687820f11e08111f4ce462b6a48"),
            TestCamera.box("CMT1", CAMERA.description(8)),
            TestCamera.box("CMT2", CAMERA.capture(TIME)),
            TestCamera.box("THMB", new byte[16], thumbnail));
    return join(
        TestCamera.box("ftyp", "crx \0\0\0\1crx isom".getBytes(StandardCharsets.US_ASCII)),
        TestCamera.box("moov", metadata),
        TestCamera.box(
            "uuid",
            HexFormat.of().parseHex("eaf42b5e1c984b88b9fbb7dc406e4d16"),
            new byte[8],
            TestCamera.box("PRVW", new byte[16], preview)),
        TestCamera.box("mdat", filled(500)));
  }

  /** HEIF: an Exif item and a JPEG item, located by {@code iloc}. */
  static byte[] heif() {
    return heif("heic");
  }

  static byte[] heif(String brand) {
    byte[] exif = join(new byte[4], CAMERA.exif(TIME, 1, TestCamera.picture(160, 120, Color.RED)));
    byte[] jpeg = TestCamera.picture(240, 180, Color.RED);
    byte[] ftyp =
        TestCamera.box(
            "ftyp", (brand + "\0\0\0\0mif1" + brand).getBytes(StandardCharsets.US_ASCII));
    int metaSize = meta(0, 0, 0, 0).length;
    int data = ftyp.length + metaSize + 8;
    return join(
        ftyp,
        meta(data, exif.length, data + exif.length, jpeg.length),
        TestCamera.box("mdat", exif, jpeg));
  }

  private static byte[] meta(int exifAt, int exifLength, int jpegAt, int jpegLength) {
    var iinf =
        TestCamera.box("iinf", new byte[] {0, 0, 0, 0, 0, 2}, infe(1, "Exif"), infe(2, "jpeg"));
    var iloc = ByteBuffer.allocate(8 + 2 * 14);
    iloc.putInt(0).put((byte) 0x44).put((byte) 0).putShort((short) 2);
    iloc.putShort((short) 1)
        .putShort((short) 0)
        .putShort((short) 1)
        .putInt(exifAt)
        .putInt(exifLength);
    iloc.putShort((short) 2)
        .putShort((short) 0)
        .putShort((short) 1)
        .putInt(jpegAt)
        .putInt(jpegLength);
    return TestCamera.box("meta", new byte[4], iinf, TestCamera.box("iloc", iloc.array()));
  }

  private static byte[] infe(int id, String type) {
    var entry = ByteBuffer.allocate(13);
    entry.put((byte) 2).put(new byte[3]).putShort((short) id).putShort((short) 0);
    entry.put(type.getBytes(StandardCharsets.US_ASCII));
    return TestCamera.box("infe", entry.array());
  }

  /** RAF: a header that says where the JPEG and the sensor's data lie. */
  static byte[] raf() {
    byte[] jpeg = CAMERA.jpeg(TIME, 1);
    var header = ByteBuffer.allocate(148);
    header.put("FUJIFILMCCD-RAW 0201".getBytes(StandardCharsets.US_ASCII));
    header.position(84);
    header.putInt(148).putInt(jpeg.length);
    header.putInt(148 + jpeg.length).putInt(40);
    header.putInt(148 + jpeg.length + 40).putInt(300);
    return join(header.array(), jpeg, filled(340));
  }

  /** PNG with Exif; the checksums are right, the picture data are not looked at. */
  static byte[] png() {
    return join(
        HexFormat.of().parseHex("89504e470d0a1a0a"),
        chunk("IHDR", HexFormat.of().parseHex("00000001000000010800000000")),
        chunk("eXIf", CAMERA.exif(TIME, 1, TestCamera.picture(20, 20, Color.RED))),
        chunk("IDAT", filled(20)),
        chunk("IEND", new byte[0]));
  }

  private static byte[] chunk(String type, byte[] data) {
    byte[] name = type.getBytes(StandardCharsets.US_ASCII);
    var sum = new CRC32();
    sum.update(name);
    sum.update(data);
    var chunk = ByteBuffer.allocate(12 + data.length);
    return chunk.putInt(data.length).put(name).put(data).putInt((int) sum.getValue()).array();
  }

  static byte[] filled(int length) {
    var bytes = new byte[length];
    for (int i = 0; i < length; i++) {
      bytes[i] = (byte) (i * 7 + 1);
    }
    return bytes;
  }

  static byte[] join(byte[]... parts) {
    var all = new ByteArrayOutputStream();
    for (var part : parts) {
      all.writeBytes(part);
    }
    return all.toByteArray();
  }
}
