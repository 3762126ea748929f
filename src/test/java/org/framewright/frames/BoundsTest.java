package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import com.sun.management.ThreadMXBean;
import java.awt.Color;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.ThrowingSupplier;
import org.junit.jupiter.api.io.TempDir;

/**
 * Files that are small and lead to much work or memory: each is read to an answer, by few bytes
 * allocated. Without a bound most of these take minutes or gigabytes.
 */
class BoundsTest {
  private static final Duration LIMIT = Duration.ofMinutes(3);
  private static final LocalDateTime NOON = LocalDateTime.of(2026, 11, 25, 12, 0);

  /** What reading one file may allocate, garbage counted in. */
  private static final long MOST_ALLOCATED = 256L << 20;

  @TempDir Path folder;

  @Test
  void fieldsOfAMakersNoteThatAllClaimTheSameBytesAreNotKept() {
    // 50,000 fields of a maker's note, each of 2,000 fractions, all at one place: 2 GB if kept.
    assertThat(read(exifWithMakersNote(50_000, 5, 500, 8))).isNotNull();
    assertThat(read(exifWithMakersNote(50_000, 5, 2000, 8))).isNotNull();
  }

  @Test
  void fieldsOfManyNumbersAreNotTriedAsDirectoriesForEver() {
    // Each four-byte number of each field may point at a directory: 60,000 times 120,000.
    assertThat(read(exifWithMakersNote(60_000, 4, 120_000, 4))).isNotNull();
  }

  @Test
  void remarksOnFaultsOfManyFieldsAreNotKept() {
    // Every field lies outside of the file, which the library remarks on each time.
    assertThat(read(exifWithMakersNote(65_000, 5, 100_000_000, 8))).isNotNull();
  }

  /** A TIFF whose Exif has a maker's note in the manner of one known to the library. */
  private static byte[] exifWithMakersNote(int fields, int type, int count, int size) {
    int note = 8 + 2 + 2 * 12 + 4 + 2 + 12 + 4 + 16;
    int length = 2 + fields * 12 + 4;
    int end = note + length + Math.min(count, 200_000) * size;
    var tiff = ByteBuffer.allocate(end + 64).order(ByteOrder.LITTLE_ENDIAN);
    tiff.put(new byte[] {'I', 'I', 42, 0}).putInt(8);
    tiff.putShort((short) 2);
    int make = note - 16;
    int exif = note - 16 - 18;
    tiff.putShort((short) 0x010F).putShort((short) 2).putInt(6).putInt(make);
    tiff.putShort((short) 0x8769).putShort((short) 4).putInt(1).putInt(exif);
    tiff.putInt(0);
    tiff.position(exif);
    tiff.putShort((short) 1);
    tiff.putShort((short) 0x927C).putShort((short) 7).putInt(length).putInt(note);
    tiff.putInt(0);
    tiff.position(make);
    // A maker whose notes are a bare directory.
    tiff.put("Canon\0".getBytes(StandardCharsets.US_ASCII));
    tiff.position(note);
    tiff.putShort((short) fields);
    for (int i = 0; i < fields; i++) {
      tiff.putShort((short) (i + 0x4000)).putShort((short) type).putInt(count);
      tiff.putInt(note + length);
    }
    return tiff.array();
  }

  @Test
  void directoriesThatFollowEachOtherWithoutEndAreLeftAtSome() {
    // Empty directories of six bytes, each the next one's follower: half a million deep.
    var tiff = ByteBuffer.allocate(8 + 500_000 * 6 + 6).order(ByteOrder.LITTLE_ENDIAN);
    tiff.put(new byte[] {'I', 'I', 42, 0}).putInt(8);
    for (int i = 0; i < 500_000; i++) {
      tiff.putShort((short) 0).putInt(tiff.position() + 4);
    }
    assertThat(read(tiff.array()).whole()).isFalse();
  }

  @Test
  void directoriesInsideEachOtherWithoutEndAreLeftAtSome() {
    // Each directory has one field, which points at the next as its child.
    var tiff = ByteBuffer.allocate(8 + 200_000 * 18).order(ByteOrder.LITTLE_ENDIAN);
    tiff.put(new byte[] {'I', 'I', 42, 0}).putInt(8);
    for (int i = 0; i + 1 < 200_000; i++) {
      int next = tiff.position() + 18;
      tiff.putShort((short) 1);
      tiff.putShort((short) 0x8769).putShort((short) 4).putInt(1).putInt(next);
      tiff.putInt(0);
    }
    assertThat(read(tiff.array()).whole()).isFalse();
  }

  @Test
  void directoriesAtEveryByteAreLeftAtSome() {
    // Each byte begins a directory of 257 fields, and each field points at another one.
    byte[] ones = new byte[60_000];
    Arrays.fill(ones, (byte) 1);
    ByteBuffer.wrap(ones).put(new byte[] {'M', 'M', 0, 42}).putInt(8);
    assertThat(read(ones)).isNotNull();
  }

  @Test
  void aJpegOfManyBlocksOfExifIsReadToItsEnd() {
    var many = new ByteArrayOutputStream();
    many.writeBytes(new byte[] {(byte) 0xFF, (byte) 0xD8});
    byte[] exif = directories(300);
    for (int i = 0; i < 4000; i++) {
      many.writeBytes(new byte[] {(byte) 0xFF, (byte) 0xE1});
      many.write((exif.length + 8) >> 8);
      many.write((exif.length + 8) & 0xFF);
      many.writeBytes("Exif\0\0".getBytes(StandardCharsets.US_ASCII));
      many.writeBytes(exif);
    }
    byte[] picture = TestCamera.picture(20, 20, Color.RED);
    many.write(picture, 2, picture.length - 2);
    assertThat(read(many.toByteArray()).whole()).isTrue();
  }

  /** Directories that follow each other, all with the same fields. */
  private static byte[] directories(int fields) {
    int length = 2 + fields * 12 + 4;
    var tiff = ByteBuffer.allocate(8 + 4 * length).order(ByteOrder.LITTLE_ENDIAN);
    tiff.put(new byte[] {'I', 'I', 42, 0}).putInt(8);
    for (int n = 0; n < 4; n++) {
      tiff.putShort((short) fields);
      for (int i = 0; i < fields; i++) {
        tiff.putShort((short) 0x0111).putShort((short) 4).putInt(1).putInt(0);
      }
      tiff.putInt(n == 3 ? 0 : tiff.position() + 4);
    }
    return tiff.array();
  }

  @Test
  void anIndexOfMillionsOfPartsWithoutLengthIsRefused() {
    // 4,096 items of 65,535 parts, each of which takes no byte of the index.
    var iloc = ByteBuffer.allocate(8 + 4096 * 6);
    iloc.putInt(0).put((byte) 0).put((byte) 0).putShort((short) 4096);
    for (int i = 0; i < 4096; i++) {
      iloc.putShort((short) i).putShort((short) 0).putShort((short) 0xFFFF);
    }
    var file =
        TestContainers.join(
            TestCamera.box("ftyp", "heic\0\0\0\0mif1heic".getBytes(StandardCharsets.US_ASCII)),
            TestCamera.box(
                "meta",
                new byte[4],
                TestCamera.box("iinf", new byte[6]),
                TestCamera.box("iloc", iloc.array())));
    assertThat(read(file).problem().orElseThrow().what()).contains("parts");
  }

  @Test
  void boxesInsideEachOtherAreNotFollowed() {
    byte[] inner = new byte[0];
    for (int i = 0; i < 2000; i++) {
      inner = TestCamera.box(i % 2 == 0 ? "moov" : "uuid", inner);
    }
    var file =
        TestContainers.join(
            TestCamera.box("ftyp", "crx \0\0\0\1crx isom".getBytes(StandardCharsets.US_ASCII)),
            inner);
    assertThat(read(file).whole()).isFalse();
  }

  @Test
  void aSidecarOfElementsInsideEachOtherIsRefused() {
    // Each declares a name, and each is looked up among all that are declared further out.
    var nested = new StringBuilder();
    for (int i = 0; nested.length() < 3_500_000; i++) {
      nested.append("<a xmlns:n").append(i).append("='u'>");
    }
    for (var text :
        new String[] {
          nested.toString(),
          "<x:xmpmeta xmlns:x='adobe:ns:meta/'>" + nested,
          """
          <x:xmpmeta xmlns:x='adobe:ns:meta/'>
          <rdf:RDF xmlns:rdf='http://www.w3.org/1999/02/22-rdf-syntax-ns#'>
          <rdf:Description xmlns:xmp='http://ns.adobe.com/xap/1.0/'><xmp:Rating>"""
              + nested
        }) {
      var reading = sidecar(text.getBytes(StandardCharsets.UTF_8));
      assertThat(reading.problem().orElseThrow().what()).contains("nested too deeply");
    }
  }

  @Test
  void aSidecarOfAHundredMegabytesIsRefusedUnread() throws IOException {
    var file = folder.resolve("a.xmp");
    try (var sparse = new RandomAccessFile(file.toFile(), "rw")) {
      sparse.setLength(100 << 20);
    }
    var reading =
        within(() -> FileReading.of(file, FileRole.SIDECAR, new Bytes.Room()).orElseThrow());
    assertThat(reading.problem().orElseThrow().what()).contains("larger than a sidecar");
  }

  @Test
  void aPngOfEmptyChunksWithoutEndIsGivenUp() throws IOException {
    var file = folder.resolve("a.png");
    var chunks = ByteBuffer.allocate(8 << 20);
    chunks.put(new byte[] {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10});
    while (chunks.remaining() >= 12) {
      chunks.putInt(0).put("tEXt".getBytes(StandardCharsets.US_ASCII)).putInt(0);
    }
    Files.write(file, chunks.array());
    assertThat(
            within(() -> FileReading.of(file, FileRole.OTHER_IMAGE, new Bytes.Room()))
                .orElseThrow()
                .whole())
        .isFalse();
  }

  @Test
  void aPngThatClaimsAHugePictureIsNotDecoded() throws IOException {
    byte[] png = TestContainers.png().clone();
    ByteBuffer.wrap(png).putInt(16, Integer.MAX_VALUE).putInt(20, Integer.MAX_VALUE);
    var file = Files.write(folder.resolve("a.png"), png);
    assertThat(within(() -> Thumbnails.of(file, 100))).isEmpty();
  }

  @Test
  void aThumbnailThatClaimsAHugePictureIsNotDecoded() throws IOException {
    var camera = new TestCamera("Studio Body A", "A-1001");
    byte[] huge = TestCamera.picture(160, 120, Color.RED).clone();
    for (int i = 0; i < huge.length - 9; i++) {
      if ((huge[i] & 0xFF) == 0xFF && (huge[i + 1] & 0xFF) == 0xC0) {
        ByteBuffer.wrap(huge).putShort(i + 5, (short) 65_500).putShort(i + 7, (short) 65_500);
      }
    }
    byte[] exif = camera.exif(NOON, 1, huge);
    byte[] picture = TestCamera.picture(320, 240, Color.GRAY);
    var jpeg = new ByteArrayOutputStream();
    jpeg.writeBytes(new byte[] {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF, (byte) 0xE1});
    jpeg.write((exif.length + 8) >> 8);
    jpeg.write((exif.length + 8) & 0xFF);
    jpeg.writeBytes("Exif\0\0".getBytes(StandardCharsets.US_ASCII));
    jpeg.writeBytes(exif);
    jpeg.write(picture, 2, picture.length - 2);
    var file = Files.write(folder.resolve("a.jpg"), jpeg.toByteArray());
    var image = within(() -> Thumbnails.of(file, 100)).orElseThrow();
    // The grey main picture, not the thumbnail.
    assertThat(new Color(image.getRGB(50, 50)).getRed()).isBetween(100, 160);
  }

  private static FileReading read(byte[] content) {
    return allocatingLittle(() -> FileReading.of(Bytes.of(content), FileRole.RAW));
  }

  private static FileReading sidecar(byte[] content) {
    return allocatingLittle(() -> FileReading.of(Bytes.of(content), FileRole.SIDECAR));
  }

  private static <T> T allocatingLittle(ThrowingSupplier<T> work) {
    return within(
        () -> {
          var threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
          long before = threads.getCurrentThreadAllocatedBytes();
          var result = work.get();
          assertThat(threads.getCurrentThreadAllocatedBytes() - before).isLessThan(MOST_ALLOCATED);
          return result;
        });
  }

  private static <T> T within(ThrowingSupplier<T> work) {
    return assertTimeoutPreemptively(LIMIT, work);
  }
}
