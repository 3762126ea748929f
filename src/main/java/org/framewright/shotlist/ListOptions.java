package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import org.framewright.base.Text;

/**
 * What a person says about how a list is to be read, where it is not to be found out.
 *
 * @param columns by field, the heading of the column that holds it. A field is one of setup, title,
 *     views, frames, day, rack, model and note, or one of the convention's own. A column without a
 *     heading is {@code column 3}
 * @param uses by heading, what else a column is, of which there may be several: kept as it is, not
 *     used, or a view wanted
 * @param sheet the sheet of a workbook
 * @param encoding the encoding of a text, by a name of the IANA registry
 * @param oneSetupPer the heading of the column whose equal cells make lines one setup; blank where
 *     lines are not to be put together, whatever was chosen before
 */
public record ListOptions(
    SequencedMap<String, String> columns,
    SequencedMap<String, Heading> uses,
    Optional<String> sheet,
    Optional<String> encoding,
    Optional<String> oneSetupPer) {

  /** Everything is to be found out. */
  public static final ListOptions NONE =
      new ListOptions(new LinkedHashMap<>(), Optional.empty(), Optional.empty(), Optional.empty());

  /**
   * @throws IllegalArgumentException if a use is none of which there may be several
   */
  public ListOptions {
    for (var use : uses.values()) {
      if (use.use().isEmpty()) {
        throw new IllegalArgumentException(use.word());
      }
    }
    uses = Collections.unmodifiableSequencedMap(new LinkedHashMap<>(uses));
    columns = Collections.unmodifiableSequencedMap(new LinkedHashMap<>(columns));
  }

  /** Where no column is said to be kept, unused or a view. */
  public ListOptions(
      SequencedMap<String, String> columns,
      Optional<String> sheet,
      Optional<String> encoding,
      Optional<String> oneSetupPer) {
    this(columns, new LinkedHashMap<>(), sheet, encoding, oneSetupPer);
  }

  /** Whether nothing is said. */
  public boolean isNone() {
    return equals(NONE);
  }

  /** These, and where they say nothing the others. */
  public ListOptions over(ListOptions others) {
    var before = others;
    // A column is one thing: what it was before gives way.
    for (var heading : columns.values()) {
      before = before.without(heading);
    }
    for (var heading : uses.keySet()) {
      before = before.without(heading);
    }
    var all = new LinkedHashMap<>(before.columns);
    all.putAll(columns);
    var allUses = new LinkedHashMap<>(before.uses);
    allUses.putAll(uses);
    return new ListOptions(
        all,
        allUses,
        sheet.or(() -> others.sheet),
        encoding.or(() -> others.encoding),
        oneSetupPer.or(() -> others.oneSetupPer));
  }

  /** The same with a column chosen. */
  public ListOptions withColumn(String field, String heading) {
    return new ListOptions(
            new LinkedHashMap<>(Map.of(field, heading)),
            Optional.empty(),
            Optional.empty(),
            Optional.empty())
        .over(this);
  }

  /**
   * The same with a column that is kept, unused or a view.
   *
   * @throws IllegalArgumentException if the use is none of these
   */
  public ListOptions withUse(Heading use, String heading) {
    var one = new LinkedHashMap<>(Map.of(heading, use));
    return new ListOptions(
            new LinkedHashMap<>(), one, Optional.empty(), Optional.empty(), Optional.empty())
        .over(this);
  }

  /** The same with nothing said about what a column is. */
  public ListOptions without(String heading) {
    var otherColumns = new LinkedHashMap<>(columns);
    otherColumns.values().removeIf(other -> Heading.isSame(other, heading));
    var otherUses = new LinkedHashMap<>(uses);
    otherUses.keySet().removeIf(other -> Heading.isSame(other, heading));
    return new ListOptions(otherColumns, otherUses, sheet, encoding, oneSetupPer);
  }

  /** What a column is said to be: a field, or else kept, unused or one-view. */
  public Optional<String> said(String heading) {
    for (var column : columns.entrySet()) {
      if (Heading.isSame(column.getValue(), heading)) {
        return Optional.of(column.getKey());
      }
    }
    for (var use : uses.entrySet()) {
      if (Heading.isSame(use.getKey(), heading)) {
        return use.getValue().use();
      }
    }
    return Optional.empty();
  }

  /** What is said of columns with these headings, and of no other; nothing of the file. */
  public ListOptions ofColumns(Collection<String> headings) {
    var some = new LinkedHashMap<>(columns);
    some.values().removeIf(heading -> isNone(headings, heading));
    var someUses = new LinkedHashMap<>(uses);
    someUses.keySet().removeIf(heading -> isNone(headings, heading));
    return new ListOptions(
        some,
        someUses,
        Optional.empty(),
        Optional.empty(),
        oneSetupPer.filter(heading -> heading.isBlank() || !isNone(headings, heading)));
  }

  private static boolean isNone(Collection<String> headings, String heading) {
    return headings.stream().noneMatch(other -> Heading.isSame(other, heading));
  }

  /** The same with lines put together; blank where they are not to be. */
  public ListOptions withOneSetupPer(String heading) {
    return new ListOptions(columns, uses, sheet, encoding, Optional.of(heading));
  }

  /** The same with a sheet. */
  public ListOptions withSheet(String name) {
    return new ListOptions(columns, uses, Optional.of(name), encoding, oneSetupPer);
  }

  /** Only that the list stands in this sheet: what was said was said of another one. */
  public static ListOptions ofSheet(String name) {
    return NONE.withSheet(name);
  }

  /** Only that the list is written in this encoding: in another one its headings are others. */
  public static ListOptions ofEncoding(String name) {
    return new ListOptions(
        NONE.columns, NONE.uses, Optional.empty(), Optional.of(name), Optional.empty());
  }

  /** The column that makes lines one setup, if there is to be one. */
  public Optional<String> merging() {
    return oneSetupPer.filter(heading -> !heading.isBlank());
  }

  /** As a command line says it: {@code --column setup="Art. No." --sheet Tops}. */
  public String words() {
    var words = new ArrayList<String>();
    columns.forEach((field, heading) -> words.add("--column " + quoted(field + "=" + heading)));
    uses.forEach(
        (heading, use) -> words.add("--column " + quoted(use.use().orElseThrow() + "=" + heading)));
    sheet.ifPresent(name -> words.add("--sheet " + quoted(name)));
    encoding.ifPresent(name -> words.add("--encoding " + quoted(name)));
    merging().ifPresent(heading -> words.add("--one-setup-per " + quoted(heading)));
    return String.join(" ", words);
  }

  private static String quoted(String text) {
    boolean plain =
        !text.isEmpty()
            && text.chars().allMatch(c -> Character.isLetterOrDigit(c) || "=-_.".indexOf(c) >= 0);
    return plain ? text : '"' + text + '"';
  }

  /** What is said, in words: a phrase each. */
  public List<Text> phrases() {
    var phrases = new ArrayList<Text>();
    columns.forEach(
        (field, heading) -> phrases.add(Text.of("{0} from \"{1}\"", named(field), heading)));
    uses.forEach(
        (heading, use) ->
            phrases.add(
                Text.of(
                    switch (use) {
                      case VIEW -> "\"{0}\" is a view wanted";
                      case UNUSED -> "\"{0}\" is not used";
                      default -> "\"{0}\" is kept as it is";
                    },
                    heading)));
    sheet.ifPresent(name -> phrases.add(Text.of("the sheet \"{0}\"", name)));
    encoding.ifPresent(name -> phrases.add(Text.of("the encoding {0}", name)));
    merging().ifPresent(heading -> phrases.add(Text.of("one setup per \"{0}\"", heading)));
    return List.copyOf(phrases);
  }

  private static Text named(String field) {
    return switch (field) {
      case "setup" -> Text.of("setup");
      case "title" -> Text.of("title");
      case "views" -> Text.of("views");
      case "frames" -> Text.of("frames");
      case "day" -> Text.of("day");
      case "rack" -> Text.of("rack");
      case "model" -> Text.of("model");
      case "note" -> Text.of("note");
      default -> Text.of("{0}", field);
    };
  }
}
