package org.framewright.handoff.metadata;

import static org.framewright.AssertThat.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import org.framewright.frames.PictureDigest;
import org.framewright.handoff.Pictures;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Each property that is written, read back by exiftool and exiv2. Which tag and which key it is to
 * be found under: IPTC Photo Metadata Standard, technical reference; the names are those tools'
 * own.
 */
class ReadBackTest {
  @TempDir private Path folder;
  private Path dng;

  private static final Map<String, String> EXPECTED = new TreeMap<>();

  static {
    EXPECTED.put("Creator", "[\"Inès Vander\"]");
    EXPECTED.put("AuthorsPosition", "\"Photographer\"");
    EXPECTED.put(
        "CreatorContactInfo",
        "{\"CiEmailWork\":\"ines@nova.example\",\"CiTelWork\":\"+32 2 555 01 00\","
            + "\"CiUrlWork\":\"https://nova.example\"}");
    EXPECTED.put("Rights", "\"© 2026 Nova & Söhne\"");
    EXPECTED.put("Marked", "true");
    EXPECTED.put("Credit", "\"Inès Vander / Nova\"");
    EXPECTED.put("Source", "\"Nova Archive\"");
    EXPECTED.put("CopyrightOwner", "[{\"CopyrightOwnerName\":\"Nova bv\"}]");
    EXPECTED.put("UsageTerms", "\"Web, two years\"");
    EXPECTED.put("WebStatement", "\"https://nova.example/terms\"");
    EXPECTED.put("DataMining", "\"http://ns.useplus.org/ldf/vocab/DMI-PROHIBITED-AIMLTRAINING\"");
    EXPECTED.put("TransmissionReference", "\"2026-11-23_KVO_look-book\"");
    EXPECTED.put("Title", "\"KVO_001_F_0001\"");
    EXPECTED.put("Headline", "\"AW look book 001\"");
    EXPECTED.put("Description", "\"Wool coat <grey>; front\"");
    EXPECTED.put("Subject", "[\"001\",\"Wool coat <grey>\",\"front\"]");
    EXPECTED.put("Instructions", "\"Please send it back as KVO_001_F_0001_v01. Keep the shadow\"");
    EXPECTED.put("DateCreated", "\"2026:11:23 10:01:02.400+01:00\"");
    EXPECTED.put("Event", "\"AW look book\"");
    EXPECTED.put("PersonInImage", "[\"Ada Lune\",\"نور\"]");
    EXPECTED.put("ModelReleaseStatus", "\"MR-UMR\"");
    EXPECTED.put("ModelReleaseID", "[\"R-17\"]");
    EXPECTED.put(
        "ProductInImage",
        "[{\"ProductName\":\"Wool coat <grey>\",\"ProductGTIN\":\"04006381333931\","
            + "\"ProductDescription\":\"moss green\"}]");
    EXPECTED.put("ImageSupplier", "[{\"ImageSupplierName\":\"Nova スタジオ\"}]");
    EXPECTED.put("ImageSupplierImageID", "\"KVO_001_F_0001\"");
    EXPECTED.put(
        "DigitalSourceType", "\"http://cv.iptc.org/newscodes/digitalsourcetype/digitalCapture\"");
    EXPECTED.put(
        "DigitalImageGUID", "\"" + UUID.nameUUIDFromBytes(Samples.utf8(Samples.SHA)) + "\"");
    EXPECTED.put("PreservedFileName", "\"A_0001.DNG\"");
    EXPECTED.put("Rating", "4");
  }

  @BeforeEach
  void aFrameOfTheSampleCamera() throws Exception {
    var camera =
        new SampleCamera(
            SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.RAW_AND_JPEG, 1);
    camera.take(Exposure.of(Instant.parse("2026-11-23T09:00:00Z"), "001", "F")).writeTo(folder);
    try (var files = Files.walk(folder)) {
      dng = files.filter(file -> file.toString().endsWith(".DNG")).findFirst().orElseThrow();
    }
  }

  private Path copy(String kind) throws Exception {
    return switch (kind) {
      case "dng" -> Files.copy(dng, folder.resolve("copy.dng"));
      case "jpg" ->
          Files.copy(Path.of(dng.toString().replace(".DNG", ".JPG")), folder.resolve("copy.jpg"));
      case "tif-big" ->
          Samples.write(folder.resolve("big.tif"), Samples.tiff(ByteOrder.BIG_ENDIAN, 42));
      case "tif-little" ->
          Samples.write(folder.resolve("little.tif"), Samples.tiff(ByteOrder.LITTLE_ENDIAN, 42));
      default -> Samples.write(folder.resolve("written.tif"), Pictures.of("tif"));
    };
  }

  private Path embedded(Path copy) throws Exception {
    var name = copy.getFileName().toString();
    var made = folder.resolve("made" + name.substring(name.lastIndexOf('.')));
    assertThat(PictureCopy.embed(copy, made, Samples.block(), false))
        .isInstanceOf(PictureCopy.Outcome.Made.class);
    return made;
  }

  private Path sidecar() throws Exception {
    return Files.write(
        folder.resolve("made.xmp"), Sidecar.made(Optional.empty(), Samples.block(), false).bytes());
  }

  private static void assertAllIsRead(JsonNode read) throws Exception {
    var json = new JsonMapper();
    for (var property : EXPECTED.entrySet()) {
      var said = read.path(property.getKey());
      var found =
          property.getKey().equals("ModelReleaseStatus")
              ? json.readTree("\"" + said.asText().replaceFirst(".*/vocab/", "") + "\"")
              : said;
      assertThat(found).as(property.getKey()).isEqualTo(json.readTree(property.getValue()));
    }
  }

  @Tag("slow")
  @Test
  void exiftoolReadsEachPropertyFromASidecar() throws Exception {
    assertThat(EXPECTED).hasSize(Property.values().length);
    assertAllIsRead(Tools.exiftool(sidecar()));
    assertThat(Tools.warnings(sidecar())).isEmpty();
  }

  @Tag("slow")
  @ParameterizedTest
  @ValueSource(strings = {"jpg", "dng", "tif-big", "tif-little", "tif"})
  void exiftoolReadsEachPropertyFromACopyAndFindsNothingNewWrong(String kind) throws Exception {
    var copy = copy(kind);
    var made = embedded(copy);
    assertAllIsRead(Tools.exiftool(made));
    assertThat(Tools.warnings(copy)).containsAll(Tools.warnings(made));
    assertThat(PictureDigest.of(made)).isEqualTo(PictureDigest.of(copy));
  }

  @Test
  void exiv2ReadsTheSameFromASidecarAndFromEveryCopy() throws Exception {
    var read = Tools.exiv2(sidecar());
    assertThat(read)
        .contains(
            "Xmp.dc.creator Inès Vander",
            "Xmp.photoshop.AuthorsPosition Photographer",
            "Xmp.iptc.CreatorContactInfo/Iptc4xmpCore:CiEmailWork ines@nova.example",
            "Xmp.iptc.CreatorContactInfo/Iptc4xmpCore:CiTelWork +32 2 555 01 00",
            "Xmp.iptc.CreatorContactInfo/Iptc4xmpCore:CiUrlWork https://nova.example",
            "Xmp.dc.rights lang=\"x-default\" © 2026 Nova & Söhne",
            "Xmp.xmpRights.Marked True",
            "Xmp.photoshop.Credit Inès Vander / Nova",
            "Xmp.photoshop.Source Nova Archive",
            "Xmp.plus.CopyrightOwner[1]/plus:CopyrightOwnerName Nova bv",
            "Xmp.xmpRights.UsageTerms lang=\"x-default\" Web, two years",
            "Xmp.xmpRights.WebStatement https://nova.example/terms",
            "Xmp.plus.DataMining http://ns.useplus.org/ldf/vocab/DMI-PROHIBITED-AIMLTRAINING",
            "Xmp.photoshop.TransmissionReference 2026-11-23_KVO_look-book",
            "Xmp.dc.title lang=\"x-default\" KVO_001_F_0001",
            "Xmp.photoshop.Headline AW look book 001",
            "Xmp.dc.description lang=\"x-default\" Wool coat <grey>; front",
            "Xmp.dc.subject 001, Wool coat <grey>, front",
            "Xmp.photoshop.Instructions Please send it back as KVO_001_F_0001_v01. Keep the shadow",
            "Xmp.photoshop.DateCreated 2026-11-23T10:01:02.400+01:00",
            "Xmp.iptcExt.Event lang=\"x-default\" AW look book",
            "Xmp.iptcExt.PersonInImage Ada Lune, نور",
            "Xmp.plus.ModelReleaseStatus http://ns.useplus.org/ldf/vocab/MR-UMR",
            "Xmp.plus.ModelReleaseID R-17",
            "Xmp.iptcExt.ProductInImage[1]/Iptc4xmpExt:ProductGTIN 04006381333931",
            "Xmp.plus.ImageSupplier[1]/plus:ImageSupplierName Nova スタジオ",
            "Xmp.plus.ImageSupplierImageID KVO_001_F_0001",
            "Xmp.iptcExt.DigitalSourceType"
                + " http://cv.iptc.org/newscodes/digitalsourcetype/digitalCapture",
            "Xmp.iptcExt.DigImageGUID " + UUID.nameUUIDFromBytes(Samples.utf8(Samples.SHA)),
            "Xmp.xmpMM.PreservedFileName A_0001.DNG",
            "Xmp.xmp.Rating 4")
        .anyMatch(line -> line.startsWith("Xmp.iptcExt.ProductInImage[1]/Iptc4xmpExt:ProductName"))
        .anyMatch(
            line ->
                line.startsWith("Xmp.iptcExt.ProductInImage[1]/Iptc4xmpExt:ProductDescription"));
    var differ = new ArrayList<String>();
    for (var kind : List.of("jpg", "dng", "tif-big", "tif-little", "tif")) {
      var found = Tools.exiv2(embedded(copy(kind)));
      Files.delete(folder.resolve(kind.startsWith("tif") ? "made.tif" : "made." + kind));
      if (!found.containsAll(read)) {
        differ.add(kind + found);
      }
    }
    assertThat(differ).isEmpty();
  }
}
