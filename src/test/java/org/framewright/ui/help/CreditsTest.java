package org.framewright.ui.help;

import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the program is made of is told whole, each part with its licence. */
class CreditsTest {
  private static final Path FOLDER = Path.of("src/main/licences");
  private static final Path OURS = Path.of("LICENSE");

  private final Credits credits;

  CreditsTest() throws IOException {
    credits = Credits.read(FOLDER, OURS);
  }

  /** Maven writes down what it runs the program with. */
  private static Set<String> libraries() throws IOException {
    var list = Path.of("target/runtime.classpath");
    assumeTrue(Files.exists(list), "Maven did not say what the program runs with.");
    return Stream.of(Files.readString(list).strip().split(Pattern.quote(File.pathSeparator), -1))
        .map(path -> Jars.library(Path.of(path)))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  @Test
  void everyLibraryThatTheProgramRunsWithIsTold() throws IOException {
    var told =
        credits.parts().stream()
            .flatMap(part -> part.files().stream())
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(told).containsAll(libraries());
  }

  @Test
  void nothingIsToldThatIsNotThere() throws IOException {
    var there = libraries();
    var inTheProgram = Stream.of("Noto Sans", "Source Code Pro", "Droid Sans Fallback").toList();
    for (var part : credits.parts()) {
      for (var file : part.files()) {
        assertThat(there.contains(file) || inTheProgram.stream().anyMatch(file::startsWith))
            .as(file)
            .isTrue();
      }
    }
  }

  @Test
  void everyPartHasAWholeLicence() {
    assertThat(credits.parts()).hasSizeGreaterThan(25);
    for (var part : credits.parts()) {
      assertThat(part.text().length()).as(part.name()).isGreaterThan(500);
      assertThat(part.licence()).as(part.name()).isNotEmpty();
      assertThat(part.does()).as(part.name()).isNotEmpty();
    }
  }

  @Test
  void everyTextOfALicenceBelongsToAPart() throws IOException {
    var list = Files.readString(FOLDER.resolve("README.md"));
    try (var files = Files.list(FOLDER)) {
      assertThat(files.map(file -> file.getFileName().toString()))
          .allSatisfy(
              name ->
                  assertThat(name.equals("README.md") || list.contains(name)).as(name).isTrue());
    }
  }

  @Test
  void theNameOfAFileTellsLibraryAndVersion() {
    var jars =
        new Jars(
            Stream.of(
                    "picocli-4.7.7.jar",
                    "javafx-base-26.0.2-linux.jar",
                    "automaton-1.12-4.jar",
                    "commons-numbers-core-1.2.jar",
                    "core-3.5.3.jar")
                .map(Path::of)
                .toList());
    assertThat(jars.version("picocli")).contains("4.7.7");
    assertThat(jars.version("javafx-base")).contains("26.0.2");
    assertThat(jars.version("automaton")).contains("1.12-4");
    assertThat(jars.version("core")).contains("3.5.3");
    assertThat(jars.version("nothing")).isEmpty();
    assertThat(jars.files().stream().map(Jars::library))
        .containsExactly("picocli", "javafx-base", "automaton", "commons-numbers-core", "core");
  }

  @Test
  void aboutTellsTheProgramFirstAndTheVersionsThatRun() throws IOException {
    var about = AboutModel.read(FOLDER, Path.of("").toAbsolutePath(), "Framewright");
    assertThat(about.lines().getFirst().name()).isEqualTo("Framewright");
    assertThat(about.lines().getFirst().text()).contains("Apache License");
    assertThat(about.java()).startsWith(System.getProperty("java.version"));
    var picocli = about.lines().stream().filter(line -> line.name().equals("picocli")).findFirst();
    assertThat(picocli.orElseThrow().version()).isNotEmpty();
  }

  @Test
  void aNoticeInALibraryStandsBelowItsLicence() throws IOException {
    var about = AboutModel.read(FOLDER, Path.of("").toAbsolutePath(), "Framewright");
    var apache =
        about.lines().stream()
            .filter(line -> line.name().equals("Apache Commons"))
            .map(AboutModel.Line::text)
            .toList();
    assertThat(apache).isNotEmpty().allSatisfy(text -> assertThat(text).contains("NOTICE"));
  }

  @Test
  void aListWithoutATableHasNoParts(@TempDir Path folder) throws IOException {
    Files.writeString(folder.resolve("README.md"), "Nothing.\n");
    assertThat(Credits.read(folder, OURS).parts()).isEqualTo(List.of());
  }
}
