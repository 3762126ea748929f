package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Files of real bodies, read here and by two programs that know nothing of this one. */
class RealFramesTest {

  @TestFactory
  Stream<DynamicTest> readsWhatExiftoolReads() throws IOException {
    return each(RealFramesTest::agreesWithExiftool);
  }

  @TestFactory
  Stream<DynamicTest> readsWhatExiv2Reads() throws IOException {
    return each(RealFramesTest::agreesWithExiv2);
  }

  /** How the picture data were stripped from these files leaves each container whole. */
  @TestFactory
  Stream<DynamicTest> findsTheContainersWhole() throws IOException {
    return each(file -> assertThat(reading(file).whole()).isTrue());
  }

  private interface Check {
    void of(Path file) throws IOException, InterruptedException;
  }

  private static Stream<DynamicTest> each(Check check) throws IOException {
    return RealFrames.found().stream()
        .map(file -> DynamicTest.dynamicTest(file.getFileName().toString(), () -> check.of(file)));
  }

  private static void agreesWithExiftool(Path file) throws IOException, InterruptedException {
    var output =
        run(
            "exiftool",
            "-j",
            "-EXIF:DateTimeOriginal",
            "-EXIF:SubSecTimeOriginal",
            "-EXIF:OffsetTimeOriginal",
            "-EXIF:Make",
            "-EXIF:Model",
            "-EXIF:SerialNumber",
            "-EXIF:Orientation#",
            "-XMP:Rating",
            file.toString());
    var reference = new JsonMapper().readTree(output).get(0);
    var capture = reading(file).capture();
    if (FileRole.of(file).orElseThrow() == FileRole.SIDECAR) {
      assertThat(rating(capture)).isEqualTo(text(reference, "Rating"));
      return;
    }
    assertThat(capture.time())
        .isEqualTo(
            time(text(reference, "DateTimeOriginal"), text(reference, "SubSecTimeOriginal")));
    assertThat(capture.offset())
        .isEqualTo(text(reference, "OffsetTimeOriginal").map(ZoneOffset::of));
    assertThat(capture.camera().map(Camera::make).orElse(""))
        .isEqualTo(text(reference, "Make").orElse(""));
    assertThat(capture.camera().map(Camera::model).orElse(""))
        .isEqualTo(text(reference, "Model").orElse(""));
    text(reference, "SerialNumber")
        .ifPresent(serial -> assertThat(capture.camera().orElseThrow().serial()).isEqualTo(serial));
    try (var bytes = Bytes.open(file)) {
      assertThat(Contents.of(bytes).orientation())
          .isEqualTo(text(reference, "Orientation").map(Integer::parseInt).orElse(1));
    }
  }

  private static void agreesWithExiv2(Path file) throws IOException, InterruptedException {
    var role = FileRole.of(file).orElseThrow();
    Assumptions.assumeTrue(role.isPicture(), "exiv2 is asked for Exif, which a sidecar has not");
    var reference = new HashMap<String, String>();
    for (var line : run("exiv2", "-PEkv", file.toString()).lines().toList()) {
      var parts = line.split("\\s+", 2);
      reference.putIfAbsent(parts[0], parts.length > 1 ? parts[1].strip() : "");
    }
    Assumptions.assumeFalse(
        reference.isEmpty(), "exiv2 of this build reads no Exif in " + file.getFileName());
    var capture = reading(file).capture();
    assertThat(capture.time())
        .isEqualTo(
            time(
                value(reference, "Exif.Photo.DateTimeOriginal"),
                value(reference, "Exif.Photo.SubSecTimeOriginal")));
    assertThat(capture.camera().map(Camera::make).orElse(""))
        .isEqualTo(reference.getOrDefault("Exif.Image.Make", ""));
    assertThat(capture.camera().map(Camera::model).orElse(""))
        .isEqualTo(reference.getOrDefault("Exif.Image.Model", ""));
  }

  private static FileReading reading(Path file) {
    return FileReading.of(file, FileRole.of(file).orElseThrow(), new Bytes.Room()).orElseThrow();
  }

  private static Optional<String> rating(Capture capture) {
    return capture.rating().stream().mapToObj(String::valueOf).findFirst();
  }

  private static Optional<LocalDateTime> time(Optional<String> text, Optional<String> fraction) {
    return text.map(
        exif -> {
          var iso = exif.substring(0, 10).replace(':', '-') + 'T' + exif.substring(11);
          return LocalDateTime.parse(iso + fraction.map(digits -> "." + digits).orElse(""));
        });
  }

  private static Optional<String> text(JsonNode reference, String key) {
    return Optional.ofNullable(reference.get(key)).map(node -> node.asText().strip());
  }

  private static Optional<String> value(Map<String, String> reference, String key) {
    return Optional.ofNullable(reference.get(key));
  }

  private static String run(String... command) throws IOException, InterruptedException {
    var words = new ArrayList<>(List.of(command));
    try {
      var process =
          new ProcessBuilder(words).redirectError(ProcessBuilder.Redirect.DISCARD).start();
      var output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      process.waitFor();
      return output;
    } catch (IOException e) {
      return Assumptions.abort(command[0] + " is not here");
    }
  }
}
