package org.framewright.shotlist;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.OptionalInt;
import java.util.SequencedMap;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What an exported list looks like. */
class ListWriterTest {
  @TempDir private Path folder;

  private static Setup setup(String code, SequencedMap<String, String> columns) {
    return new Setup(code, "Coat", List.of(), OptionalInt.empty(), columns);
  }

  private static SequencedMap<String, String> nothing(Setup setup) {
    return new LinkedHashMap<>();
  }

  private static SequencedMap<String, String> column(String heading, String text) {
    var columns = new LinkedHashMap<String, String>();
    columns.put(heading, text);
    return columns;
  }

  /** The text of one part of a workbook. */
  private static String part(byte[] workbook, String name) throws IOException {
    try (var zip = ZipFile.builder().setByteArray(workbook).get();
        var content = zip.getInputStream(zip.getEntry(name))) {
      return new String(content.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void putsColumnsOfTheClientThenThoseOfTheJobBehindItsOwn() {
    var list =
        new ShotList(List.of(setup("1", column("Rack", "A")), setup("2", column("Size", "34"))));
    assertThat(
            ListWriter.csv(
                list,
                setup ->
                    setup.code().equals("1") ? column("State", "shot") : column("Reason", "x")))
        .isEqualTo(
            """
            Setup,Title,Views,Frames wanted,Rack,Size,State,Reason\r
            1,Coat,,,A,,shot,\r
            2,Coat,,,,34,,x\r
            """);
  }

  @Test
  void writesANumberOfFramesInWordsWhereNumbersStand() {
    var list = new ShotList(List.of(setup("1", column("Frames wanted", "a few"))));
    assertThat(ListWriter.csv(list, ListWriterTest::nothing))
        .isEqualTo("Setup,Title,Views,Frames wanted\r\n1,Coat,,a few\r\n");
  }

  // ECMA-376, part 1: the pane that stays in view (18.3.1.66), bold (18.8.2).
  @Test
  void keepsHeadingsAndCodesOfAWorkbookInViewAndHeadingsBold() throws IOException {
    var file = folder.resolve("list.xlsx");
    var list = new ShotList(List.of(setup("1", column("Rack", "A"))));
    assertThat(ListWriter.create(file, list, ListWriterTest::nothing)).isEmpty();
    var bytes = Files.readAllBytes(file);
    assertThat(part(bytes, "xl/worksheets/sheet1.xml"))
        .containsPattern("<pane xSplit=\"1\" ySplit=\"1\" topLeftCell=\"B2\"[^>]* state=\"frozen\"")
        .containsPattern("<c r=\"A1\" s=\"1\"")
        .containsPattern("<c r=\"E1\" s=\"1\"")
        .doesNotContainPattern("<c r=\"F1\"")
        .doesNotContainPattern("<c r=\"A2\" s=\"1\"");
    assertThat(part(bytes, "xl/styles.xml")).contains("<b/>");
  }

  @Tag("slow")
  @Test
  void writesAWorkbookAsWideAsOneCanBeAndNoWider() throws IOException {
    var columns = new LinkedHashMap<String, String>();
    for (int i = ListWriter.HEADINGS.size(); i < Workbook.MOST_COLUMNS; i++) {
      columns.put("c" + i, "");
    }
    var file = folder.resolve("list.xlsx");
    assertThat(
            ListWriter.create(
                file, new ShotList(List.of(setup("1", columns))), ListWriterTest::nothing))
        .isEmpty();
    var before = Files.readAllBytes(file);
    columns.put("one more", "");
    var problem =
        ListWriter.replace(
                file, new ShotList(List.of(setup("1", columns))), ListWriterTest::nothing)
            .orElseThrow();
    assertThat(problem.sentence())
        .isEqualTo(file + ": the line of setup Setup holds more than a workbook takes");
    assertThat(problem.remedy()).isEqualTo("Export it as .csv.");
    assertThat(file).hasBinaryContent(before);
  }

  @Test
  void writesACellAsLongAsOneCanBeAndNoLonger() throws IOException {
    var longest = "x".repeat(Limits.CELL);
    var list = new ShotList(List.of(setup("7", column("Note", longest))));
    var file = folder.resolve("list.xlsx");
    assertThat(ListWriter.create(file, list, ListWriterTest::nothing)).isEmpty();
    assertThat(ListReader.read(file))
        .isInstanceOfSatisfying(
            ListReading.Understood.class, read -> assertThat(read.list()).isEqualTo(list));
    var longer = new ShotList(List.of(setup("7", column("Note", longest + "x"))));
    assertThat(ListWriter.replace(file, longer, ListWriterTest::nothing).orElseThrow().what())
        .isEqualTo("the line of setup 7 holds more than a workbook takes");
  }
}
