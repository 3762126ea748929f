package org.framewright.shotlist;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ListReaderTest {

  private static ListReading read(String text) {
    return ListReader.read(text.getBytes(StandardCharsets.UTF_8), "list.csv");
  }

  private static ListReading.Understood understood(ListReading reading) {
    assertThat(reading).isInstanceOf(ListReading.Understood.class);
    return (ListReading.Understood) reading;
  }

  private static List<ListProblem> refused(String text) {
    var reading = read(text);
    assertThat(reading).isInstanceOf(ListReading.Refused.class);
    return ((ListReading.Refused) reading).problems();
  }

  private static ShotList list(String text) {
    return understood(read(text)).list();
  }

  // RFC 4180, section 2, rules 1 to 7: the examples there, with headings of a shot list put above
  // them.

  @Test
  void readsLinesThatEndInCrlfAsRule1Says() {
    var list = list("setup,title,note\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n");
    assertThat(list.codes()).containsExactly("aaa", "zzz");
    assertThat(list.setups().get(1).title()).isEqualTo("yyy");
    assertThat(list.setups().get(1).note()).contains("xxx");
  }

  @Test
  void readsALastLineWithoutItsEndAsRule2Says() {
    assertThat(list("setup,title,note\r\naaa,bbb,ccc\r\nzzz,yyy,xxx").codes())
        .containsExactly("aaa", "zzz");
  }

  @Test
  void keepsSpacesInsideAFieldAndReadsNoFieldAfterTheLastAsRule4Says() {
    assertThat(list("setup,title,note\r\naaa,b b b,ccc").setups().getFirst().title())
        .isEqualTo("b b b");
  }

  @Test
  void readsQuotedFieldsAsRule5Says() {
    var list = list("setup,title,note\r\n\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx");
    assertThat(list.codes()).containsExactly("aaa", "zzz");
    assertThat(list.setups().getFirst().note()).contains("ccc");
  }

  @Test
  void readsALineBreakInQuotesAsRule6Says() {
    var list = list("note,setup,title\r\n\"aaa\",\"b \r\nbb\",\"ccc\"\r\nzzz,yyy,xxx");
    assertThat(list.codes()).containsExactly("b bb", "yyy");
  }

  @Test
  void readsADoubledQuotationMarkAsRule7Says() {
    assertThat(list("note,title,setup\r\n\"aaa\",\"b\"\"bb\",\"ccc\"").setups().getFirst().title())
        .isEqualTo("b\"bb");
  }

  @Test
  void givesTheRightLineAndColumnBehindCellsOfSeveralLines() {
    var problems =
        refused(
            """
            Setup,Title,Note
            1,"Coat
            long, ""A""
            wool",first
            2,Hat,"one
            two"
            ,Scarf,no number
            4,"Belt" x,
            001,Shoes,twice
            """);
    assertThat(problems)
        .extracting(ListProblem::line, ListProblem::column)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple(7, 1),
            org.assertj.core.groups.Tuple.tuple(8, 9),
            org.assertj.core.groups.Tuple.tuple(9, 1));
    assertThat(refused("Setup,Title\n1,Coat\n,Hat\n"))
        .extracting(ListProblem::line)
        .containsExactly(3);
    assertThat(problems.get(0).problem().what()).contains("no setup");
    assertThat(problems.get(1).problem().what()).contains("\"x\"");
    assertThat(problems.get(2).problem().what()).contains("001", "line 2");
    assertThat(problems.get(2))
        .hasToString("list.csv, line 9, column 1: " + problems.get(2).problem().what());
  }

  @Test
  void saysWhereAQuotationMarkThatIsNeverClosedOpened() {
    assertThat(refused("Setup,Title\n1,Coat\n2,\"Hat\n3,Scarf\n"))
        .anySatisfy(
            problem -> {
              assertThat(problem.line()).isEqualTo(3);
              assertThat(problem.column()).isEqualTo(3);
              assertThat(problem.problem().what()).contains("never closed");
            });
  }

  @ParameterizedTest
  @CsvSource({
    "UTF-8, '', UTF-8",
    "UTF-8, \uFEFF, UTF-8 with a mark",
    "UTF-16LE, \uFEFF, 'UTF-16, little-endian'",
    "UTF-16BE, \uFEFF, 'UTF-16, big-endian'",
    "UTF-16LE, '', 'UTF-16, little-endian'",
    "UTF-16BE, '', 'UTF-16, big-endian'",
    "windows-1252, '', Windows-1252",
  })
  void readsEveryCommonEncoding(String charset, String mark, String name) {
    var text = mark + "Setup;Titel;Größe\r\n7;Crêpe blouse “ivory” 40 €;34\r\n";
    var read = understood(ListReader.read(text.getBytes(Charset.forName(charset)), "list.csv"));
    assertThat(read.form().english()).isEqualTo(name + ", semicolons, headings in line 1");
    assertThat(read.list().setups().getFirst().title()).isEqualTo("Crêpe blouse “ivory” 40 €");
    assertThat(read.list().setups().getFirst().columns()).containsEntry("Größe", "34");
  }

  @ParameterizedTest
  @ValueSource(strings = {",", ";", "\t", "|"})
  void findsTheSeparatorByTheHeadings(String separator) {
    var text = "Look No.,Description,Price\n1,\"Coat, long; grey\",\"1,50\"\n".replace(',', '\0');
    var written =
        text.replace("Coat\0", "Coat,").replace("1\0" + "50", "1,50").replace("\0", separator);
    var setup = list(written).setups().getFirst();
    assertThat(setup.title()).isEqualTo("Coat, long; grey");
    assertThat(setup.columns()).containsEntry("Price", "1,50");
  }

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r", "\r\n"})
  void readsEveryLineEndAndPassesOverBlankLines(String end) {
    var text = String.join(end, "", "Setup,Title", " , ", "1,Coat", "", "2,Hat", "", "Shoes,", "");
    var read = understood(read(text));
    assertThat(read.list().codes()).containsExactly("1", "2");
    assertThat(read.remarks()).hasSize(1);
    assertThat(read.remarks().getFirst().line()).isEqualTo(8);
  }

  @Test
  void passesOverRowsAboveTheHeadingsAndSaysSo() {
    var read =
        understood(
            read(
                """
                Winter campaign,,,
                "Shoot: 3 days",,,as of Monday
                ,,,
                RAIL,Look,PRODUCT NAME,Ansichten
                A,1,Coat,F/B
                RAIL,Look,PRODUCT NAME,Ansichten
                B,2,Hat,F
                """));
    assertThat(read.form().english()).endsWith("headings in line 4");
    assertThat(read.list().setups())
        .extracting(Setup::code, Setup::title, Setup::viewsText)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple("1", "Coat", "F, B"),
            org.assertj.core.groups.Tuple.tuple("2", "Hat", "F"));
    assertThat(read.list().setups().getFirst().rack()).contains("A");
    assertThat(read.remarks()).extracting(ListProblem::line).containsExactly(1, 2, 6);
  }

  @Test
  void saysAsWhatEachColumnWasTaken() {
    var read = understood(read("Colour,No.,Look,Garment,Views,Qty\nred,1,L7,Coat,F,4\n"));
    assertThat(read.columns())
        .extracting(Column::position, Column::heading, Column::taken)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple(1, "Colour", Heading.OTHER),
            org.assertj.core.groups.Tuple.tuple(2, "No.", Heading.OTHER),
            org.assertj.core.groups.Tuple.tuple(3, "Look", Heading.SETUP),
            org.assertj.core.groups.Tuple.tuple(4, "Garment", Heading.TITLE),
            org.assertj.core.groups.Tuple.tuple(5, "Views", Heading.VIEWS),
            org.assertj.core.groups.Tuple.tuple(6, "Qty", Heading.FRAMES));
    assertThat(read.columns().get(2)).hasToString("\"Look\" is the setup");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Nr.;Bezeichnung;Ansichten;Anzahl",
        "N°;Désignation;Vues;Quantité",
        "Número;Descripción;Vistas;Cantidad",
        "Nº;Descrizione;Viste;Quantità",
        "Nummer;Omschrijving;Aanzichten;Aantal",
        "nummer;Benämning;Vyer;Antal",
        "SET-UP_NO;  TITLE ;views;FRAMES WANTED",
        "#;Description;Angles;Images",
      })
  void understandsHeadingsInSeveralLanguages(String headings) {
    var setup = list(headings + "\n12;Coat;F B;8\n").setups().getFirst();
    assertThat(setup.code()).isEqualTo("12");
    assertThat(setup.title()).isEqualTo("Coat");
    assertThat(setup.viewsText()).isEqualTo("F, B");
    assertThat(setup.framesWanted()).hasValue(8);
  }

  @Test
  void keepsEveryColumnThatItDoesNotKnow() {
    var setup =
        list("Setup,Colour,,Colour,Frames\n7,red,note without a heading,blue,a few\n")
            .setups()
            .getFirst();
    assertThat(setup.columns())
        .containsExactly(
            java.util.Map.entry("Colour", "red"),
            java.util.Map.entry("column 3", "note without a heading"),
            java.util.Map.entry("Colour 2", "blue"),
            java.util.Map.entry("Frames", "a few"));
  }

  @Test
  void keepsAColumnCalledAsOneOfTheExportUnderANameOfItsOwn() {
    var list = list("Setup,Setup,Setup\nred,x 10,\nred,x 11,\n");
    assertThat(list.setups()).extracting(Setup::code).containsExactly("x 10", "x 11");
    assertThat(list.setups().getFirst().columns())
        .containsExactly(java.util.Map.entry("Setup 4", "red"), java.util.Map.entry("Setup 3", ""));

    var again = list(ListWriter.csv(list, setup -> new java.util.LinkedHashMap<>()));

    assertThat(again).isEqualTo(list);
  }

  @Test
  void keepsTheColumnCalledDayWhereAnotherIsChosenToBeTheDay() {
    var options = ListOptions.NONE.withColumn("day", "Slot");
    var text = "Setup,Day,Slot\n1,first,2026-11-23\n";

    var read =
        ListReader.read(text.getBytes(StandardCharsets.UTF_8), "list.csv", options, ListFit.ANY);

    assertThat(understood(read).list().setups().getFirst().columns())
        .containsExactly(
            java.util.Map.entry("Day 2", "first"), java.util.Map.entry("Day", "2026-11-23"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "F, B, D        | F, B, D",
        "F B D          | F, B, D",
        "F/B/D          | F, B, D",
        "F + B          | F, B",
        "F:8 B:4        | F:8, B:4",
        "F: 8, B: 4     | F:8, B:4",
        "F x 8; B x 4   | F:8, B:4",
        "F (8) B (4)    | F:8, B:4",
        "F 8, B 4       | F:8, B:4",
        "front, back    | front, back",
        "front:8 back:4 | front:8, back:4",
        "three quarter  | three quarter",
        "F, F           | F",
        "1 2 3          | 1, 2, 3",
        "F:0            | F",
      })
  void readsAViewsCellHoweverItIsWritten(String cell, String views) {
    assertThat(list("Setup|Views\n1|" + cell.strip() + "\n").setups().getFirst().viewsText())
        .isEqualTo(views);
  }

  @Test
  void takesOneColumnAViewWithCrossesOrNumbers() {
    var list =
        list(
            """
            ,,Views,,,Other
            Setup,Title,Front,Back,Inside,Pressed
            1,Coat,x,,2,x
            2,Hat,X,x,,
            """);
    assertThat(list.setups())
        .extracting(Setup::viewsText)
        .containsExactly("Front, Inside:2", "Front, Back");
    assertThat(list.setups().getFirst().columns())
        .containsExactly(java.util.Map.entry("Pressed", "x"));
  }

  @Test
  void refusesADuplicateSetupCodeInAnyCaseAndWithAnyZeros() {
    assertThat(refused("Setup,Title\nA-1,x\nB-1,y\na-01,z\nB-1,w\n"))
        .extracting(ListProblem::line)
        .containsExactly(4, 5);
  }

  @Test
  void refusesWhatIsNoList() {
    assertThat(refused("").getFirst().problem().what()).contains("empty");
    assertThat(refused("a,b\nc,d\n").getFirst().problem().what())
        .contains("no line of headings", "a | b");
    assertThat(refused("Setup,Title\n").getFirst().problem().what()).contains("no setup below");
    assertThat(refused("%PDF-1.7 x").getFirst().problem().remedy()).contains(".xlsx or .csv");
    assertThat(refused("PK\u0003\u0004 and no workbook").getFirst().problem().what())
        .contains("no sound workbook".replace("no ", ""));
    assertThat(refused("Setup\0,Title\n1,\0\n").getFirst().problem().what()).contains("no text");
  }

  @Test
  void understandsTheSampleList() throws IOException {
    var read = understood(ListReader.read(Path.of("samples/shot-list.csv")));
    assertThat(read.list().setups()).hasSizeGreaterThan(30);
    var second = read.list().setup("2").orElseThrow();
    assertThat(second.code()).isEqualTo("002");
    assertThat(second.title()).isEqualTo("Wool coat, \"cocoon\" cut");
    assertThat(second.viewsText()).isEqualTo("F, B, D");
    assertThat(second.framesWanted()).hasValue(12);
    assertThat(second.day()).contains("2026-11-02");
    assertThat(second.rack()).contains("A1");
    assertThat(second.model()).contains("Mira");
    assertThat(second.columns()).containsEntry("Style", "KV-26114").containsEntry("Colour", "oat");
  }

  @ParameterizedTest
  @ValueSource(strings = {"list.csv", "list.xlsx"})
  void readsBackWhatItWrites(String name, @TempDir Path folder) throws IOException {
    var columns = new LinkedHashMap<String, String>();
    columns.put("Rack", "A, \"left\"");
    columns.put("Größe", "34\nor 36");
    var list =
        new ShotList(
            List.of(
                new Setup(
                    "001",
                    "Coat; long, \"grey\"",
                    List.of(new View("F", OptionalInt.of(8)), new View("three quarter")),
                    OptionalInt.of(12),
                    columns),
                new Setup("A-12", "帽子", List.of(), OptionalInt.empty(), columns)));
    var file = folder.resolve(name);
    Files.writeString(file, "an older list");
    ListWriter.replace(
        file,
        list,
        setup -> {
          var job = new LinkedHashMap<String, String>();
          job.put("State", "shot");
          job.put("Frames so far", "3");
          return job;
        });
    var read = understood(ListReader.read(file));
    assertThat(read.list()).isEqualTo(list);
    assertThat(read.columns())
        .filteredOn(column -> column.taken() == Heading.FROM_JOB)
        .extracting(Column::heading)
        .containsExactly("State", "Frames so far");
    try (var files = Files.list(folder)) {
      assertThat(files).containsExactly(file);
    }
  }

  @Test
  void writesCsvAsRfc4180Says() {
    var list = new ShotList(List.of(new Setup("1", "say \"a,b\"")));
    assertThat(ListWriter.csv(list, setup -> new LinkedHashMap<>()))
        .isEqualTo("Setup,Title,Views,Frames wanted\r\n1,\"say \"\"a,b\"\"\",,\r\n");
  }

  @Test
  void readsAWorkbookOfAnotherWriter(@TempDir Path folder) throws IOException {
    var file = folder.resolve("list.xlsx");
    try (var out = Files.newOutputStream(file);
        var workbook = new org.dhatim.fastexcel.Workbook(out, "Some office", null)) {
      workbook.newWorksheet("Contacts").value(0, 0, "Nobody");
      var sheet = workbook.newWorksheet("Looks");
      sheet.value(0, 0, "Looks of the week");
      sheet.value(2, 0, "Look");
      sheet.value(2, 1, "Name");
      sheet.value(2, 2, "Day");
      sheet.value(2, 3, "Qty");
      sheet.value(3, 0, 7);
      sheet.style(3, 0).format("000").set();
      sheet.value(3, 1, "Coat");
      sheet.value(3, 2, java.time.LocalDate.of(2026, 11, 23));
      sheet.style(3, 2).format("dd.mm.yyyy").set();
      sheet.value(3, 3, 12.0);
    }
    var read = understood(ListReader.read(file));
    assertThat(read.form().english()).isEqualTo("workbook, sheet Looks, headings in line 3");
    var setup = read.list().setups().getFirst();
    assertThat(setup.code()).isEqualTo("007");
    assertThat(setup.title()).isEqualTo("Coat");
    assertThat(setup.day()).contains("2026-11-23");
    assertThat(setup.framesWanted()).hasValue(12);
  }
}
