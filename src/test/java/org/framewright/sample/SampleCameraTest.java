package org.framewright.sample;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;
import static org.framewright.AssertThat.assertThat;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.exif.ExifDirectoryBase;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import java.io.ByteArrayInputStream;
import java.io.File;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.HashSet;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.apache.commons.imaging.Imaging;
import org.apache.commons.imaging.formats.jpeg.JpegImageMetadata;
import org.apache.commons.imaging.formats.tiff.TiffImageMetadata;
import org.apache.commons.imaging.formats.tiff.constants.ExifTagConstants;
import org.apache.commons.imaging.formats.tiff.constants.TiffDirectoryType;
import org.apache.commons.imaging.formats.tiff.constants.TiffTagConstants;
import org.apache.commons.imaging.formats.tiff.taginfos.TagInfo;
import org.apache.commons.imaging.formats.tiff.taginfos.TagInfoAscii;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The camera's files, read by readers that know nothing of their writer. */
class SampleCameraTest {
  private static final Instant NINE = Instant.parse("2026-11-23T08:00:00.250Z");

  /** Exif 2.31 added it; the reader's table ends before. */
  private static final TagInfoAscii OFFSET_TIME_ORIGINAL =
      new TagInfoAscii("OffsetTimeOriginal", 0x9011, 7, TiffDirectoryType.EXIF_DIRECTORY_EXIF_IFD);

  @TempDir private Path folder;

  private static SampleCamera camera(SampleBody body, SampleCamera.Writes writes) {
    return new SampleCamera(body, SampleCamera.Size.TINY, writes, 9998);
  }

  private Path write(SampleFrame frame, String ending) throws Exception {
    return frame.writeTo(folder).stream()
        .filter(file -> file.toString().endsWith(ending))
        .findFirst()
        .orElseThrow();
  }

  // Tag meanings: Exif (CIPA DC-008); the reader is Apache Commons Imaging.
  @Tag("slow")
  @Test
  void anIndependentReaderFindsTheExifOfTheJpeg() throws Exception {
    var frame =
        camera(SampleBody.studioA(), SampleCamera.Writes.RAW_AND_JPEG)
            .take(Exposure.of(NINE, "017", "F").heldUpright());
    var metadata = (JpegImageMetadata) Imaging.getMetadata(write(frame, ".JPG").toFile());

    assertThat(text(metadata, ExifTagConstants.EXIF_TAG_DATE_TIME_ORIGINAL))
        .isEqualTo("2026:11:23 09:00:00");
    assertThat(text(metadata, ExifTagConstants.EXIF_TAG_SUB_SEC_TIME_ORIGINAL)).isEqualTo("250");
    assertThat(text(metadata, OFFSET_TIME_ORIGINAL)).isEqualTo("+01:00");
    assertThat(text(metadata, TiffTagConstants.TIFF_TAG_MODEL)).isEqualTo("Studio Body A");
    assertThat(text(metadata, ExifTagConstants.EXIF_TAG_BODY_SERIAL_NUMBER)).isEqualTo("SA-104417");
    assertThat(
            metadata.findExifValueWithExactMatch(TiffTagConstants.TIFF_TAG_ORIENTATION).getValue())
        .isEqualTo((short) 6);
    assertThat(ImageIO.read(new ByteArrayInputStream(metadata.getExifThumbnailData())).getWidth())
        .isEqualTo(48);
  }

  @Test
  void anIndependentReaderFindsTheSameTimeInTheRawCompanion() throws Exception {
    var frame =
        camera(SampleBody.studioA(), SampleCamera.Writes.RAW_AND_JPEG)
            .take(Exposure.of(NINE, "017", "F"));
    var metadata = (TiffImageMetadata) Imaging.getMetadata(write(frame, ".DNG").toFile());

    assertThat(metadata.getFieldValue(ExifTagConstants.EXIF_TAG_DATE_TIME_ORIGINAL))
        .containsExactly("2026:11:23 09:00:00");
    assertThat(metadata.getFieldValue(ExifTagConstants.EXIF_TAG_SUB_SEC_TIME_ORIGINAL))
        .containsExactly("250");
    // The sensor's directory: 12 values wide (TIFF 6.0, section 8; SubIFDs: TIFF Technical Note 1).
    // The reader here is metadata-extractor, which follows it.
    var sensor =
        ImageMetadataReader.readMetadata(folder.resolve("IMG_9998.DNG").toFile())
            .getDirectoriesOfType(ExifSubIFDDirectory.class)
            .stream()
            .filter(directory -> directory.containsTag(ExifDirectoryBase.TAG_IMAGE_WIDTH))
            .toList();
    assertThat(sensor).hasSize(1);
    assertThat(sensor.getFirst().getInt(ExifDirectoryBase.TAG_IMAGE_WIDTH)).isEqualTo(12);
  }

  @Test
  void theRuntimesOwnReadersDecodeBothPictures() throws Exception {
    var frame =
        camera(SampleBody.studioA(), SampleCamera.Writes.RAW_AND_JPEG)
            .take(Exposure.of(NINE, "017", "F"));
    var jpeg = ImageIO.read(write(frame, ".JPG").toFile());
    assertThat(jpeg.getWidth()).isEqualTo(96);
    assertThat(jpeg.getHeight()).isEqualTo(64);
    var tiff = ImageIO.getImageReadersByFormatName("tiff").next();
    try (var in = ImageIO.createImageInputStream(folder.resolve("IMG_9998.DNG").toFile())) {
      tiff.setInput(in);
      assertThat(tiff.read(0).getWidth()).isEqualTo(96);
    } finally {
      tiff.dispose();
    }
  }

  @Test
  void aPictureHeldUprightIsStoredLyingAndShowsTheSameGarmentWhenTurned() throws Exception {
    var upright =
        camera(SampleBody.studioA(), SampleCamera.Writes.JPEG)
            .take(Exposure.of(NINE, "017", "F").heldUpright());
    var stored = ImageIO.read(new ByteArrayInputStream(upright.files().get("IMG_9998.JPG")));
    assertThat(stored.getWidth()).isGreaterThan(stored.getHeight());
    // Orientation 6 (Exif): the stored picture's left edge is the top of what was seen, and the
    // ground is lighter at the top.
    assertThat(brightness(stored, 2, 32)).isGreaterThan(brightness(stored, 93, 32) + 20);
  }

  // DCF (CIPA DC-009): file numbers are 0001 to 9999; that 0001 follows is from memory.
  @Test
  void numbersGoFrom9999To0001() {
    var camera = camera(SampleBody.studioA(), SampleCamera.Writes.JPEG);
    assertThat(camera.take(Exposure.of(NINE, "017", "F")).stem()).isEqualTo("IMG_9998");
    assertThat(camera.take(Exposure.of(NINE, "017", "F")).stem()).isEqualTo("IMG_9999");
    assertThat(camera.take(Exposure.of(NINE, "017", "F")).stem()).isEqualTo("IMG_0001");
  }

  @Test
  void aBodyThatIsAnHourFastWritesALaterTime() throws Exception {
    var frame =
        camera(SampleBody.studioB(), SampleCamera.Writes.JPEG).take(Exposure.of(NINE, "017", "F"));
    var metadata = (JpegImageMetadata) Imaging.getMetadata(write(frame, ".JPG").toFile());
    assertThat(text(metadata, ExifTagConstants.EXIF_TAG_DATE_TIME_ORIGINAL))
        .isEqualTo("2026:11:23 10:00:00");
  }

  // XMP specification, part 3: a packet in a JPEG; part 1: xmp:Rating.
  @Test
  void aRatingStandsInTheSidecarOrInTheJpegItself() throws Exception {
    var beside =
        camera(SampleBody.studioA(), SampleCamera.Writes.RAW_AND_JPEG)
            .take(Exposure.of(NINE, "017", "F").rated(4));
    assertThat(beside.files()).containsOnlyKeys("IMG_9998.DNG", "IMG_9998.JPG", "IMG_9998.xmp");
    assertThat(new String(beside.files().get("IMG_9998.xmp"), StandardCharsets.UTF_8))
        .contains("xmp:Rating=\"4\"");
    var inside =
        camera(SampleBody.studioB(), SampleCamera.Writes.JPEG_RATED_INSIDE)
            .take(Exposure.of(NINE, "017", "F").rated(5));
    assertThat(inside.files()).containsOnlyKeys("IMG_9998.JPG");
    assertThat(Imaging.getXmpXml(inside.files().get("IMG_9998.JPG"))).contains("xmp:Rating=\"5\"");
  }

  @Test
  void noTwoFramesHaveTheSameBytes() {
    var camera = camera(SampleBody.studioA(), SampleCamera.Writes.RAW_AND_JPEG);
    var seen = new HashSet<String>();
    for (int i = 0; i < 40; i++) {
      camera.take(Exposure.of(NINE, "017", "F")).files().values().stream()
          .map(bytes -> new String(bytes, StandardCharsets.ISO_8859_1))
          .forEach(bytes -> assertThat(seen.add(bytes)).isTrue());
    }
  }

  @Test
  void aFrameNeverOverwritesAnother() throws Exception {
    var frame =
        camera(SampleBody.studioA(), SampleCamera.Writes.JPEG).take(Exposure.of(NINE, "017", "F"));
    frame.writeTo(folder);
    assertThatThrownBy(() -> frame.writeTo(folder)).isInstanceOf(FileAlreadyExistsException.class);
    assertThat(folder.toFile().list()).hasSize(1);
  }

  @Tag("slow")
  @Test
  void exiftoolReadsTheSameTimeAndFindsNothingToWarnOf() throws Exception {
    assumeThat(onPath("exiftool")).as("exiftool is not installed").isTrue();
    var frame =
        camera(SampleBody.studioA(), SampleCamera.Writes.RAW_AND_JPEG)
            .take(Exposure.of(NINE, "017", "F"));
    for (var file : frame.writeTo(folder)) {
      var process =
          new ProcessBuilder(
                  "exiftool",
                  "-s3",
                  "-Warning",
                  "-Error",
                  "-SubSecDateTimeOriginal",
                  file.toString())
              .redirectErrorStream(true)
              .start();
      var said =
          new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
      assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
      assertThat(said).isEqualTo("2026:11:23 09:00:00.250+01:00");
    }
  }

  private static boolean onPath(String tool) {
    return Pattern.compile(File.pathSeparator)
        .splitAsStream(System.getenv().getOrDefault("PATH", ""))
        .anyMatch(place -> Files.isExecutable(Path.of(place, tool)));
  }

  private static String text(JpegImageMetadata metadata, TagInfo tag) throws Exception {
    return metadata.findExifValueWithExactMatch(tag).getStringValue();
  }

  private static int brightness(java.awt.image.BufferedImage image, int x, int y) {
    return image.getRGB(x, y) >> 8 & 0xFF;
  }
}
