package org.framewright;

import static com.tngtech.archunit.core.domain.JavaCall.Predicates.target;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.framewright.AssertThat.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.framewright.base.DurableFiles;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The shape of the house: which room may know which, and the format of every source. */
@Tag("slow")
class HouseTest {
  private static final Path MAIN = Path.of("src/main/java/org/framewright");

  /** Each room, and the rooms that it may know. */
  private static final Map<String, List<String>> ARROWS = new LinkedHashMap<>();

  static {
    ARROWS.put("base", List.of());
    ARROWS.put("naming", List.of());
    ARROWS.put("renaming", List.of());
    ARROWS.put("shotlist", List.of());
    ARROWS.put("frames", List.of("shotlist"));
    ARROWS.put("job", List.of("naming", "renaming", "shotlist", "frames"));
    ARROWS.put("live", List.of("shotlist", "frames", "job"));
    ARROWS.put("share", List.of("shotlist", "frames", "job", "day", "live", "studio"));
    ARROWS.put("mhl", List.of("renaming"));
    ARROWS.put("handoff", List.of("naming", "renaming", "shotlist", "frames", "job", "mhl"));
    ARROWS.put("copies", List.of("renaming", "frames", "job", "mhl"));
    ARROWS.put("day", List.of("shotlist", "frames", "job"));
    ARROWS.put(
        "ready",
        List.of("naming", "renaming", "shotlist", "frames", "job", "handoff", "copies", "day"));
    ARROWS.put("studio", List.of("naming", "shotlist", "frames", "job", "copies", "day", "live"));
    ARROWS.put("report", List.of("shotlist", "frames", "job", "handoff", "copies", "day"));
    ARROWS.put(
        "sample",
        List.of(
            "naming",
            "renaming",
            "shotlist",
            "frames",
            "job",
            "handoff",
            "copies",
            "day",
            "ready"));
    ARROWS.put(
        "ui",
        List.of(
            "naming",
            "renaming",
            "shotlist",
            "frames",
            "job",
            "live",
            "mhl",
            "handoff",
            "copies",
            "day",
            "ready",
            "report",
            "share",
            "studio",
            "sample"));
    ARROWS.put(
        "cli",
        List.of(
            "naming",
            "renaming",
            "shotlist",
            "frames",
            "job",
            "live",
            "mhl",
            "handoff",
            "copies",
            "day",
            "ready",
            "report",
            "share",
            "studio",
            "sample",
            "ui"));
  }

  private static final List<String> PAGES =
      List.of(
          "board",
          "client",
          "copies",
          "day",
          "frames",
          "handoff",
          "help",
          "lists",
          "naming",
          "preferences",
          "renaming",
          "sets",
          "share",
          "start");

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("org.framewright");

  @Test
  void arrowsBetweenTheRoomsGoOneWay() {
    ARROWS.forEach(
        (room, known) -> {
          var forbidden =
              ARROWS.keySet().stream()
                  .filter(other -> !other.equals(room) && !other.equals("base"))
                  .filter(other -> !known.contains(other))
                  .map(other -> "org.framewright." + other + "..")
                  .toArray(String[]::new);
          if (forbidden.length > 0) {
            noClasses()
                .that()
                .resideInAPackage("org.framewright." + room + "..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(forbidden)
                .allowEmptyShould(true)
                .check(CLASSES);
          }
        });
  }

  @Test
  void noTypeOfTheToolkitIsKnownOutsideTheUi() {
    noClasses()
        .that()
        .resideOutsideOfPackage("org.framewright.ui..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("javafx..", "org.controlsfx..")
        .allowEmptyShould(true)
        .check(CLASSES);
  }

  /** They are large and slow to begin with; a command that prints nothing must not load them. */
  @Test
  void whatSetsReportsOnPaperIsKnownToTheRoomOfReportsOnly() {
    noClasses()
        .that()
        .resideOutsideOfPackage("org.framewright.report..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("com.openhtmltopdf..", "org.apache.pdfbox..", "org.apache.fontbox..")
        .check(CLASSES);
  }

  /** A job folder is whole without a server; whoever has none must not load what talks to one. */
  @Test
  void theServerIsKnownToTheRoomOfTheStudioOnly() {
    noClasses()
        .that()
        .resideOutsideOfPackage("org.framewright.studio..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("java.sql..", "com.zaxxer..", "org.flywaydb..", "org.postgresql..")
        .check(CLASSES);
  }

  @Test
  void noPackagesKnowEachOtherInACircle() {
    slices().matching("org.framewright.(**)").should().beFreeOfCycles().check(CLASSES);
  }

  @Test
  void noPageOfTheAppKnowsAnother() {
    for (var page : PAGES) {
      noClasses()
          .that()
          .resideInAPackage("org.framewright.ui." + page + "..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              PAGES.stream()
                  .filter(other -> !other.equals(page))
                  .map(other -> "org.framewright.ui." + other + "..")
                  .toArray(String[]::new))
          .check(CLASSES);
    }
  }

  @Test
  void noModelKnowsAControl() {
    noClasses()
        .that()
        .haveNameMatching(".*Model(\\$.*)?")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("javafx.scene..", "javafx.stage..", "org.controlsfx..")
        .check(CLASSES);
  }

  /** The toolkit throws or paints twice where it wraps text of some scripts itself. */
  @Test
  void theToolkitWrapsNoText() {
    noClasses()
        .should()
        .callMethodWhere(target(nameMatching("setWrapText|setWrappingWidth")))
        .orShould()
        .dependOnClassesThat()
        .haveSimpleName("TextFlow")
        .check(CLASSES);
  }

  @Test
  void everyRoomIsOnTheMapAndSaysItsDatasWay() throws Exception {
    var rooms = new TreeSet<String>();
    try (var folders = Files.list(MAIN)) {
      folders
          .filter(Files::isDirectory)
          .forEach(folder -> rooms.add(folder.getFileName().toString()));
    }
    assertThat(ARROWS.keySet()).containsAll(rooms);
    try (var folders = Files.walk(MAIN)) {
      var silent =
          folders
              .filter(Files::isDirectory)
              .filter(folder -> !folder.equals(MAIN))
              .filter(folder -> !Files.exists(folder.resolve("package-info.java")))
              .toList();
      assertThat(silent).isEmpty();
    }
  }

  @Test
  @Tag("slow")
  void everySourceIsInTheHousesFormat() throws Exception {
    var misformatted = new ArrayList<Path>();
    for (var file : HouseFormat.sources()) {
      var source = Files.readString(file);
      if (!HouseFormat.formatted(source).equals(source)) {
        misformatted.add(file);
      }
    }
    assertThat(misformatted.stream().map(Path::toString).collect(Collectors.joining("\n")))
        .as("Run mvn -q -Pformat to fix these")
        .isEmpty();
  }

  @Test
  void testsAskByTheFewAssertionsThatCompileFast() throws Exception {
    var slow = new ArrayList<Path>();
    for (var file : HouseFormat.sources()) {
      var imports = "import static org.assertj.core.api.Assertions." + "assertThat;";
      if (Files.readString(file).contains(imports)) {
        slow.add(file);
      }
    }
    assertThat(slow).as("Import assertThat from " + AssertThat.class.getName()).isEmpty();
  }

  /** On Windows it is a deletion and then a move; a crash between loses both files. */
  @Test
  void whatReplacesAFileIsOneStepOfTheFileSystem() {
    noClasses()
        .that()
        .doNotHaveFullyQualifiedName(DurableFiles.class.getName())
        .should()
        .accessField(StandardCopyOption.class, "REPLACE_EXISTING")
        .check(CLASSES);
  }
}
