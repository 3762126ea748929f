package org.framewright.shotlist;

import static org.framewright.AssertThat.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.SequencedMap;
import java.util.Set;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tag;
import net.jqwik.api.Tuple;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.statistics.Statistics;
import org.framewright.base.FormulaGuard;

class ListLawsTest {

  @Property(tries = 300)
  void aListReadsBackAsItWasWritten(@ForAll("lists") ShotList list) {
    var text = ListWriter.csv(list, setup -> new LinkedHashMap<>());
    var read = ListReader.read(text.getBytes(StandardCharsets.UTF_8), "list.csv");
    assertThat(read)
        .isInstanceOfSatisfying(
            ListReading.Understood.class, sound -> assertThat(sound.list()).isEqualTo(list));
  }

  /** The lists of clients, as they were understood, survive being exported and imported again. */
  @Tag("slow")
  @Property(tries = 300)
  void whatWasImportedIsTheSameListAfterAnExport(@ForAll("texts") String text) {
    var read = ListReader.read(text.getBytes(StandardCharsets.UTF_8), "list.csv");
    Statistics.label("understood")
        .collect(read instanceof ListReading.Understood)
        .coverage(coverage -> coverage.check(true).percentage(share -> share > 50));
    if (read instanceof ListReading.Understood understood) {
      var csv = ListWriter.csv(understood.list(), ListLawsTest::job);
      assertSame(understood.list(), csv.getBytes(StandardCharsets.UTF_8));
    }
  }

  @Tag("slow")
  @Property(tries = 40)
  void whatWasImportedIsTheSameListInAWorkbook(@ForAll("texts") String text) throws IOException {
    if (ListReader.read(text.getBytes(StandardCharsets.UTF_8), "list.csv")
        instanceof ListReading.Understood understood) {
      var file = Files.createTempFile("list", ".xlsx");
      try {
        assertThat(ListWriter.replace(file, understood.list(), ListLawsTest::job)).isEmpty();
        assertSame(understood.list(), Files.readAllBytes(file));
      } finally {
        Files.delete(file);
      }
    }
  }

  private static void assertSame(ShotList list, byte[] exported) {
    assertThat(ListReader.read(exported, "exported.csv"))
        .isInstanceOfSatisfying(
            ListReading.Understood.class,
            again ->
                assertThat(ListChange.between(list, again.list()))
                    .matches(ListChange::isEmpty, "no change"));
  }

  private static SequencedMap<String, String> job(Setup setup) {
    var columns = new LinkedHashMap<String, String>();
    columns.put("State", "to shoot");
    columns.put("Reason", setup.code().length() > 2 ? "-sold, \"out\"" : "");
    return columns;
  }

  /** Tables of what lists hold and of what they should not. */
  @Provide
  Arbitrary<String> texts() {
    var word =
        Arbitraries.of(
            "Setup",
            "Look",
            "Title",
            "titel",
            "Views",
            "Vues",
            "Front",
            "Back",
            "Frames wanted",
            "Qty",
            "Rack",
            "Note",
            "State",
            "column 2",
            "1",
            "2",
            "001",
            "A-12",
            "a-012",
            "x",
            "0",
            "00",
            "9999",
            "a few",
            "F",
            "F B",
            "F:8 B",
            "F (3)",
            "three quarter",
            "front:2",
            "=1+1",
            "'=1",
            "@x",
            "-",
            "- 5",
            "+",
            "\uFF1Dx",
            "'",
            "\"",
            "\"\"",
            "\"=\"",
            ";=x",
            "a;'=b",
            "\u00A0",
            "\u2003",
            "é帽",
            "\u001B[2J",
            "\u202Eabc",
            "_x000D_",
            "a\u0001",
            "  b ",
            "line\n- two\n=3",
            "\ttab",
            "\uFFFD",
            "Front, left",
            "\uD83D\uDC5F");
    var any = Arbitraries.strings().ofMaxLength(6);
    var cell =
        Arbitraries.frequencyOf(
            Tuple.of(8, word),
            Tuple.of(2, Arbitraries.just("")),
            Tuple.of(2, Combinators.combine(word, word).as((one, two) -> one + " " + two)),
            Tuple.of(1, any));
    var headings =
        Arbitraries.of("Look", "Setup", "No.", "Code", "SET-UP")
            .flatMap(
                code ->
                    cell.list()
                        .ofMinSize(1)
                        .ofMaxSize(7)
                        .map(
                            cells -> {
                              var all = new ArrayList<>(cells);
                              all.add(cells.size() / 2, code);
                              return all;
                            }));
    var rows = cell.list().ofMinSize(1).ofMaxSize(8).list().ofMinSize(1).ofMaxSize(5);
    return Combinators.combine(headings, rows)
        .as(
            (header, lines) -> {
              var text = new StringBuilder(line(header));
              int code = (header.size() - 1) / 2;
              for (int i = 0; i < lines.size(); i++) {
                var cells = new ArrayList<>(lines.get(i));
                while (cells.size() <= code) {
                  cells.add("x");
                }
                // Most codes differ, so that most lists are understood.
                cells.set(code, cells.get(code).strip() + " " + (i + 10));
                text.append(line(cells));
              }
              return text.toString();
            });
  }

  private static String line(List<String> cells) {
    return cells.stream()
            .map(cell -> '"' + cell.replace("\"", "\"\"") + '"')
            .collect(Collectors.joining(","))
        + "\n";
  }

  @Property(tries = 300)
  void anApostropheBeforeAFormulaCanBeTakenAwayAgain(@ForAll("guarded") String text) {
    var guarded = FormulaGuard.with(text);
    assertThat(FormulaGuard.without(guarded)).isEqualTo(text);
    for (var cell : guarded.split("[;\t\r\n]", -1)) {
      assertThat(cell).doesNotMatch("(?s)[=+\\-@\uFF1D\uFF0B\uFF0D\uFF20].*");
    }
  }

  @Provide
  Arbitrary<String> guarded() {
    return Arbitraries.strings().withChars("=+-@'\"; \t\r\na\uFF1D\uFF20").ofMaxLength(8);
  }

  @Property(tries = 300)
  void textOfAWorkbookIsReadAsItWasWritten(@ForAll("escaped") String text) {
    assertThat(XmlText.plain(XmlText.escaped(text))).isEqualTo(text);
  }

  @Example
  void textThatReadsAsAnEscapeOnlyWithTheOneBehindItIsReadAsItWasWritten() {
    for (var text : List.of("_x0000\u0000", "_x005F\u001B", "_x0041_", "_x0041", "__x0041_\r")) {
      assertThat(XmlText.plain(XmlText.escaped(text))).isEqualTo(text);
    }
  }

  @Provide
  Arbitrary<String> escaped() {
    return Arbitraries.strings()
        .withChars("_x005F8aé\u0000\u001B\r\n\t\uD800\uDC00\uFFFE")
        .ofMaxLength(16);
  }

  @Tag("slow")
  @Property(tries = 500)
  void anyBytesEndInAListOrInProblems(@ForAll byte[] bytes) {
    if (ListReader.read(bytes, "list.csv") instanceof ListReading.Refused refused) {
      assertThat(refused.problems()).isNotEmpty();
    }
  }

  /** A sound workbook with some bytes changed, cut or put in. */
  @Property(tries = 150)
  @Tag("slow")
  void aDamagedWorkbookEndsInAListOrInProblems(
      @ForAll @Size(max = 12) List<@IntRange(max = 1 << 20) Integer> places,
      @ForAll @IntRange(max = 5000) int cut)
      throws IOException {
    var bytes = WORKBOOK.clone();
    for (var place : places) {
      bytes[place % bytes.length] = (byte) (place >> 8);
    }
    var damaged = Arrays.copyOf(bytes, Math.max(4, bytes.length - (places.isEmpty() ? cut : 0)));
    if (ListReader.read(damaged, "list.xlsx") instanceof ListReading.Refused refused) {
      assertThat(refused.problems()).isNotEmpty();
    }
  }

  private static final byte[] WORKBOOK = workbook();

  private static byte[] workbook() {
    var bytes = new ByteArrayOutputStream();
    try (var workbook = new org.dhatim.fastexcel.Workbook(bytes, "Some office", null)) {
      var sheet = workbook.newWorksheet("Looks");
      sheet.value(0, 0, "Look");
      sheet.value(0, 1, "Name");
      for (int i = 1; i < 20; i++) {
        sheet.value(i, 0, i);
        sheet.value(i, 1, "Coat " + i);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  @Property(tries = 300)
  void anyTextBelowHeadingsEndsInAListOrInProblemsInsideTheFile(@ForAll String text) {
    var file = "Setup,Title,Views,Frames\n" + text;
    long lines = file.lines().count() + 1;
    if (ListReader.read(file.getBytes(StandardCharsets.UTF_8), "list.csv")
        instanceof ListReading.Refused refused) {
      assertThat(refused.problems())
          .isNotEmpty()
          .allSatisfy(problem -> assertThat((long) problem.line()).isBetween(0L, lines));
    }
  }

  /** The change between two lists, done to the first, makes the second. */
  @Property(tries = 500)
  void aChangeHoldsAllThatDiffers(
      @ForAll("lists") ShotList before, @ForAll("lists") ShotList after) {
    var change = ListChange.between(before, after);
    var made = new ArrayList<>(before.setups());
    made.removeAll(change.removed());
    change.changed().forEach(changed -> made.set(made.indexOf(changed.before()), changed.after()));
    made.addAll(change.added());
    assertThat(Set.copyOf(made)).isEqualTo(Set.copyOf(after.setups()));
    assertThat(change.isEmpty()).isEqualTo(before.equals(after));
  }

  @Provide
  Arbitrary<ShotList> lists() {
    var text =
        Arbitraries.strings()
            .withChars("aB1 ,;\"'|é帽-.")
            .ofMaxLength(8)
            .map(one -> one.replaceAll("\\s+", " ").strip());
    var views =
        Combinators.combine(
                Arbitraries.of("F", "B", "D", "three quarter"),
                Arbitraries.integers().between(0, 12))
            .as((code, n) -> new View(code, n == 0 ? OptionalInt.empty() : OptionalInt.of(n)))
            .list()
            .ofMaxSize(3)
            .uniqueElements(View::code);
    var setups =
        Combinators.combine(
                Arbitraries.of("1", "2", "A-12", "a-3", "Look 7", "9,5", "x\"1"),
                text,
                views,
                Arbitraries.integers().between(0, 40),
                text)
            .as(
                (code, title, wanted, frames, rack) -> {
                  var columns = new LinkedHashMap<String, String>();
                  columns.put("Rack", rack);
                  return new Setup(
                      code,
                      title,
                      wanted,
                      frames == 0 ? OptionalInt.empty() : OptionalInt.of(frames),
                      columns);
                });
    return setups
        .list()
        .ofMinSize(1)
        .ofMaxSize(6)
        .uniqueElements(setup -> Setup.canonicalKey(setup.code()))
        .map(list -> new ShotList(List.copyOf(new LinkedHashSet<>(list))));
  }
}
