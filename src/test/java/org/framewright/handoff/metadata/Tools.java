package org.framewright.handoff.metadata;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Assumptions;

/** Independent readers of metadata: exiftool and exiv2, where they are installed. */
public final class Tools {
  private Tools() {}

  private static String run(String... words) throws Exception {
    try {
      var process = new ProcessBuilder(words).redirectErrorStream(false).start();
      process.getOutputStream().close();
      var said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      process.waitFor();
      return said;
    } catch (IOException e) {
      Assumptions.abort("there is no " + words[0] + " here");
      return "";
    }
  }

  /** All XMP of a file, structs as structs and values as they are written. */
  public static JsonNode exiftool(Path file) throws Exception {
    return new JsonMapper()
        .readTree(run("exiftool", "-j", "-struct", "-n", "-XMP:all", file.toString()))
        .get(0);
  }

  /** All tags of a file but those of the file itself, each with its group. */
  static List<String> tags(Path file, String... more) throws Exception {
    var words = new ArrayList<>(List.of("exiftool", "-G1", "-a", "-s", "-struct", "--System:all"));
    words.addAll(List.of(more));
    words.add(file.toString());
    return run(words.toArray(String[]::new)).lines().toList();
  }

  /** What exiftool finds wrong with a file. */
  public static Set<String> warnings(Path file) throws Exception {
    var said = run("exiftool", "-validate", "-warning", "-error", "-a", file.toString());
    return new TreeSet<>(said.lines().filter(line -> !line.startsWith("Validate")).toList());
  }

  /** Each line of XMP that exiv2 reads: a key, its type and its value. */
  static List<String> exiv2(Path file) throws Exception {
    return Arrays.stream(run("exiv2", "-PXkv", file.toString()).split("\n", -1))
        .map(line -> line.replaceAll("\\s+", " ").strip())
        .filter(line -> !line.isEmpty())
        .toList();
  }
}
