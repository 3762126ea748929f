package org.framewright;

import com.google.googlejavaformat.java.Formatter;
import com.google.googlejavaformat.java.FormatterException;
import com.google.googlejavaformat.java.ImportOrderer;
import com.google.googlejavaformat.java.JavaFormatterOptions;
import com.google.googlejavaformat.java.RemoveUnusedImports;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * The house's format, google-java-format: {@code mvn -q -Pformat} applies it, {@link HouseTest}
 * holds it.
 */
final class HouseFormat {
  private HouseFormat() {}

  public static void main(String[] args) throws Exception {
    for (var file : sources()) {
      var before = Files.readString(file);
      var after = formatted(before);
      if (!before.equals(after)) {
        Files.writeString(file, after);
        System.out.println("formatted " + file);
      }
    }
  }

  static List<Path> sources() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src"))) {
      return files.filter(file -> file.toString().endsWith(".java")).sorted().toList();
    }
  }

  static String formatted(String source) throws FormatterException {
    var organised =
        ImportOrderer.reorderImports(
            RemoveUnusedImports.removeUnusedImports(source), JavaFormatterOptions.Style.GOOGLE);
    return new Formatter().formatSource(organised);
  }
}
