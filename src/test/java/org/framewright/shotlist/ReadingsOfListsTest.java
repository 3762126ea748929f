package org.framewright.shotlist;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.framewright.base.Text;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Lists as clients send them, each with how it is read: {@code
 * src/test/resources/readings-of-lists.txt}, whose head says how to read it. The lists are
 * invented; their shapes are common practice, no source.
 */
class ReadingsOfListsTest {
  private static final Path CASES = Path.of("src/test/resources/readings-of-lists.txt");

  /** One list, what a person says of it, and its reading. */
  record Case(String name, List<String> said, String list, String reading) {
    @Override
    public String toString() {
      return name;
    }
  }

  static Stream<Case> lists() throws IOException {
    var parts = Files.readString(CASES).split("(?m)^== ");
    return Arrays.stream(parts).skip(1).map(ReadingsOfListsTest::read);
  }

  private static Case read(String part) {
    var lines = new ArrayList<>(part.lines().toList());
    var name = lines.removeFirst();
    var said = lines.stream().takeWhile(line -> line.startsWith("--")).toList();
    int arrow = lines.indexOf("=>");
    var list = String.join("\n", lines.subList(said.size(), arrow));
    var reading = String.join("\n", lines.subList(arrow + 1, lines.size())).strip();
    return new Case(name, said, list, reading);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("lists")
  void isReadAs(Case one) {
    assertThat(reading(one)).isEqualTo(one.reading());
  }

  private static String reading(Case one) {
    var options = ListOptions.NONE;
    var fit = ListFit.ANY;
    for (var said : one.said()) {
      var words = said.split(" ", 2);
      options =
          switch (words[0]) {
            case "--names" -> options;
            case "--one-setup-per" -> options.withOneSetupPer(words[1]);
            case "--column" -> column(words[1].split("=", 2), options);
            default -> throw new IllegalArgumentException(said);
          };
      fit = words[0].equals("--names") ? new NumbersAndColours(words[1].equals("colour")) : fit;
    }
    var text = one.list().getBytes(StandardCharsets.UTF_8);
    var lines = new ArrayList<String>();
    switch (ListReader.read(text, "list", options, fit)) {
      case ListReading.Understood read -> {
        lines.add(read.form().english());
        read.list().setups().forEach(setup -> lines.add(line(setup)));
        read.remarks().forEach(remark -> lines.add("! " + words(remark)));
      }
      case ListReading.Refused refused -> {
        lines.add("refused");
        refused.problems().forEach(problem -> lines.add("! " + words(problem)));
        refused.waysOn().forEach(way -> lines.add("? " + way.options().words()));
      }
    }
    return String.join("\n", lines);
  }

  private static ListOptions column(String[] named, ListOptions options) {
    return Heading.ofUse(named[0])
        .map(use -> options.withUse(use, named[1]))
        .orElseGet(() -> options.withColumn(named[0], named[1]));
  }

  private static String words(ListProblem problem) {
    return (problem.line() > 0 ? "line " + problem.line() + ": " : "") + problem.problem().what();
  }

  private static String line(Setup setup) {
    var line = new StringBuilder(setup.code()).append(" | ").append(setup.title());
    line.append(" | ").append(setup.viewsText()).append(" |");
    setup.framesWanted().ifPresent(frames -> line.append(' ').append(frames));
    line.append(" |");
    setup
        .columns()
        .forEach(
            (name, text) -> line.append(" [").append(name).append(": ").append(text).append(']'));
    return line.toString();
  }

  /** Names with a setup of three digits at most, short views, and perhaps a colour. */
  private record NumbersAndColours(boolean withColour) implements ListFit {
    @Override
    public Map<String, String> fields() {
      return withColour
          ? Map.of(
              "setup", "setup", "garment", "setup", "view", "view", "colour", "colour", "shade",
              "colour")
          : Map.of("setup", "setup", "garment", "setup", "view", "view");
    }

    @Override
    public Optional<Misfit> code(String text) {
      return text.matches("[0-9]{1,3}")
          ? Optional.empty()
          : Optional.of(
              new Misfit(
                  "setup", text, Text.of("\"{0}\" is no number", text), Text.of("Number it.")));
    }

    @Override
    public boolean isView(String text) {
      return text.length() < 12;
    }

    @Override
    public Made make(Setup setup) {
      var misfits = new ArrayList<Misfit>();
      code(setup.code()).ifPresent(misfits::add);
      setup.views().stream()
          .filter(view -> view.code().length() > 8)
          .forEach(
              view ->
                  misfits.add(
                      new Misfit(
                          "view", view.code(), Text.of("the view is too long"), Text.of(""))));
      var colour =
          setup.columns().entrySet().stream()
              .filter(column -> List.of("colour", "shade").contains(Heading.plain(column.getKey())))
              .map(Map.Entry::getValue)
              .findFirst()
              .orElse("");
      if (withColour && colour.isEmpty()) {
        misfits.add(
            new Misfit("colour", "", Text.of("there is no colour"), Text.of("Name the column.")));
      } else if (colour.length() > 6) {
        misfits.add(
            new Misfit(
                "colour", colour, Text.of("\"{0}\" is too long", colour), Text.of("Shorten it.")));
      }
      var name = setup.code().substring(Math.max(0, setup.code().length() - 2));
      return new Made(misfits, misfits.isEmpty() ? Optional.of(name) : Optional.empty());
    }
  }
}
