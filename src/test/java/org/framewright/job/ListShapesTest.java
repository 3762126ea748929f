package org.framewright.job;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.framewright.naming.Convention;
import org.framewright.shotlist.Heading;
import org.framewright.shotlist.ListOptions;
import org.framewright.shotlist.ListProblem;
import org.framewright.shotlist.ListReader;
import org.framewright.shotlist.ListReading;
import org.framewright.shotlist.Setup;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The lists that clients send, in {@code src/test/resources/lists}: invented scenarios in the
 * shapes that are common practice (no source), each with what is to come of it.
 */
class ListShapesTest {
  static final Path LISTS = Path.of("src/test/resources/lists");

  /**
   * One list.
   *
   * @param options as on the command line
   * @param outcome understood, asked or refused
   * @param setups code and views of each, where it is understood
   * @param says a part of what is said of it
   */
  record Shape(
      String what,
      String file,
      String convention,
      String options,
      String outcome,
      String setups,
      String says) {
    @Override
    public String toString() {
      return what + ": " + file;
    }
  }

  static Stream<Shape> shapes() throws IOException {
    return Files.readAllLines(LISTS.resolve("list-shapes.txt"), StandardCharsets.UTF_8).stream()
        .filter(line -> !line.isBlank() && !line.startsWith("#"))
        .map(line -> Stream.of(line.split("\\|", -1)).map(String::strip).toList())
        .map(
            cells ->
                new Shape(
                    cells.get(0),
                    cells.get(1),
                    cells.get(2),
                    cells.get(3),
                    cells.get(4),
                    cells.get(5),
                    cells.get(6)));
  }

  static ListReading read(Shape shape, Path folder) throws IOException {
    var own = LISTS.resolve(shape.convention() + ".yaml");
    var file = Files.exists(own) ? own : Path.of("templates", shape.convention() + ".yaml");
    var convention = ((Convention.Parsed.Sound) Convention.read(file)).convention();
    var values = Map.of("client", "NOVA", "day", "2026-11-23", "title", "spring");
    return ListReader.read(
        folder.resolve(shape.file()),
        options(shape.options()),
        ConventionFit.of(convention, values));
  }

  private static ListOptions options(String text) {
    var columns = new LinkedHashMap<String, String>();
    var uses = new LinkedHashMap<String, Heading>();
    var others = new LinkedHashMap<String, String>();
    for (var option : text.isEmpty() ? List.<String>of() : List.of(text.split(";", -1))) {
      var parts = option.strip().split("=", -1);
      if (parts.length == 3 && Heading.ofUse(parts[1]).isPresent()) {
        uses.put(parts[2], Heading.ofUse(parts[1]).get());
      } else if (parts.length == 3) {
        columns.put(parts[1], parts[2]);
      } else {
        others.put(parts[0], parts[1]);
      }
    }
    return new ListOptions(
        columns,
        uses,
        Optional.ofNullable(others.get("sheet")),
        Optional.ofNullable(others.get("encoding")),
        Optional.ofNullable(others.get("one-setup-per")));
  }

  static String outcome(ListReading reading) {
    return switch (reading) {
      case ListReading.Understood _ -> "understood";
      case ListReading.Refused refused -> refused.waysOn().isEmpty() ? "refused" : "asked";
    };
  }

  static String setups(ListReading reading) {
    return reading instanceof ListReading.Understood understood
        ? understood.list().setups().stream()
            .map(ListShapesTest::described)
            .collect(Collectors.joining(" "))
        : "";
  }

  private static String described(Setup setup) {
    return setup.code() + (setup.views().isEmpty() ? "" : "(" + setup.viewsText() + ")");
  }

  static String said(ListReading reading) {
    return switch (reading) {
      case ListReading.Understood understood ->
          understood.form()
              + "\n"
              + understood.columns()
              + "\n"
              + lines(understood.told())
              + understood.list();
      case ListReading.Refused refused -> lines(refused.problems()) + refused.waysOn();
    };
  }

  private static String lines(List<ListProblem> problems) {
    return problems.stream()
        .map(problem -> problem.onCommandLine().sentences() + "\n")
        .collect(Collectors.joining());
  }

  @Tag("slow")
  @ParameterizedTest
  @MethodSource("shapes")
  void comesOutAsTheTableSays(Shape shape) throws IOException {
    var reading = read(shape, LISTS);
    assertThat(outcome(reading)).as(said(reading)).isEqualTo(shape.outcome());
    assertThat(setups(reading)).as(said(reading)).isEqualTo(shape.setups());
    assertThat(said(reading)).contains(shape.says());
  }

  @Test
  void theTableHasShapesOfEveryOutcome() throws IOException {
    var outcomes = shapes().collect(Collectors.groupingBy(Shape::outcome, Collectors.counting()));
    assertThat(outcomes).containsOnlyKeys("understood", "asked", "refused");
    assertThat(shapes()).hasSizeGreaterThanOrEqualTo(40);
  }
}
