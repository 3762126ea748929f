package org.framewright.handoff.metadata;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.framewright.frames.PictureDigest;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Files of real bodies, where there is a folder of them: whatever exiftool read in them before it
 * reads afterwards, but for what is ours, and it finds nothing new wrong.
 */
class RealFilesTest {
  /** What a file says of where things lie in it changes when a packet comes in. */
  private static final String PLACES =
      ".*(XMPToolkit|Offset|ThumbnailImage|StripOffsets|TileOffsets|JpgFromRaw|Start) .*";

  @TempDir private Path folder;

  private static List<Path> found(String... endings) throws IOException {
    var places = new ArrayList<Path>();
    Optional.ofNullable(System.getenv("FRAMEWRIGHT_REAL_FRAMES"))
        .map(Path::of)
        .ifPresent(places::add);
    places.add(Path.of("../shared/data/frames"));
    places.add(Path.of("../../shared/data/frames"));
    for (var place : places) {
      if (Files.isDirectory(place)) {
        try (var files = Files.list(place)) {
          return files
              .filter(file -> List.of(endings).stream().anyMatch(file.toString()::endsWith))
              .sorted()
              .toList();
        }
      }
    }
    Assumptions.abort(
        "there are no files of real bodies here; name a folder in FRAMEWRIGHT_REAL_FRAMES");
    return List.of();
  }

  private static boolean isOurs(String line) {
    return Samples.block().values().keySet().stream()
            .anyMatch(property -> line.contains(property.path().local()))
        || line.contains("Subject")
        || line.contains("DigitalImageGUID");
  }

  private static List<String> foreign(Path file) throws Exception {
    return Tools.tags(file).stream()
        .filter(line -> !line.matches(PLACES) && !isOurs(line))
        .map(String::strip)
        .toList();
  }

  @Test
  void aSidecarLosesNothingAndSaysOurs() throws Exception {
    for (var file : found(".xmp")) {
      var made =
          (Sidecar.Outcome.Made) Sidecar.merged(Files.readAllBytes(file), Samples.block(), false);
      var written = Files.write(folder.resolve(file.getFileName()), made.bytes());
      assertThat(foreign(written)).as(file.toString()).containsAll(foreign(file));
      assertThat(Tools.warnings(file)).containsAll(Tools.warnings(written));
      assertThat(Tools.exiftool(written).path("TransmissionReference").asText())
          .isEqualTo("2026-11-23_KVO_look-book");
      assertThat(Tools.exiv2(written))
          .anyMatch(line -> line.equals("Xmp.dc.title lang=\"x-default\" KVO_001_F_0001"));
    }
  }

  @Test
  void aPictureLosesNothingAndSaysOurs() throws Exception {
    int made = 0;
    for (var file : found(".jpg", ".dng", ".tif")) {
      var written = folder.resolve(file.getFileName());
      assertThat(PictureCopy.embed(file, written, Samples.block(), false))
          .as(file.toString())
          .isInstanceOf(PictureCopy.Outcome.Made.class);
      made++;
      assertThat(foreign(written)).as(file.toString()).containsAll(foreign(file));
      assertThat(Tools.warnings(file)).as(file.toString()).containsAll(Tools.warnings(written));
      assertThat(Tools.exiftool(written).path("ImageSupplierImageID").asText())
          .isEqualTo("KVO_001_F_0001");
      assertThat(PictureDigest.of(written)).isEqualTo(PictureDigest.of(file));
    }
    assertThat(made).isPositive();
  }

  @Test
  void otherRawsAreReadForWhatTheySayAndGetASidecar() throws Exception {
    for (var file : found(".cr2", ".cr3", ".iiq", ".raf", ".nef", ".rw2")) {
      var made = Sidecar.made(PictureCopy.read(file), Samples.block(), false);
      var written = Files.write(folder.resolve(file.getFileName() + ".xmp"), made.bytes());
      assertThat(Tools.warnings(written)).as(file.toString()).isEmpty();
      assertThat(Tools.exiftool(written).path("Title").asText()).isEqualTo("KVO_001_F_0001");
    }
  }
}
