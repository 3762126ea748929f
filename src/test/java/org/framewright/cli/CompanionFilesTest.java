package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.cli.Ran.run;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Companions and clips go with the frames, from the command line to the package and back. */
@Tag("slow")
class CompanionFilesTest {
  @TempDir private Path folder;
  private Path job;
  private Path frames;

  /** One frame of raw and JPEG with all kinds of companions, one clip with its own. */
  @BeforeEach
  void aJobWithCompanions() throws IOException {
    var list = Files.writeString(folder.resolve("list.csv"), "Look;Name;Views\n001;Coat;F\n");
    done(
        "start",
        "--by",
        "templates/fashion-days.yaml",
        "--in",
        folder,
        "day=2026-11-23",
        "client=KVO",
        "title=look book");
    job = folder.resolve("2026-11-23_KVO_look-book");
    frames = job.resolve("01_frames");
    done("list", job, "--import", list);
    new SampleCamera(
            SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.RAW_AND_JPEG, 17)
        .take(Exposure.of(Instant.parse("2026-11-23T09:00:00Z"), "001", "F"))
        .writeTo(frames);
    for (var name :
        Set.of("IMG_0017.WAV", "IMG_0017.DNG.xmp", "IMG_0017.xmp", "IMG_0017.DNG.settings")) {
      Files.writeString(frames.resolve(name), name.endsWith("xmp") ? sidecar() : name);
    }
    Files.write(frames.resolve("C0001.MP4"), clip());
    Files.writeString(frames.resolve("C0001M01.XML"), "<x/>");
    Files.writeString(frames.resolve("C0001.xmp"), sidecar());
    run("frames", job, "--move", "IMG_0017..IMG_0017", "001", "--view", "F");
    done("frames", job, "--move", "C0001", "001", "--view", "F");
  }

  private static Ran done(Object... words) {
    var ran = run(words);
    assertThat(ran.status()).as(ran.err()).isZero();
    return ran;
  }

  private static String sidecar() {
    return """
        <x:xmpmeta xmlns:x="adobe:ns:meta/">
         <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
          <rdf:Description rdf:about="" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmp:Rating="5"/>
         </rdf:RDF>
        </x:xmpmeta>
        """;
  }

  /** The least that is a movie by ISO/IEC 14496-12; filmed at 2026-11-23T09:30:00Z. */
  private static byte[] clip() {
    var header = ByteBuffer.allocate(24 + 8 + 108 + 8 + 100);
    header.putInt(24).put("ftypmp42\0\0\0\0mp42isom".getBytes(StandardCharsets.US_ASCII));
    header.putInt(116).put("moov".getBytes(StandardCharsets.US_ASCII));
    header.putInt(108).put("mvhd".getBytes(StandardCharsets.US_ASCII));
    header.putInt(0);
    header.putInt((int) (Instant.parse("2026-11-23T09:30:00Z").getEpochSecond() + 2_082_844_800L));
    header.position(24 + 116);
    header.putInt(108).put("mdat".getBytes(StandardCharsets.US_ASCII));
    while (header.hasRemaining()) {
      header.put((byte) 7);
    }
    return header.array();
  }

  private static Map<String, String> contents(Path folder) throws IOException {
    var contents = new TreeMap<String, String>();
    try (var files = Files.walk(folder)) {
      for (var file : files.filter(Files::isRegularFile).toList()) {
        contents.put(
            folder.relativize(file).toString().replace('\\', '/'),
            new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1));
      }
    }
    return contents;
  }

  @Test
  void clipsAreCountedApartAndCompanionsWithTheirFrames() throws IOException {
    assertThat(done("frames", job).out().lines())
        .containsExactly("1 frame, 1 clip, 9 files", "  001: 1 (F 1), 1 clip");
    var json = done("frames", job, "--json").json();
    assertThat(json.path("frames").asInt()).isEqualTo(1);
    assertThat(json.path("clips").asInt()).isEqualTo(1);
    assertThat(json.at("/bySetup/001/clips").asInt()).isEqualTo(1);
    assertThat(json.at("/bySetup/001/frames").asInt()).isEqualTo(1);
    assertThat(json.path("notUnderstood")).isEmpty();
  }

  @Test
  void aRenameTakesThemAlongAndUndoBringsAllBack() throws IOException {
    var before = contents(frames);
    done("rename", job);
    var after = contents(frames);
    assertThat(after)
        .containsOnlyKeys(
            "20261123_KVO_001_F_0001.DNG",
            "20261123_KVO_001_F_0001.JPG",
            "20261123_KVO_001_F_0001.WAV",
            "20261123_KVO_001_F_0001.DNG.xmp",
            "20261123_KVO_001_F_0001.xmp",
            "20261123_KVO_001_F_0001.DNG.settings",
            "20261123_KVO_001_F_0002.MP4",
            "20261123_KVO_001_F_0002M01.XML",
            "20261123_KVO_001_F_0002.xmp");
    assertThat(new HashSet<>(after.values())).isEqualTo(new HashSet<>(before.values()));
    assertThat(after.get("20261123_KVO_001_F_0001.DNG.settings"))
        .isEqualTo("IMG_0017.DNG.settings");
    assertThat(done("frames", job).out().lines()).contains("1 frame, 1 clip, 9 files");
    // What has its name keeps it.
    assertThat(done("rename", job).out()).contains("No file was renamed");
    done("undo", job);
    assertThat(contents(frames)).isEqualTo(before);
  }

  @Test
  void aHandOffTakesThemAlongUnderTheSelectsName() throws IOException {
    done("rename", job);
    var target = folder.resolve("package");
    var delivered = done("deliver", job, "--to", target, "--rating", "5", "--json").json();
    assertThat(delivered.path("files").asInt()).isEqualTo(9);
    var payload = contents(target.resolve("data"));
    assertThat(payload)
        .containsKeys(
            "KVO_001_F_0001.DNG",
            "KVO_001_F_0001.JPG",
            "KVO_001_F_0001.WAV",
            "KVO_001_F_0001.DNG.xmp",
            "KVO_001_F_0001.xmp",
            "KVO_001_F_0001.DNG.settings",
            "KVO_001_F_0002.MP4",
            "KVO_001_F_0002M01.XML",
            "KVO_001_F_0002.xmp");
    assertThat(payload.get("KVO_001_F_0001.WAV")).isEqualTo("IMG_0017.WAV");
  }

  @Test
  void whatIsNotUnderstoodIsToldEverywhereAndStaysAsItIs() throws IOException {
    for (var name : Set.of("a.xyz", "b.xyz", "c.abc", "d.xmp")) {
      Files.writeString(frames.resolve(name), name.endsWith("xmp") ? sidecar() : name);
    }
    var counted = done("frames", job);
    assertThat(counted.out().lines())
        .contains(
            "4 files are not understood: .XYZ, .ABC, .XMP",
            "  01_frames/a.xyz: no picture or clip that is known here ends in .XYZ, and no frame"
                + " here has its name",
            "  01_frames/d.xmp: it is a sidecar, and the picture that it belongs to is not here");
    var json = done("frames", job, "--json").json();
    assertThat(json.path("notUnderstood").findValuesAsText("file"))
        .containsExactly(
            "01_frames/a.xyz", "01_frames/b.xyz", "01_frames/c.abc", "01_frames/d.xmp");
    assertThat(json.at("/notUnderstood/0/why").asText()).contains(".XYZ");
    assertThat(done("frames", job, "--watch", "--for", "0").out()).contains("not understood 4");
    var told = "4 files are not understood: .XYZ, .ABC, .XMP. They keep their names";
    assertThat(done("rename", job, "--preview").err()).contains(told);
    assertThat(done("rename", job).err()).contains(told);
    assertThat(frames.resolve("a.xyz")).exists();
    var target = folder.resolve("package");
    assertThat(done("deliver", job, "--to", target, "--rating", "5").err())
        .contains("4 files are not understood: .XYZ, .ABC, .XMP. They are not handed off");
    Files.delete(frames.resolve("b.xyz"));
    Files.delete(frames.resolve("c.abc"));
    Files.delete(frames.resolve("d.xmp"));
    assertThat(done("frames", job).out()).contains("1 file is not understood: .XYZ");
  }

  @Test
  void aCompanionInTheWayBlocksTheWholeFrame() throws IOException {
    Files.writeString(frames.resolve("20261123_KVO_001_F_0001.WAV"), "another one's");
    var ran = run("rename", job);
    assertThat(ran.status()).isEqualTo(1);
    assertThat(contents(frames)).containsKeys("IMG_0017.DNG", "IMG_0017.WAV", "IMG_0017.xmp");
    assertThat(Files.readString(frames.resolve("20261123_KVO_001_F_0001.WAV")))
        .isEqualTo("another one's");
  }
}
