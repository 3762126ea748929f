package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.awt.Color;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.framewright.frames.slate.JobKey;
import org.framewright.frames.slate.Slate;
import org.framewright.frames.slate.SlateReading;
import org.framewright.frames.slate.SlateScene;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SlateSearchTest {
  private static final JobKey KEY = new JobKey("K7Q2");
  private static final Slate SLATE = Slate.of(KEY, "014");
  private static final Slate OTHER = Slate.of(KEY, "015");
  private static final LocalDateTime NOON = LocalDateTime.of(2026, 11, 25, 12, 0);

  @TempDir Path folder;
  private final TestCamera camera = new TestCamera("Studio Body A", "A-1001");
  private final SlateSearch search = new SlateSearch();

  private static byte[] picture(int edge, Slate slate) {
    return SlateScene.plain(edge, 0.12, 4).jpeg(slate, 0.85f);
  }

  /** A raw with such a preview in it. */
  private byte[] raw(byte[] preview) {
    var ifd = new TestCamera.Tiff();
    ifd.ascii(0x010F, "Invented Works");
    ifd.ascii(0x0110, "Studio Body A");
    ifd.shorts(0x0103, 1);
    ifd.data(0x0111, 0x0117, new byte[] {1, 2, 3, 4});
    ifd.data(0x0201, 0x0202, preview);
    return ifd.file();
  }

  /** A JPEG with a thumbnail in it. */
  private byte[] jpeg(byte[] whole, byte[] thumbnail) {
    byte[] tiff = camera.exif(NOON, 6, thumbnail);
    var out = new ByteArrayOutputStream();
    out.write(0xFF);
    out.write(0xD8);
    out.write(0xFF);
    out.write(0xE1);
    out.write((tiff.length + 8) >> 8);
    out.write((tiff.length + 8) & 0xFF);
    out.writeBytes("Exif\0\0".getBytes(StandardCharsets.US_ASCII));
    out.writeBytes(tiff);
    out.write(whole, 2, whole.length - 2);
    return out.toByteArray();
  }

  private Frame frame(Object... namesAndContents) throws IOException {
    var files = new ArrayList<FrameFile>();
    for (int i = 0; i < namesAndContents.length; i += 2) {
      var path = folder.resolve((String) namesAndContents[i]);
      var content = (byte[]) namesAndContents[i + 1];
      Files.write(path, content);
      files.add(
          new FrameFile(path, content.length, Instant.EPOCH, FileRole.of(path).orElseThrow()));
    }
    return new Frame(new FrameId("1"), folder, "a", files, Capture.UNKNOWN, true);
  }

  private SlateReading read(Object... namesAndContents) throws IOException {
    return search.read(frame(namesAndContents));
  }

  private static SlateReading found(Slate slate) {
    return new SlateReading.Found(slate);
  }

  private void hasNothing(SlateReading reading, String why) {
    assertThat(reading).isInstanceOf(SlateReading.NoPicture.class);
    assertThat(((SlateReading.NoPicture) reading).why().english()).contains(why);
  }

  @Tag("slow")
  @Test
  void aRawsPreviewIsLookedAtBeforeALargeJpegBesideIt() throws IOException {
    assertThat(read("a.cr2", raw(picture(1620, SLATE)), "a.jpg", picture(2600, OTHER)))
        .isEqualTo(found(SLATE));
  }

  @Tag("slow")
  @Test
  void ofSeveralTheSmallestThatIsLargeEnoughIsLookedAt() throws IOException {
    assertThat(read("a.cr2", raw(picture(1620, OTHER)), "a.jpg", picture(1080, SLATE)))
        .isEqualTo(found(SLATE));
    // One of 900 pixels is not.
    assertThat(read("a.cr2", raw(picture(900, OTHER)), "a.jpg", picture(1080, SLATE)))
        .isEqualTo(found(SLATE));
  }

  @Test
  void whereNoneIsLargeEnoughTheLargestIsLookedAt() throws IOException {
    assertThat(read("a.cr2", raw(picture(640, OTHER)), "a.jpg", picture(900, SLATE)))
        .isEqualTo(found(SLATE));
  }

  @Test
  void aJpegAloneIsDecodedItself() throws IOException {
    var thumbnail = TestCamera.picture(160, 120, Color.RED);
    assertThat(read("a.jpg", jpeg(picture(1200, SLATE), thumbnail))).isEqualTo(found(SLATE));
  }

  @Tag("slow")
  @ParameterizedTest
  @ValueSource(ints = {2401, 4800})
  void aLargerOneIsDecodedWithPartsLeftOut(int edge) throws IOException {
    var thumbnail = TestCamera.picture(160, 120, Color.RED);
    assertThat(read("a.jpg", jpeg(picture(edge, SLATE), thumbnail))).isEqualTo(found(SLATE));
  }

  /** The other readers of pictures give a JPEG of more than 8 MB as its thumbnail only. */
  @Tag("slow")
  @Test
  void aJpegOfManyMegabytesIsReadToo() throws IOException {
    var whole = picture(3000, SLATE);
    // Segments that say nothing, of 64 KB each.
    var segments = new ByteArrayOutputStream();
    for (int i = 0; i < 150; i++) {
      segments.writeBytes(new byte[] {(byte) 0xFF, (byte) 0xEB, (byte) 0xFF, (byte) 0xFF});
      segments.writeBytes(new byte[65_533]);
    }
    var out = new ByteArrayOutputStream();
    out.write(whole, 0, 2);
    out.writeBytes(segments.toByteArray());
    out.write(whole, 2, whole.length - 2);
    assertThat(out.size()).isGreaterThan(9 << 20);
    assertThat(read("a.jpg", out.toByteArray())).isEqualTo(found(SLATE));
  }

  @Test
  void aPictureWithoutASlateHasNone() throws IOException {
    assertThat(read("a.jpg", SlateScene.empty(1200, 3).jpeg(SLATE, 0.8f)))
        .isEqualTo(new SlateReading.None());
  }

  @Test
  void whatHasNoPictureToLookAtSaysWhy() throws IOException {
    hasNothing(read("a.mp4", new byte[] {1}), "it is a clip");
    hasNothing(
        read("a.cr2", raw(TestCamera.picture(160, 120, Color.RED))),
        "has 160 pixels, too few for a slate");
    hasNothing(read("a.png", TestContainers.png()), "no picture in its files can be decoded");
    hasNothing(read("a.jpg", new byte[0]), "no picture in its files can be decoded");
  }

  @Test
  void aFileThatIsGoneOrNoFileIsToldNotThrown() throws IOException {
    var frame = frame("a.jpg", picture(1080, SLATE));
    Files.delete(folder.resolve("a.jpg"));
    hasNothing(search.read(frame), "");
    Files.createDirectory(folder.resolve("a.jpg"));
    hasNothing(search.read(frame), "");
  }

  @Test
  void noLinkIsFollowed() throws IOException {
    var frame = frame("a.jpg", picture(1080, SLATE));
    Files.move(folder.resolve("a.jpg"), folder.resolve("b.jpg"));
    Files.createSymbolicLink(folder.resolve("a.jpg"), folder.resolve("b.jpg"));
    hasNothing(search.read(frame), "");
  }

  @Tag("slow")
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void damagedFilesAreNoSlateAndNoFault(long seed) throws IOException {
    var random = new Random(seed);
    for (var whole : List.of(picture(1080, SLATE), raw(picture(1080, SLATE)))) {
      for (int i = 0; i < 12; i++) {
        var damaged = Arrays.copyOf(whole, random.nextInt(whole.length) + 1);
        for (int hit = 0; hit < 1 + random.nextInt(40); hit++) {
          damaged[random.nextInt(Math.min(damaged.length, 4096))] = (byte) random.nextInt();
        }
        assertThat(read(i % 2 == 0 ? "a.jpg" : "a.cr2", damaged))
            .isNotInstanceOf(SlateReading.Two.class)
            .isNotEqualTo(found(OTHER));
      }
    }
  }

  /** 60,000 by 60,000 pixels, as its header says. */
  @Test
  void aPictureThatClaimsTooMuchIsNotDecoded() throws IOException {
    var claims = picture(1080, SLATE);
    for (int i = 0; i < claims.length - 9; i++) {
      if (claims[i] == (byte) 0xFF && claims[i + 1] == (byte) 0xC0) {
        claims[i + 5] = (byte) 0xEA;
        claims[i + 6] = 0x60;
        claims[i + 7] = (byte) 0xEA;
        claims[i + 8] = 0x60;
        break;
      }
    }
    hasNothing(read("a.jpg", claims), "no picture in its files can be decoded");
  }

  /** Files of real bodies, none of which has a slate in it. */
  @Test
  @Tag("slow")
  void realFilesHaveNoSlates() throws IOException {
    for (var file : RealFrames.found()) {
      var role = FileRole.of(file).orElseThrow();
      var frame =
          new Frame(
              new FrameId("1"),
              folder,
              "a",
              List.of(new FrameFile(file, Files.size(file), Instant.EPOCH, role)),
              Capture.UNKNOWN,
              true);
      assertThat(search.read(frame))
          .as(file.toString())
          .isInstanceOfAny(SlateReading.None.class, SlateReading.NoPicture.class);
    }
  }
}
