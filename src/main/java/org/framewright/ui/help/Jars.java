package org.framewright.ui.help;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipFile;

/** The libraries that run now, by the names of their files: {@code picocli-4.7.7.jar}. */
record Jars(List<Path> files) {
  private static final Pattern VERSIONED =
      Pattern.compile("(.+?)-(\\d[\\w.]*(?:-[\\w.]*\\d[\\w.]*)?)(?:-[a-z][\\w-]*)?\\.jar");

  private static final Pattern NOTICE =
      Pattern.compile("(?:META-INF/)?NOTICE(?:\\.txt|\\.md)?", Pattern.CASE_INSENSITIVE);

  /** What a notice holds at most, in bytes. */
  private static final int MOST = 200_000;

  Jars {
    files = List.copyOf(files);
  }

  /** Those on the class path and on the path of modules. */
  static Jars running() {
    return new Jars(
        Stream.of("java.class.path", "jdk.module.path")
            .map(property -> System.getProperty(property, ""))
            .flatMap(paths -> Arrays.stream(paths.split(Pattern.quote(File.pathSeparator), -1)))
            .filter(path -> path.endsWith(".jar"))
            .map(Path::of)
            .toList());
  }

  /** A library's name, without version and system. */
  static String library(Path file) {
    var name = VERSIONED.matcher(file.getFileName().toString());
    return name.matches() ? name.group(1) : file.getFileName().toString();
  }

  private Stream<Path> of(String library) {
    return files.stream().filter(file -> library(file).equals(library));
  }

  /** The version of a library, if its file is named after one. */
  Optional<String> version(String library) {
    return of(library)
        .map(file -> VERSIONED.matcher(file.getFileName().toString()))
        .filter(name -> name.matches())
        .map(name -> name.group(2))
        .findFirst();
  }

  /** What libraries want to be said beside their licence; empty where they say nothing. */
  String notices(List<String> libraries) {
    return libraries.stream()
        .flatMap(this::of)
        .map(Jars::notice)
        .filter(text -> !text.isEmpty())
        .distinct()
        .collect(Collectors.joining("\n\n"));
  }

  private static String notice(Path jar) {
    try (var zip = new ZipFile(jar.toFile())) {
      var entry = zip.stream().filter(one -> NOTICE.matcher(one.getName()).matches()).findFirst();
      if (entry.isEmpty()) {
        return "";
      }
      try (var in = zip.getInputStream(entry.get())) {
        return new String(in.readNBytes(MOST), UTF_8).strip();
      }
    } catch (IOException _) {
      return ""; // The licence itself is shown all the same.
    }
  }
}
