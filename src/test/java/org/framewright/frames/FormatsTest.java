package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every format that is a frame, built from published layouts, read here and by exiftool. */
class FormatsTest {
  private static final LocalDateTime TIME = TestFormats.TIME;

  @TempDir Path folder;

  private static Map<String, byte[]> all() {
    var all = new LinkedHashMap<>(TestFormats.all());
    for (var ending : TestFormats.TIFF_RAWS) {
      all.put("tiff." + ending, TestFormats.tiff(42));
    }
    // ORF and RW2 have other numbers where TIFF has 42.
    all.put("tiff.orf", TestFormats.tiff(0x4F52));
    all.put("sr.orf", TestFormats.tiff(0x5352));
    all.put("a.rwl", TestFormats.tiff(0x0055));
    return all;
  }

  private FileReading read(String name, byte[] content) throws IOException {
    var file = Files.write(folder.resolve(name), content);
    var role = FileRole.of(file).orElseThrow();
    return FileReading.of(file, role, new Bytes.Room()).orElseThrow();
  }

  @Test
  void eachIsWholeAndSaysWhenItWasTaken() throws IOException {
    for (var format : all().entrySet()) {
      var reading = read(format.getKey(), format.getValue());
      assertThat(reading.whole()).as(format.getKey()).isTrue();
      assertThat(reading.problem()).as(format.getKey()).isEmpty();
      var taken = reading.capture();
      // Clips that give an offset were filmed an hour ahead of UTC.
      var hour = taken.offset().map(ZoneOffset::getTotalSeconds).orElse(0) / 3600;
      var expected =
          format.getKey().startsWith("fields") ? TIME.plusHours(1) : TIME.plusHours(hour);
      assertThat(taken.time().map(time -> time.withNano(0))).as(format.getKey()).contains(expected);
    }
  }

  @Test
  void noneThatIsCutIsTakenForWhole() throws IOException {
    for (var format : all().entrySet()) {
      int whole = format.getValue().length;
      for (int part = 1; part < 12; part++) {
        var cut = java.util.Arrays.copyOf(format.getValue(), whole * part / 12);
        var reading = read(format.getKey(), cut);
        assertThat(reading.whole() && !reading.hollow())
            .as("%s cut to %d of %d", format.getKey(), cut.length, whole)
            .isFalse();
      }
    }
  }

  @Tag("slow")
  @Test
  void exiftoolReadsTheSameOfEach() throws Exception {
    for (var format : all().entrySet()) {
      Files.write(folder.resolve(format.getKey()), format.getValue());
    }
    var reference = exiftool();
    var all = new org.assertj.core.api.SoftAssertions();
    for (var name : all().keySet()) {
      var theirs = reference.get(name);
      var ours = read(name, all().get(name)).capture();
      all.assertThat(ours.time().map(time -> time.withNano(0)))
          .as("time of %s: %s", name, theirs)
          .isEqualTo(time(theirs));
      all.assertThat(ours.camera().map(Camera::make).orElse(""))
          .as("make of %s: %s", name, theirs)
          .isEqualTo(text(theirs, "Make").or(() -> text(theirs, "DeviceManufacturer")).orElse(""));
      all.assertThat(ours.camera().map(Camera::model).orElse(""))
          .as("model of %s: %s", name, theirs)
          .isEqualTo(text(theirs, "Model").or(() -> text(theirs, "DeviceModelName")).orElse(""));
      if (name.endsWith(".crw")) {
        continue; // exiftool reads the number of bodies that it knows by name only.
      }
      all.assertThat(ours.camera().map(Camera::serial).orElse(""))
          .as("serial of %s: %s", name, theirs)
          .isEqualTo(
              text(theirs, "SerialNumber").or(() -> text(theirs, "DeviceSerialNo")).orElse(""));
    }
    all.assertAll();
  }

  private Map<String, JsonNode> exiftool() throws Exception {
    try {
      var process =
          new ProcessBuilder("exiftool", "-j", "-api", "LargeFileSupport=1", folder.toString())
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
      var output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      process.waitFor();
      var byName = new HashMap<String, JsonNode>();
      new JsonMapper()
          .readTree(output)
          .forEach(one -> byName.put(one.get("FileName").asText(), one));
      return byName;
    } catch (IOException e) {
      return Assumptions.abort("exiftool is not here");
    }
  }

  private static Optional<LocalDateTime> time(JsonNode theirs) {
    for (var key :
        List.of(
            "DateTimeOriginal",
            "CreationDate",
            "ContentCreateDate",
            "CreationDateValue",
            "CreateDate",
            "PackageCreationDate")) {
      var text = text(theirs, key);
      if (text.isPresent()) {
        var exif = text.get();
        return Optional.of(
            LocalDateTime.parse(
                exif.substring(0, 10).replace(':', '-') + 'T' + exif.substring(11, 19)));
      }
    }
    return Optional.empty();
  }

  private static Optional<String> text(JsonNode theirs, String key) {
    return Optional.ofNullable(theirs.get(key)).map(node -> node.asText().strip());
  }
}
