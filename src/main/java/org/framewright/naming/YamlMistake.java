package org.framewright.naming;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.framewright.base.Text;

/**
 * Why a text is not YAML, in the words of somebody who wrote a convention. The parser says where it
 * stopped, which is often below the mistake, and why in its own terms; the text around that place
 * says what was probably meant.
 *
 * @param line counted from 1
 * @param column counted from 1
 */
record YamlMistake(int line, int column, Text what, Text remedy) {
  /** A place that the parser names; line and column count from 1. */
  record Mark(int line, int column) {}

  /** A pattern that is not in quotes, so that YAML takes its first field for a mapping. */
  private static final Pattern BARE_PATTERN =
      Pattern.compile("^\\s*[^\\s:#{\\[]+:\\s+([{\\[]\\{?[A-Za-z0-9_.]+}.*)$");

  /** A key whose colon is missing: a word, then what should be its value. */
  private static final Pattern NO_COLON = Pattern.compile("^\\s*([^\\s:#{\\[\"']+)\\s*[{\\[]");

  /** A key alone on its line, whose colon is missing. */
  private static final Pattern ALONE = Pattern.compile("^\\s*([^\\s:#{\\[\"'-][^:#]*?)\\s*(#.*)?$");

  /**
   * @param problem what the parser says
   * @param begun where the piece began that it was reading, if it says so
   * @param at where it stopped
   */
  static YamlMistake of(String problem, Optional<Mark> begun, Mark at, String yaml) {
    var text = new Lines(yaml.lines().toList());
    return text.tab(problem, at)
        .or(() -> text.character(problem, at))
        .or(() -> text.barePattern(at))
        .or(() -> text.openQuote(at))
        .or(() -> text.colon(problem, begun, at))
        .or(() -> flow(problem, begun, at))
        .or(() -> known(problem, at))
        .orElseGet(
            () ->
                mistake(
                    at,
                    Text.of("this is not YAML from here on"),
                    Text.of(
                        "Check the indentation, the colons, the quotes and the brackets of this"
                            + " line and of the one above.")));
  }

  private static YamlMistake mistake(Mark at, Text what, Text remedy) {
    return new YamlMistake(at.line, at.column, what, remedy);
  }

  private static Optional<YamlMistake> flow(String problem, Optional<Mark> begun, Mark at) {
    for (var pair : List.of("{}", "[]")) {
      var close = pair.substring(1);
      if (problem.startsWith("expected ',' or '" + close + "'")) {
        var opened = begun.orElse(at);
        return Optional.of(
            opened.line < at.line
                ? mistake(
                    opened,
                    Text.of("this {0} is not closed", pair.charAt(0)),
                    Text.of("Close it with {0} at the end of what belongs to it.", close))
                : mistake(
                    at,
                    Text.of("a comma or a {0} is missing here", close),
                    Text.of(
                        "Put a comma between two entries, and {0} after the last one.", close)));
      }
    }
    return Optional.empty();
  }

  private static Optional<YamlMistake> known(String problem, Mark at) {
    if (problem.contains("escape")) {
      return Optional.of(
          mistake(
              at,
              Text.of("in double quotes a \\ begins an escape, and this is none"),
              Text.of("Put the text in single quotes.")));
    }
    if (problem.startsWith("expected <block end>")) {
      return Optional.of(
          problem.contains("block mapping start") || problem.contains("block sequence start")
              ? mistake(
                  at,
                  Text.of("this line begins in another column than those it belongs to"),
                  Text.of("Begin it in the same column as they do."))
              : mistake(
                  at,
                  Text.of("the value before this has ended already"),
                  Text.of("Put the whole value in quotes, or begin a new line here.")));
    }
    if (problem.startsWith("sequence entries are not allowed")) {
      return Optional.of(
          mistake(
              at,
              Text.of("a list cannot begin here"),
              Text.of("Begin it on a line of its own, below its key.")));
    }
    if (problem.contains("chomping or indentation")
        || problem.contains("comment or a line break")) {
      return Optional.of(
          mistake(
              at,
              Text.of("a | or > begins a text of several lines, and nothing else may follow it"),
              Text.of("Put the text in quotes.")));
    }
    return Optional.empty();
  }

  /** The text around a place. */
  private record Lines(List<String> lines) {
    private static final int LONGEST = 1_000;

    /** A line by its number; empty where there is none, or one that nobody wrote by hand. */
    String line(int number) {
      var line = number < 1 || number > lines.size() ? "" : lines.get(number - 1);
      return line.length() > LONGEST ? "" : line;
    }

    Optional<YamlMistake> tab(String problem, Mark at) {
      var line = line(at.line);
      int text = 0;
      while (text < line.length() && Character.isWhitespace(line.charAt(text))) {
        text++;
      }
      int tab = line.indexOf('\t');
      return tab >= 0 && (tab < text || problem.contains("TAB"))
          ? Optional.of(
              mistake(
                  new Mark(at.line, line.codePointCount(0, tab) + 1),
                  Text.of("a tab stands here, and YAML indents by spaces"),
                  Text.of("Put two spaces in its place.")))
          : Optional.empty();
    }

    Optional<YamlMistake> character(String problem, Mark at) {
      var line = line(at.line);
      if (!problem.startsWith("found character")
          || at.column > line.codePointCount(0, line.length())) {
        return Optional.empty();
      }
      var character =
          Character.toString(line.codePointAt(line.offsetByCodePoints(0, at.column - 1)));
      return Optional.of(
          mistake(
              at,
              Text.of(
                  "a text cannot begin with “{0}” unless it is in quotes", Quoted.bare(character)),
              Text.of("Put the text in quotes.")));
    }

    Optional<YamlMistake> barePattern(Mark at) {
      for (int number : List.of(at.line, at.line - 1)) {
        var bare = BARE_PATTERN.matcher(line(number));
        if (bare.matches()) {
          var value = bare.group(1).strip();
          return Optional.of(
              mistake(
                  new Mark(number, line(number).codePointCount(0, bare.start(1)) + 1),
                  Text.of("a pattern that begins with {0} needs quotes", value.charAt(0)),
                  Text.of("Write it as \"{0}\".", Quoted.bare(value))));
        }
      }
      return Optional.empty();
    }

    /** The first quotation mark that opens a text and has no other on its line. */
    Optional<YamlMistake> openQuote(Mark at) {
      for (int number = 1; number <= Math.min(at.line, lines.size()); number++) {
        int open = openQuote(line(number));
        if (open >= 0) {
          var sign = line(number).charAt(open);
          return Optional.of(
              mistake(
                  new Mark(number, line(number).codePointCount(0, open) + 1),
                  Text.of("this quotation mark is not closed"),
                  Text.of("Close it with {0} on the same line.", sign)));
        }
      }
      return Optional.empty();
    }

    private static int openQuote(String line) {
      int open = -1;
      for (int i = 0; i < line.length(); i++) {
        char c = line.charAt(i);
        if (open >= 0) {
          if (c == '\\' && line.charAt(open) == '"') {
            i++;
          } else if (c == line.charAt(open)) {
            open = -1;
          }
        } else if (c == '#' && (i == 0 || Character.isWhitespace(line.charAt(i - 1)))) {
          return -1;
        } else if ((c == '"' || c == '\'') && beginsText(line, i)) {
          open = i;
        }
      }
      return open;
    }

    private static boolean beginsText(String line, int at) {
      for (int i = at - 1; i >= 0; i--) {
        char c = line.charAt(i);
        if (!Character.isWhitespace(c)) {
          return "[{,".indexOf(c) >= 0 || (":-?".indexOf(c) >= 0 && i < at - 1);
        }
      }
      return true;
    }

    Optional<YamlMistake> colon(String problem, Optional<Mark> begun, Mark at) {
      if (problem.startsWith("could not find expected ':'")) {
        var line = begun.orElse(at);
        var key = ALONE.matcher(line(line.line));
        if (key.matches()) {
          return Optional.of(noColon(line.line, key.end(1), key.group(1)));
        }
        return Optional.of(
            mistake(
                line,
                Text.of("this line has no colon"),
                Text.of("Write it as “key: value”, or take it out.")));
      }
      if (!problem.startsWith("mapping values are not allowed")) {
        return Optional.empty();
      }
      var missing = NO_COLON.matcher(line(at.line));
      if (missing.find()) {
        return Optional.of(noColon(at.line, missing.end(1), missing.group(1)));
      }
      int above = at.line - 1;
      while (above > 0 && line(above).isBlank()) {
        above--;
      }
      var alone = ALONE.matcher(line(above));
      return Optional.of(
          alone.matches()
              ? noColon(above, alone.end(1), alone.group(1))
              : mistake(
                  at,
                  Text.of("a colon and a space end a key, and this text has them in it"),
                  Text.of("Put the text in quotes.")));
    }

    private YamlMistake noColon(int line, int end, String key) {
      return mistake(
          new Mark(line, line(line).codePointCount(0, end) + 1),
          Text.of("the colon behind “{0}” is missing", Quoted.bare(key)),
          Text.of("Write {0}: and its value.", Quoted.bare(key)));
    }
  }
}
