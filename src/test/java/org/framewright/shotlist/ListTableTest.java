package org.framewright.shotlist;

import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What a person looks at to say how a list is to be read, whatever became of the reading. */
class ListTableTest {
  private static final Path LISTS = Path.of("src/test/resources/lists");

  private static ListReading read(String text) {
    return read(text, ListOptions.NONE);
  }

  private static ListReading read(String text, ListOptions options) {
    return ListReader.read(text.getBytes(StandardCharsets.UTF_8), "list.csv", options, ListFit.ANY);
  }

  private static List<String> column(ListReading reading, String heading) {
    var column =
        reading.columns().stream().filter(one -> one.heading().equals(heading)).findFirst();
    return reading.as().table().lines().stream()
        .map(line -> line.cell(column.orElseThrow()))
        .toList();
  }

  private static List<Heading> taken(ListReading reading) {
    return reading.columns().stream().map(Column::taken).toList();
  }

  @Test
  void theFirstLinesStandBelowTheHeadingsWithTheirNumbers() {
    var reading = read("Spring campaign\n\nLook,Title,Price\n1,Coat\n2,\"Cape,\n long\",40\n");
    assertThat(reading).isInstanceOf(ListReading.Understood.class);
    assertThat(reading.as().table().lines().stream().map(ListTable.Line::number))
        .containsExactly(4, 5);
    assertThat(column(reading, "Title")).containsExactly("Coat", "Cape, long");
    assertThat(column(reading, "Price")).containsExactly("", "40");
  }

  @Test
  void aListOfUnknownHeadingsShowsThem() {
    var reading = ListReader.read(LISTS.resolve("unknown-headings.csv"));
    assertThat(reading).isInstanceOf(ListReading.Refused.class);
    assertThat(reading.columns().stream().map(Column::heading))
        .containsExactly("Wyróżnik", "Treść", "Cena");
    assertThat(taken(reading)).containsOnly(Heading.OTHER);
    assertThat(column(reading, "Treść")).startsWith("Płaszcz", "Rok");
    assertThat(reading.source().encoding()).contains("UTF-8");
  }

  @Test
  void aListWithoutHeadingsShowsItsColumnsByTheirPlaces() {
    var reading = ListReader.read(LISTS.resolve("no-headings-two-codes.csv"));
    assertThat(reading).isInstanceOf(ListReading.Refused.class);
    assertThat(reading.columns().stream().map(Column::heading))
        .containsExactly("column 1", "column 2", "column 3");
    assertThat(column(reading, "column 2")).containsExactly("B-7", "B-9");
  }

  @Test
  void aListThatIsRefusedForItsLinesSaysAsWhatItsColumnsWereTaken() {
    var reading = ListReader.read(LISTS.resolve("sizes.csv"));
    assertThat(reading).isInstanceOf(ListReading.Refused.class);
    assertThat(taken(reading)).contains(Heading.SETUP);
    assertThat(reading.headings()).isNotEmpty();
  }

  @Tag("slow")
  @Test
  void longCellsAndLongListsShowTheirBeginning() {
    var lines = new ArrayList<String>(List.of("Look,Note"));
    for (int i = 1; i <= 100; i++) {
      lines.add(i + "," + "x".repeat(20_000));
    }
    var reading = read(String.join("\n", lines));
    assertThat(reading.as().table().lines()).hasSizeBetween(5, 20);
    assertThat(column(reading, "Note")).allMatch(text -> text.length() < 300);
  }

  @Test
  void aTextSaysItsEncodingAlsoWhereItIsNotWrittenInIt() {
    var reading = read("Look,Title\n1,Mäntel\n", ListOptions.ofEncoding("US-ASCII"));
    assertThat(reading).isInstanceOf(ListReading.Refused.class);
    assertThat(reading.source().encoding()).contains("US-ASCII");
    assertThat(reading.options()).isEqualTo(ListOptions.ofEncoding("US-ASCII"));
  }

  @Test
  void aWorkbookSaysItsSheetsAlsoWhereTheOneThatWasNamedIsNotThere() {
    var file = LISTS.resolve("sheets.xlsx");
    for (var sheet : Arrays.asList("Shoes", "Contacts", "Tops", "bottoms")) {
      var reading = ListReader.read(file, ListOptions.ofSheet(sheet), ListFit.ANY);
      assertThat(reading.source().sheets())
          .as(sheet)
          .containsExactly("Contacts", "Tops", "Bottoms");
    }
  }

  @Test
  void whatIsChosenForAColumnGivesWayToTheNextChoice() {
    var options =
        ListOptions.NONE
            .withColumn("title", "Name")
            .withUse(Heading.UNUSED, "Price")
            .withUse(Heading.KEPT, "NAME");
    assertThat(options.columns()).isEmpty();
    assertThat(options.uses()).containsOnlyKeys("Price", "NAME");
    assertThat(options.said("name")).contains("kept");
    assertThat(options.ofColumns(List.of("price")).words()).isEqualTo("--column unused=Price");
    assertThat(options.phrases())
        .extracting(Text::english)
        .containsExactly("\"Price\" is not used", "\"NAME\" is kept as it is");
    var title = options.withColumn("title", "Price");
    assertThat(title.uses()).containsOnlyKeys("NAME");
    assertThat(title.words()).isEqualTo("--column title=Price --column kept=NAME");
    assertThat(title.without("name").without("Price")).isEqualTo(ListOptions.NONE);
    // Signs alone are told apart, too.
    var signs = ListOptions.NONE.withColumn("setup", "#").withUse(Heading.UNUSED, "€");
    assertThat(signs.columns()).containsEntry("setup", "#");
  }

  @Test
  void aColumnThatIsNotUsedLeavesNothingInTheSetups() {
    var options = ListOptions.NONE.withUse(Heading.UNUSED, "Title");
    var reading = (ListReading.Understood) read("Look,Title,Rack\n1,Coat,A1\n", options);
    var setup = reading.list().setups().getFirst();
    assertThat(setup.title()).isEmpty();
    assertThat(setup.columns()).containsOnlyKeys("Rack");
    var kept =
        (ListReading.Understood)
            read("Look,Title\n1,Coat\n", ListOptions.NONE.withUse(Heading.KEPT, "Title"));
    assertThat(kept.list().setups().getFirst().title()).isEmpty();
    assertThat(kept.list().setups().getFirst().columns()).containsEntry("Title 2", "Coat");
  }

  @Test
  void aRemedyNamesTheOptionOnlyOnACommandLine() {
    var problem =
        ListProblem.ofAll("list.csv", Text.of("it is a guess"), Text.of("Say what it is."))
            .with("--sheet NAME");
    assertThat(problem.problem().remedy()).isEqualTo("Say what it is.");
    assertThat(problem.onCommandLine().remedy()).isEqualTo("Say what it is with --sheet NAME.");
    var refused = (ListReading.Refused) read("Foo,Bar\nx y z,b c d\nx,y\n");
    assertThat(refused.problems())
        .allMatch(one -> !one.problem().sentences().contains("--"))
        .anyMatch(one -> one.onCommandLine().remedy().contains("--column setup=HEADING"));
    assertThat(Optional.of(refused).map(ListReading.Refused::columns).orElseThrow()).hasSize(2);
  }
}
