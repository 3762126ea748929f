package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a person says on the command line about how a list is to be read, and what is kept of it.
 */
class ListImportTest {
  private static final Path LISTS = Path.of("src/test/resources/lists");

  @TempDir private Path folder;
  private Path job;

  @BeforeEach
  void aJobWithCodes() {
    job = started(LISTS.resolve("codes.yaml"), "codes");
  }

  private Path started(Path convention, String title) {
    var started =
        Ran.run(
            "start",
            "--by",
            convention,
            "--in",
            folder,
            "day=2026-11-23",
            "client=NOVA",
            "title=" + title);
    assertThat(started.status()).as(started.err()).isZero();
    return Path.of(started.out().strip());
  }

  private Path list(String text) throws IOException {
    return Files.writeString(folder.resolve("list.csv"), text);
  }

  @Test
  void aPreviewSaysAsJsonHowTheListWasRead() throws IOException {
    var ran = Ran.run("list", job, "--import", LISTS.resolve("totals.csv"), "--preview", "--json");
    assertThat(ran.status()).as(ran.err()).isZero();
    var json = ran.json();
    assertThat(json.at("/columns/setup").asText()).isEqualTo("Artikelnummer");
    assertThat(json.at("/columns/title").asText()).isEqualTo("Bezeichnung");
    assertThat(json.at("/columns/frames").asText()).isEqualTo("Anzahl Bilder");
    assertThat(json.at("/encoding").asText()).isEqualTo("UTF-8");
    assertThat(json.at("/sheet").isNull()).isTrue();
    assertThat(json.at("/setups").asInt()).isEqualTo(2);
    assertThat(json.at("/leftOut").findValuesAsText("line")).containsExactly("4", "5");
    assertThat(json.at("/leftOut/0/why").asText())
        .isEqualTo("\"Summe\" is a line of sums, left out");
    assertThat(json.at("/list").findValuesAsText("setup")).containsExactly("AB-1", "AB-2");
    assertThat(Ran.run("list", job, "--json").json()).isEmpty();
  }

  @Test
  void aPreviewNamesTheSheetOfAWorkbook() throws IOException {
    var looks = started(Path.of("templates/fashion-days.yaml"), "looks");
    var book = LISTS.resolve("sheets.xlsx");
    var json = Ran.run("list", looks, "--import", book, "--preview", "--json").json();
    assertThat(json.at("/sheet").asText()).isEqualTo("Tops");
    assertThat(json.at("/encoding").isNull()).isTrue();
    assertThat(json.at("/sheets")).hasSize(3);
    json =
        Ran.run("list", looks, "--import", book, "--sheet", "Bottoms", "--preview", "--json")
            .json();
    assertThat(json.at("/sheet").asText()).isEqualTo("Bottoms");
    assertThat(json.at("/list/0/setup").asText()).isEqualTo("11");
  }

  @Test
  void columnsThatWereChosenAreTakenForTheNextListWithTheSameHeadings() throws IOException {
    var first = list("Wyróżnik;Treść;Cena\nAA-1;Płaszcz;12\n");
    var asked = Ran.run("list", job, "--import", first);
    assertThat(asked.status()).isEqualTo(2);
    assertThat(asked.err()).contains("--column setup=Wyróżnik").contains("Nothing was imported.");
    var chosen =
        Ran.run(
            "list",
            job,
            "--import",
            first,
            "--column",
            "setup=Wyróżnik",
            "--column",
            "title=Treść");
    assertThat(chosen.status()).as(chosen.err()).isZero();
    assertThat(chosen.out()).contains("added    AA-1 Płaszcz");
    // Another day, another station: the job knows.
    var next =
        Ran.run(
            "list", job, "--import", list("WYRÓŻNIK;treść ;Cena\nAA-1;Płaszcz;12\nAA-2;Rok;1\n"));
    assertThat(next.status()).as(next.err()).isZero();
    assertThat(next.err())
        .contains(
            "it has the headings of an earlier list and was read like that one: setup from"
                + " \"Wyróżnik\", title from \"Treść\"");
    assertThat(next.out()).contains("added    AA-2 Rok");
    var otherwise =
        Ran.run("list", job, "--import", first, "--column", "title=Cena", "--preview", "--json");
    assertThat(otherwise.json().at("/columns/title").asText()).isEqualTo("Cena");
    assertThat(otherwise.json().at("/columns/setup").asText()).isEqualTo("WYRÓŻNIK");
    assertThat(Ran.run("list", job, "--import", first, "--fresh", "--preview").status())
        .isEqualTo(2);
  }

  @Test
  void whatAColumnIsNotIsKeptForTheNextListToo() throws IOException {
    var first = list("Look;Title;Price\nAA-1;Coat;12\n");
    var chosen =
        Ran.run(
            "list",
            job,
            "--import",
            first,
            "--column",
            "unused=Price",
            "--column",
            "kept=Title",
            "--column",
            "setup=Look");
    assertThat(chosen.status()).as(chosen.err()).isZero();
    var setup = Ran.run("list", job, "--json").json().at("/0");
    assertThat(setup.at("/title").asText()).isEmpty();
    assertThat(setup.at("/columns/Title 2").asText()).isEqualTo("Coat");
    assertThat(setup.at("/columns").has("Price")).isFalse();
    // Another file of the same headings, that is refused for its codes: it is told why.
    var next = Files.writeString(folder.resolve("noon.csv"), "Look;Title;Price\n;Hat;14\n");
    var refused = Ran.run("list", job, "--import", next);
    assertThat(refused.status()).isEqualTo(2);
    assertThat(refused.err())
        .contains("it has the headings of the earlier list list.csv and was read like that one")
        .contains("\"Price\" is not used")
        .contains("read it afresh with --fresh.");
  }

  @Test
  void aPreviewKeepsNothing() throws IOException {
    var file = list("Wyróżnik;Treść\nAA-1;Płaszcz\n");
    assertThat(
            Ran.run("list", job, "--import", file, "--column", "setup=Wyróżnik", "--preview")
                .status())
        .isZero();
    assertThat(Ran.run("list", job, "--import", file).status()).isEqualTo(2);
  }

  @Test
  void theEncodingThatWasChosenIsKept() throws IOException {
    // Polish in Windows-1250, with headings that no language has.
    var text = "Setup;Żółć\nAA-1;ąę\n".getBytes(java.nio.charset.Charset.forName("windows-1250"));
    var file = Files.write(folder.resolve("list.csv"), text);
    assertThat(Ran.run("list", job, "--import", file, "--encoding", "windows-1250").status())
        .isZero();
    var json = Ran.run("list", job, "--import", file, "--preview", "--json").json();
    assertThat(json.at("/encoding").asText()).isEqualTo("windows-1250");
    assertThat(json.at("/list/0/columns/Żółć").asText()).isEqualTo("ąę");
  }

  @Test
  void linesOfOneGarmentAreOfferedAsOneSetupAndPutTogetherOnRequest() throws IOException {
    var sizes = LISTS.resolve("sizes.csv");
    var asked = Ran.run("list", job, "--import", sizes);
    assertThat(asked.status()).isEqualTo(2);
    assertThat(asked.err())
        .contains("line 3, column 1: setup KV-1 stands in line 2 already")
        .contains("one setup for each \"Style\", of all its lines: --one-setup-per Style");
    var merged = Ran.run("list", job, "--import", sizes, "--one-setup-per", "Style");
    assertThat(merged.status()).as(merged.err()).isZero();
    assertThat(merged.err()).contains("4 lines were put together to 2 setups");
    var setups = Ran.run("list", job, "--json").json();
    assertThat(setups.at("/0/columns/Grösse").asText()).isEqualTo("S, M, L");
    // The next one needs no word.
    assertThat(Ran.run("list", job, "--import", sizes).out())
        .contains("The list is the one that the job has.");
  }

  @Test
  void nothingIsImportedThatCannotBeNamedLater() throws IOException {
    var tea = started(Path.of("templates/still-life-gtin.yaml"), "tea");
    var refused = Ran.run("list", tea, "--import", LISTS.resolve("gtin-mistyped.csv"));
    assertThat(refused.status()).isEqualTo(2);
    // GS1's documented example is 629104150021 with the check digit 3.
    assertThat(refused.err())
        .contains(
            "gtin-mistyped.csv, line 3, column 1: Product: the check digit of 06291041500231 is"
                + " wrong");
    assertThat(Ran.run("list", tea, "--json").json()).isEmpty();
    var shortened = Ran.run("list", tea, "--import", LISTS.resolve("gtin-shortened.csv"));
    assertThat(shortened.err())
        .contains("line 2, column 1: \"4,01E+12\" is a long number that a spreadsheet shortened");
  }

  @Test
  void refusesWhatSaysNothingWithoutAList() {
    for (var words :
        List.of(
            List.of("--column", "setup=Look"),
            List.of("--sheet", "Tops"),
            List.of("--encoding", "UTF-8"),
            List.of("--one-setup-per", "Style"),
            List.of("--fresh"),
            List.of("--preview"))) {
      var args = new java.util.ArrayList<Object>(List.of("list", job));
      args.addAll(words);
      var ran = Ran.run(args.toArray());
      assertThat(ran.status()).isEqualTo(2);
      assertThat(ran.err()).contains(words.getFirst()).contains("Give --import FILE with it.");
    }
  }

  @Test
  void refusesAColumnThatIsNoneOrGivenTwice() throws IOException {
    var file = list("Look,Title\nKV-1,Coat\n");
    for (var column : List.of("setup", "=Look", "setup=")) {
      var ran = Ran.run("list", job, "--import", file, "--column", column);
      assertThat(ran.status()).isEqualTo(2);
      assertThat(ran.err()).contains("names no column for a field");
    }
    assertThat(
            Ran.run(
                    "list",
                    job,
                    "--import",
                    file,
                    "--column",
                    "setup=Look",
                    "--column",
                    "setup=Title")
                .err())
        .contains("a column is given twice for \"setup\"");
    assertThat(Ran.run("list", job, "--import", file, "--column", "size=Look").err())
        .contains("a list has no field \"size\"")
        .contains("Its fields are setup, title, views, frames, day, rack, model, note.");
    assertThat(Ran.run("list", job, "--import", file, "--encoding", "no such").err())
        .contains("there is no encoding \"no such\"");
    assertThat(Ran.run("list", job, "--import", file, "--sheet", "Tops").err())
        .contains("this is a text, which has no sheets");
  }

  @Test
  void aFieldOfTheConventionIsFilledByItsLabelOrByAPersonsWord() throws IOException {
    var coloured = started(LISTS.resolve("colours.yaml"), "colours");
    assertThat(Ran.run("list", coloured, "--import", LISTS.resolve("colour-by-label.csv")).status())
        .isZero();
    Files.writeString(coloured.resolve("01_frames/IMG_0001.jpg"), "a frame");
    var file = list("Look,Titel,Anstrich\nK1,Mantel,rot\nK3,Hose,grau\n");
    assertThat(Ran.run("list", coloured, "--import", file).err())
        .contains("Farbe: frames cannot be named without it");
    assertThat(Ran.run("list", coloured, "--import", file, "--column", "colour=Anstrich").status())
        .isZero();
    assertThat(Ran.run("list", coloured, "--json").json().at("/1/columns/colour").asText())
        .isEqualTo("grau");
  }
}
