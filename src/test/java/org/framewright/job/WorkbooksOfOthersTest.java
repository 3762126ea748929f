package org.framewright.job;

import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/**
 * Lists as workbooks of other programs' making: of openpyxl, and of LibreOffice, which reads
 * openpyxl's and writes its own. Each comes out as the table of shapes says.
 */
@Tag("slow")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class WorkbooksOfOthersTest {
  private Path folder;
  private Optional<String> python = Optional.empty();

  @BeforeAll
  void makeThem(@TempDir Path folder) throws Exception {
    this.folder = folder;
    for (var command : List.of("python3", "/usr/bin/python3")) {
      if (python.isEmpty() && runs(command, "-c", "import openpyxl")) {
        python = Optional.of(command);
      }
    }
  }

  private static boolean runs(String... command) throws InterruptedException {
    try {
      var process =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      if (!process.waitFor(5, TimeUnit.MINUTES)) {
        process.destroyForcibly();
        return false;
      }
      return process.exitValue() == 0;
    } catch (IOException e) {
      return false;
    }
  }

  private Path made() throws Exception {
    assumeTrue(python.isPresent(), "no openpyxl here (Debian: python3-openpyxl)");
    var made = Files.createDirectories(folder.resolve("made"));
    var script = ListShapesTest.LISTS.resolve("workbooks.py").toString();
    assertThat(runs(python.get(), script, made.toString())).isTrue();
    return made;
  }

  private static List<ListShapesTest.Shape> workbooks() throws IOException {
    return ListShapesTest.shapes().filter(shape -> shape.file().endsWith(".xlsx")).toList();
  }

  private static boolean office(Path target, String format, List<Path> files) throws Exception {
    var command = new ArrayList<String>(List.of("soffice", "--headless"));
    command.add("-env:UserInstallation=" + target.resolve("profile").toUri());
    if (files.getFirst().toString().endsWith(".csv")) {
      // Commas, quotation marks, UTF-8, from the first line: LibreOffice Help, "Filter Options".
      command.add("--infilter=CSV:44,34,76,1");
    }
    command.addAll(List.of("--convert-to", format, "--outdir", target.toString()));
    files.forEach(file -> command.add(file.toString()));
    return runs(command.toArray(String[]::new));
  }

  @Test
  void ofOpenpyxlComeOutAsTheTableSays() throws Exception {
    var made = made();
    for (var shape : workbooks()) {
      var reading = ListShapesTest.read(shape, made);
      assertThat(ListShapesTest.outcome(reading)).as(shape.what()).isEqualTo(shape.outcome());
      assertThat(ListShapesTest.setups(reading)).as(shape.what()).isEqualTo(shape.setups());
      assertThat(ListShapesTest.said(reading)).as(shape.what()).contains(shape.says());
    }
  }

  @Test
  void ofLibreOfficeComeOutTheSameAndHaveTheFormulasValues() throws Exception {
    assumeTrue(runs("soffice", "--version"), "no LibreOffice here");
    var made = made();
    var saved = Files.createDirectories(folder.resolve("saved"));
    try (Stream<Path> files = Files.list(made)) {
      assertThat(office(saved, "xlsx", files.toList())).isTrue();
    }
    for (var shape : workbooks()) {
      var reading = ListShapesTest.read(shape, saved);
      if (shape.file().equals("code-formulas.xlsx")) {
        assertThat(ListShapesTest.setups(reading)).isEqualTo("KV-1 KV-2");
      } else if (shape.file().equals("formulas.xlsx")) {
        assertThat(ListShapesTest.said(reading)).contains("framesWanted=OptionalInt[6]");
      } else {
        assertThat(ListShapesTest.outcome(reading)).as(shape.what()).isEqualTo(shape.outcome());
        assertThat(ListShapesTest.setups(reading)).as(shape.what()).isEqualTo(shape.setups());
      }
    }
  }

  @Test
  void aListThatLibreOfficeReadsAsCsvAndSavesAsWorkbookIsTheSame() throws Exception {
    assumeTrue(runs("soffice", "--version"), "no LibreOffice here");
    var saved = Files.createDirectories(folder.resolve("from-csv"));
    var csv = ListShapesTest.LISTS.resolve("zh-en.csv");
    assertThat(office(saved, "xlsx", List.of(csv))).isTrue();
    var shape = new ListShapesTest.Shape("", "zh-en.xlsx", "codes", "", "understood", "", "");
    assertThat(ListShapesTest.setups(ListShapesTest.read(shape, saved)))
        .isEqualTo("A101(正面) A102(背面)");
  }
}
