package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;

/**
 * What a person says about how a list is to be read, where it is not to be found out.
 *
 * @param columns by field, the heading of the column that holds it. A field is one of setup, title,
 *     views, frames, day, rack, model and note, or one of the convention's own. A column without a
 *     heading is {@code column 3}
 * @param sheet the sheet of a workbook
 * @param encoding the encoding of a text, by a name of the IANA registry
 * @param oneSetupPer the heading of the column whose equal cells make lines one setup; blank where
 *     lines are not to be put together, whatever was chosen before
 */
public record ListOptions(
    SequencedMap<String, String> columns,
    Optional<String> sheet,
    Optional<String> encoding,
    Optional<String> oneSetupPer) {

  /** Everything is to be found out. */
  public static final ListOptions NONE =
      new ListOptions(new LinkedHashMap<>(), Optional.empty(), Optional.empty(), Optional.empty());

  public ListOptions {
    columns = Collections.unmodifiableSequencedMap(new LinkedHashMap<>(columns));
  }

  /** Whether nothing is said. */
  public boolean isNone() {
    return equals(NONE);
  }

  /** These, and where they say nothing the others. */
  public ListOptions over(ListOptions others) {
    var all = new LinkedHashMap<>(others.columns);
    // A column is one thing: what it was before gives way.
    columns
        .values()
        .forEach(
            heading ->
                all.values()
                    .removeIf(other -> Heading.plain(other).equals(Heading.plain(heading))));
    all.putAll(columns);
    return new ListOptions(
        all,
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

  /** The same with lines put together. */
  public ListOptions withOneSetupPer(String heading) {
    return new ListOptions(columns, sheet, encoding, Optional.of(heading));
  }

  /** The same with a sheet. */
  public ListOptions withSheet(String name) {
    return new ListOptions(columns, Optional.of(name), encoding, oneSetupPer);
  }

  /** The column that makes lines one setup, if there is to be one. */
  Optional<String> merging() {
    return oneSetupPer.filter(heading -> !heading.isBlank());
  }

  /** As a command line says it: {@code --column setup="Art. No." --sheet Tops}. */
  public String words() {
    var words = new ArrayList<String>();
    columns.forEach((field, heading) -> words.add("--column " + quoted(field + "=" + heading)));
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
  public List<String> phrases() {
    var phrases = new ArrayList<String>();
    columns.forEach((field, heading) -> phrases.add(field + " from \"" + heading + "\""));
    sheet.ifPresent(name -> phrases.add("the sheet \"" + name + "\""));
    encoding.ifPresent(name -> phrases.add("the encoding " + name));
    merging().ifPresent(heading -> phrases.add("one setup per \"" + heading + "\""));
    return List.copyOf(phrases);
  }
}
