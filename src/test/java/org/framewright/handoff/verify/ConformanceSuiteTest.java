package org.framewright.handoff.verify;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.framewright.Standards;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;

/** The BagIt conformance suite of the Library of Congress: 60 bags of all versions. */
class ConformanceSuiteTest {
  /** By the suite's own README, bags in these folders have to pass. */
  private static final List<String> GOOD = List.of("valid", "warning");

  /** Bags that name files which a copy of the suite may lack: a Git or a Mac does not keep them. */
  private static final Map<String, String> LOSES =
      Map.of(
          "special-system-files", "data/.DS_Store",
          "duplicate-file-with-different-case", "data/HELLO.txt");

  private static List<Path> bags() throws IOException {
    try (var all = Files.walk(Standards.bagit(), 3)) {
      return all.filter(path -> Standards.bagit().relativize(path).getNameCount() == 3)
          .filter(Files::isDirectory)
          .sorted()
          .toList();
    }
  }

  private static boolean isGood(Path bag) {
    var lost = LOSES.get(bag.getFileName().toString());
    return GOOD.contains(bag.getParent().getFileName().toString())
        && (lost == null || Files.exists(bag.resolve(lost)));
  }

  @Test
  void everyBagIsJudgedAsTheSuiteAndTheReferenceLibraryJudgeIt(TestReporter reporter)
      throws Exception {
    var wrong = new TreeMap<String, String>();
    for (var bag : bags()) {
      var check = OpenPackage.check(bag).orElseThrow();
      var reference = BagScene.reference(bag);
      if (check.whole() != isGood(bag) || check.whole() != reference.isEmpty()) {
        wrong.put(bag.toString(), PackageDescription.problems(check) + ", reference " + reference);
      }
    }
    assertThat(wrong).isEmpty();
    reporter.publishEntry("bags", bags().size() + ", verdicts as the suite has them: all");
    assertThat(bags()).hasSize(60);
  }

  @Test
  void everyBagThatIsToBeWarnedOfIsWarnedOf() throws Exception {
    for (var bag : bags()) {
      if (bag.getParent().endsWith("warning")) {
        assertThat(OpenPackage.check(bag).orElseThrow().warnings()).as(bag.toString()).isNotEmpty();
      }
    }
  }

  @Test
  void whatLeadsOutOfABagIsRefusedForThatAndNotForAnythingElse() throws Exception {
    for (var bag : bags()) {
      if (bag.getFileName().toString().startsWith("out-of-scope")) {
        assertThat(PackageDescription.problems(OpenPackage.check(bag).orElseThrow()))
            .as(bag.toString())
            .isNotEmpty()
            .allMatch(
                problem ->
                    problem.contains("leads out of the package")
                        || problem.contains("is not below data/"));
      }
    }
  }
}
