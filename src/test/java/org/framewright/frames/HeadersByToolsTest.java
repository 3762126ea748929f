package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.framewright.base.Text;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Headers of files that ImageMagick wrote, and of real bodies, as ImageMagick's identify and
 * exiftool read them.
 */
@Tag("slow")
class HeadersByToolsTest {
  @TempDir private Path folder;

  private static String run(String... words) throws Exception {
    try {
      var process =
          new ProcessBuilder(words).redirectError(ProcessBuilder.Redirect.DISCARD).start();
      process.getOutputStream().close();
      var said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      Assumptions.assumeTrue(process.waitFor() == 0, words[0] + " cannot do this here");
      return said;
    } catch (IOException e) {
      return Assumptions.abort("there is no " + words[0] + " here");
    }
  }

  private static JsonNode exiftool(Path file) throws Exception {
    return new JsonMapper().readTree(run("exiftool", "-j", "-n", file.toString())).get(0);
  }

  private static PictureHeader header(Path file) {
    return switch (PictureHeader.of(file)) {
      case PictureHeader.Reading.Read(PictureHeader header) -> header;
      case PictureHeader.Reading.NotRead(Text why) -> throw new AssertionError(file + ": " + why);
    };
  }

  /** What is made, by the options of ImageMagick. */
  @ParameterizedTest
  @CsvSource({
    "a.jpg, -depth 8 -density 300 -units PixelsPerInch",
    "grey.jpg, -colorspace Gray",
    "cmyk.jpg, -colorspace CMYK",
    "a8.tif, -depth 8 -density 300 -units PixelsPerInch",
    "a16.tif, -depth 16 -density 118 -units PixelsPerCentimeter",
    "alpha.tif, -depth 8 -alpha on -channel A -evaluate set 50% +channel",
    "cmyk.tif, -depth 8 -colorspace CMYK",
    "lab.tif, -depth 8 -colorspace Lab",
    "grey.tif, -depth 16 -colorspace Gray",
    "a8.png, -depth 8 -density 300 -units PixelsPerInch -define png:color-type=2",
    "a16.png, -depth 16",
    "alpha.png, -depth 8 -alpha on -channel A -evaluate set 50% +channel -define"
        + " png:color-type=6",
    "a8.psd, -depth 8",
    "a16.psd, -depth 16 -density 300 -units PixelsPerInch",
    "cmyk.psd, -depth 8 -colorspace CMYK",
    "grey.psd, -depth 8 -colorspace Gray",
    "a.psb, -depth 8",
    "big.tf8, -depth 8",
    "a.webp, -quality 80",
    "alpha.webp, -alpha on -channel A -evaluate set 50% +channel -define webp:lossless=true",
    "a.heic, -quality 80",
    "a.avif, -quality 80"
  })
  void aHeaderIsWhatTheToolsRead(String name, String options) throws Exception {
    var words = new ArrayList<>(List.of("convert", "-size", "60x40", "gradient:red-blue"));
    words.addAll(List.of(options.split(" ", -1)));
    var profile = folder.resolve("srgb.icc");
    Files.write(profile, ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData());
    boolean rgb = !options.contains("-colorspace");
    if (rgb) {
      words.addAll(List.of("-profile", profile.toString()));
    }
    var file = folder.resolve(name);
    words.add((name.endsWith(".tf8") ? "TIFF64:" : "") + file);
    run(words.toArray(String[]::new));
    compare(file);
    if (rgb) {
      var said = exiftool(file).path("ProfileDescription");
      if (!said.isMissingNode()) {
        assertThat(header(file).profile().orElseThrow())
            .isEqualTo(new PictureHeader.Profile(said.asText(), true));
      }
    }
    assertThat(PictureFile.fault(file)).isEmpty();
    var whole = Files.readAllBytes(file);
    Files.write(file, java.util.Arrays.copyOf(whole, whole.length - 12));
    assertThat(PictureFile.fault(file)).isPresent();
  }

  private static void compare(Path file) throws Exception {
    var header = header(file);
    var said =
        run("identify", "-format", "%w %h %z %[colorspace] %A\n", file + "[0]").split(" ", -1);
    assertThat(header.size().width()).isEqualTo(Integer.parseInt(said[0]));
    assertThat(header.size().height()).isEqualTo(Integer.parseInt(said[1]));
    assertThat(header.colour().bits()).isEqualTo(Integer.parseInt(said[2]));
    assertThat(header.colour().model())
        .isEqualTo(
            switch (said[3]) {
              case "sRGB", "RGB", "YCbCr" -> PictureHeader.Model.RGB;
              case "Gray" -> PictureHeader.Model.GREY;
              case "CMYK" -> PictureHeader.Model.CMYK;
              case "Lab", "CIELab" -> PictureHeader.Model.LAB;
              default -> PictureHeader.Model.OTHER;
            });
    boolean alpha = said[4].strip().equals("Blend") || said[4].strip().equals("True");
    assertThat(header.colour().extra() > 0).isEqualTo(alpha);
    var tags = exiftool(file);
    assertThat(header.size().width()).isEqualTo(tags.path("ImageWidth").asInt());
    assertThat(header.size().height()).isEqualTo(tags.path("ImageHeight").asInt());
    assertThat(header.layers()).isEqualTo(tags.path("LayerCount").asInt(0));
    for (var tag : List.of("BitsPerSample", "BitDepth")) {
      if (tags.has(tag)) {
        assertThat(header.colour().bits())
            .isEqualTo(Integer.parseInt(tags.path(tag).asText().split(" ", -1)[0]));
      }
    }
    if (tags.has("NumChannels") || tags.has("SamplesPerPixel")) {
      assertThat(header.colour().channels())
          .isEqualTo(
              tags.has("NumChannels")
                  ? tags.path("NumChannels").asInt()
                  : tags.path("SamplesPerPixel").asInt());
    }
    double perInch =
        switch (tags.path("ResolutionUnit").asInt(0)) {
          case 2 -> tags.path("XResolution").asDouble();
          case 3 -> tags.path("XResolution").asDouble() * 2.54;
          default -> tags.path("PixelsPerUnitX").asDouble() * 0.0254;
        };
    if (perInch > 0) {
      assertThat(Math.round(header.resolution().orElseThrow().across()))
          .isEqualTo(Math.round(perInch));
    }
  }

  @Test
  void thePicturesInOneFileAreThoseThatIdentifyFinds() throws Exception {
    var file = folder.resolve("three.tif");
    run("convert", "-size", "60x40", "xc:red", "xc:blue", "xc:green", file.toString());
    assertThat(header(file).pages())
        .isEqualTo(run("identify", file.toString()).lines().toList().size());
  }

  @ParameterizedTest
  @CsvSource({"psd", "psb"})
  void theLayersAreThoseThatExiftoolCounts(String format) throws Exception {
    var file = folder.resolve("layers." + format);
    run("convert", "-size", "60x40", "xc:red", "xc:blue", "xc:green", "xc:white", file.toString());
    int layers = exiftool(file).path("LayerCount").asInt();
    assertThat(layers).isGreaterThan(1);
    assertThat(header(file).layers()).isEqualTo(layers);
  }

  /** The files that are built here are read by exiftool, too. */
  @Test
  void theLayersOfFilesBuiltByTheSpecificationAreThoseThatExiftoolCounts() throws Exception {
    var file = folder.resolve("layers.tif");
    for (var order : List.of(ByteOrder.BIG_ENDIAN, ByteOrder.LITTLE_ENDIAN)) {
      Files.write(file, PictureHeaderTest.tiff(order, 1, PictureHeaderTest.layersOfTiff(order, 5)));
      assertThat(header(file).layers())
          .as("%s", order)
          .isEqualTo(exiftool(file).path("LayerCount").asInt())
          .isEqualTo(5);
    }
    for (int version : new int[] {1, 2}) {
      var deep = PictureHeaderTest.deepLayers(version, 6);
      Files.write(file, PictureHeaderTest.psd(version, 3, 16, 3, new byte[0], deep));
      assertThat(header(file).layers())
          .as("version %d", version)
          .isEqualTo(exiftool(file).path("LayerCount").asInt())
          .isEqualTo(6);
    }
  }

  private static Stream<Path> real() throws IOException {
    return RealFrames.found().stream();
  }

  @Test
  void theHeadersOfRealFramesAreThoseThatExiftoolReads() throws Exception {
    for (var file : real().toList()) {
      switch (FileRole.of(file).orElseThrow()) {
        case RAW ->
            assertThat(PictureHeader.of(file)).isInstanceOf(PictureHeader.Reading.NotRead.class);
        case JPEG -> {
          var header = header(file);
          var tags =
              new JsonMapper()
                  .readTree(
                      run("exiftool", "-j", "-n", "-File:all", "-ICC_Profile:all", file.toString()))
                  .get(0);
          assertThat(header.size().width()).isEqualTo(tags.path("ImageWidth").asInt());
          assertThat(header.size().height()).isEqualTo(tags.path("ImageHeight").asInt());
          assertThat(header.colour().bits()).isEqualTo(tags.path("BitsPerSample").asInt());
          assertThat(header.colour().channels()).isEqualTo(tags.path("ColorComponents").asInt());
          assertThat(header.profile().map(PictureHeader.Profile::description).orElse(""))
              .isEqualTo(tags.path("ProfileDescription").asText(""));
        }
        default -> {}
      }
    }
  }
}
