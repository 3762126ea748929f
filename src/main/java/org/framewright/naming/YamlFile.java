package org.framewright.naming;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Optional;
import java.util.regex.Pattern;
import org.framewright.base.Text;

/**
 * Reads YAML into a tree that knows where each piece stands. Only what a convention and other files
 * that people write for a job need: one document of mappings, lists and texts, without anchors,
 * aliases and tags. Every scalar is text, whatever type YAML would give it.
 */
public final class YamlFile {
  private static final YAMLFactory FACTORY =
      YAMLFactory.builder()
          .streamReadConstraints(
              StreamReadConstraints.builder()
                  .maxNestingDepth(Limits.DEPTH)
                  .maxStringLength(Limits.FILE)
                  .maxNumberLength(Limits.FILE)
                  .maxNameLength(Limits.FILE)
                  .maxDocumentLength(Limits.FILE)
                  .build())
          .build();

  /** The place that the parser's messages end with; text of the file is indented deeper. */
  private static final Pattern MARK =
      Pattern.compile("(?m)^ in 'reader', line ([0-9]{1,9}), column ([0-9]{1,9}):$");

  /** A file that cannot be read on: where, what and its remedy. */
  private static final class Refused extends Exception {
    private static final long serialVersionUID = 1L;

    private final int line;
    private final int column;
    private final transient Text what;
    private final transient Text remedy;

    Refused(int line, int column, Text what, Text remedy) {
      super(what.english(), null, false, false);
      this.what = what;
      this.line = line;
      this.column = column;
      this.remedy = remedy;
    }
  }

  private final String yaml;
  private final JsonParser parser;

  private YamlFile(String yaml, JsonParser parser) {
    this.yaml = yaml;
    this.parser = parser;
  }

  /** What a text is read as. */
  public sealed interface Tree {
    /** It is YAML; empty where nothing is in it. */
    record Sound(Optional<YamlNode> root) implements Tree {}

    /** It cannot be read on from a place. */
    record Faulty(int line, int column, Text what, Text remedy) implements Tree {}
  }

  /**
   * Reads a text.
   *
   * @param source the name of its file, for what is said of it
   */
  public static Tree tree(String yaml, String source) {
    try {
      requireSize(yaml, source);
      requireCharacters(yaml);
      try (var parser = FACTORY.createParser(yaml)) {
        return new Tree.Sound(Optional.ofNullable(new YamlFile(yaml, parser).document()));
      } catch (IOException e) {
        throw new IllegalStateException("a text in memory cannot be read", e);
      }
    } catch (Refused e) {
      return new Tree.Faulty(e.line, e.column, e.what, e.remedy);
    }
  }

  /** The tree; empty where there is none, and the fault is then among the faults. */
  static Optional<YamlNode> read(String yaml, String source, Faults faults) {
    return switch (tree(yaml, source)) {
      case Tree.Sound sound -> sound.root();
      case Tree.Faulty faulty -> {
        faults.add(
            new Declared.Place("convention", faulty.line(), faulty.column()),
            faulty.what(),
            faulty.remedy());
        yield Optional.empty();
      }
    };
  }

  private static void requireSize(String yaml, String source) throws Refused {
    if (yaml.length() > Limits.FILE) {
      throw tooLarge(source);
    }
  }

  private static Refused tooLarge(String source) {
    return new Refused(
        1,
        1,
        Text.of("{0} is larger than {1} kB", Quoted.bare(source), Limits.FILE / 1024),
        Text.of("It should be a page of text; take out what does not belong to it."));
  }

  /** YAML 1.2.2, 5.1: the printable characters; a file has no others. */
  private static void requireCharacters(String yaml) throws Refused {
    int line = 1;
    int column = 1;
    for (int i = 0; i < yaml.length(); ) {
      int c = yaml.codePointAt(i);
      boolean printable =
          c == '\t'
              || c == '\n'
              || c == '\r'
              || (c >= 0x20 && c <= 0x7E)
              || c == 0x85
              || (c >= 0xA0 && c <= 0xD7FF)
              || (c >= 0xE000 && c <= 0xFFFD)
              || c >= 0x10000;
      if (!printable) {
        throw new Refused(
            line,
            column,
            Text.of("the character {0} cannot be in such a file", "U+%04X".formatted(c)),
            Text.of("Take it out, and save the file as plain text in UTF-8."));
      }
      i += Character.charCount(c);
      if (c == '\n') {
        line++;
        column = 1;
      } else {
        column++;
      }
    }
  }

  private YamlNode document() throws IOException, Refused {
    var first = next();
    if (first == null) {
      return null;
    }
    var root = node(first);
    if (next() != null) {
      throw refused(
          Text.of("this begins a second document, and one is all there can be"),
          Text.of("Take the --- out."));
    }
    return root;
  }

  /** The next token. */
  private JsonToken next() throws IOException, Refused {
    try {
      var token = parser.nextToken();
      if (token != null && token != JsonToken.END_OBJECT && token != JsonToken.END_ARRAY) {
        requirePlain();
      }
      return token;
    } catch (StreamConstraintsException e) {
      throw refused(
          Text.of("this is nested deeper than {0}", Limits.DEPTH),
          Text.of("A depth of five is enough."));
    } catch (JsonProcessingException e) {
      throw notYaml(e);
    }
  }

  private YamlNode node(JsonToken token) throws IOException, Refused {
    var start = parser.currentTokenLocation();
    return switch (token) {
      case START_OBJECT -> mapping(start);
      case START_ARRAY -> {
        var items = new ArrayList<YamlNode>();
        for (var item = next(); item != JsonToken.END_ARRAY; item = next()) {
          items.add(node(item));
        }
        yield new YamlNode.Sequence(items, start.getLineNr(), start.getColumnNr());
      }
      default -> text(start);
    };
  }

  private YamlNode mapping(JsonLocation start) throws IOException, Refused {
    var entries = new ArrayList<YamlNode.Entry>();
    while (next() != JsonToken.END_OBJECT) {
      var key = text(parser.currentTokenLocation());
      entries.add(new YamlNode.Entry(key, node(next())));
    }
    return new YamlNode.Mapping(entries, start.getLineNr(), start.getColumnNr());
  }

  private YamlNode.Text text(JsonLocation start) throws IOException {
    var text = parser.getText();
    var end = parser.currentLocation();
    int columns = end.getColumnNr() - start.getColumnNr();
    int inset = end.getLineNr() != start.getLineNr() ? -1 : columns == text.length() + 2 ? 1 : 0;
    return new YamlNode.Text(text, start.getLineNr(), start.getColumnNr(), inset);
  }

  /** Refuses what stands in front of a piece, or in its place, by the sign that it begins with. */
  private void requirePlain() throws Refused {
    var start = parser.currentTokenLocation();
    if (start.getCharOffset() == parser.currentLocation().getCharOffset()) {
      return; // Nothing is written there, as after “key:”.
    }
    switch (signAt(start)) {
      case '&' ->
          throw refused(
              Text.of("anchors (&name) are not allowed here"),
              Text.of("Take it out; write texts out."));
      case '*' ->
          throw refused(
              Text.of("aliases (*name) are not allowed here"), Text.of("Write the text out."));
      case '!' ->
          throw refused(Text.of("tags (!name) are not allowed here"), Text.of("Take it out."));
      default -> {}
    }
  }

  /** The parser counts code points. */
  private char signAt(JsonLocation location) {
    int at = yaml.offsetByCodePoints(0, (int) location.getCharOffset());
    return at < yaml.length() ? yaml.charAt(at) : '\n';
  }

  private Refused refused(Text what, Text remedy) {
    var place = parser.currentTokenLocation();
    return new Refused(
        Math.max(1, place.getLineNr()), Math.max(1, place.getColumnNr()), what, remedy);
  }

  private Refused notYaml(JsonProcessingException e) throws Refused {
    var said = String.valueOf(e.getOriginalMessage());
    if (said.startsWith("Expected a field name")) {
      requirePlain();
      return refused(Text.of("a key must be plain text"), Text.of("Write it as “key: value”."));
    }
    var place = parser.currentLocation();
    var at = new YamlMistake.Mark(Math.max(1, place.getLineNr()), Math.max(1, place.getColumnNr()));
    var begun = Optional.<YamlMistake.Mark>empty();
    int end = said.length();
    for (var mark = MARK.matcher(said); mark.find(); ) {
      begun = end < said.length() ? Optional.of(at) : begun;
      at = new YamlMistake.Mark(Integer.parseInt(mark.group(1)), Integer.parseInt(mark.group(2)));
      end = mark.start();
    }
    var problem = said.substring(0, end).lines().reduce("", (before, last) -> last);
    var mistake = YamlMistake.of(problem, begun, at, yaml);
    return new Refused(mistake.line(), mistake.column(), mistake.what(), mistake.remedy());
  }
}
