package org.framewright.shotlist;

import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SequencedMap;

/**
 * One line of the shot list: a look, a garment, a product, a portrait, a room.
 *
 * @param code what people call it by, such as {@code 001} or {@code A-12}; unique in its list
 * @param title what it is, in the client's words; empty when the list gives none
 * @param views the wanted views, in the list's order; empty when the list gives none
 * @param framesWanted frames wanted of the whole setup, when the list has a number for it
 * @param columns every other column of the client's list: its heading as written, and this line's
 *     text, in the list's order
 */
public record Setup(
    String code,
    String title,
    List<View> views,
    OptionalInt framesWanted,
    SequencedMap<String, String> columns) {

  /** More frames than anybody wants of one setup. */
  public static final int MOST_FRAMES = 9_999;

  public Setup {
    if (code.isBlank()) {
      throw new IllegalArgumentException("a setup without a code");
    }
    views = List.copyOf(views);
    columns = Collections.unmodifiableSequencedMap(new LinkedHashMap<>(columns));
  }

  /** A setup with only a code and a title. */
  public Setup(String code, String title) {
    this(code, title, List.of(), OptionalInt.empty(), new LinkedHashMap<>());
  }

  /** The day that the list plans it for, as written. */
  public Optional<String> day() {
    return column(Heading.DAY);
  }

  /** The rack, rail or shelf that it hangs on or lies in. */
  public Optional<String> rack() {
    return column(Heading.RACK);
  }

  /** The model who wears it. */
  public Optional<String> model() {
    return column(Heading.MODEL);
  }

  /** The client's note. */
  public Optional<String> note() {
    return column(Heading.NOTE);
  }

  /**
   * Frames wanted in all: the setup's own number, else the sum of its views when each has one, else
   * empty.
   */
  public OptionalInt wanted() {
    if (framesWanted.isPresent() || views.isEmpty()) {
      return framesWanted;
    }
    return views.stream().allMatch(view -> view.frames().isPresent())
        ? OptionalInt.of(views.stream().mapToInt(view -> view.frames().getAsInt()).sum())
        : OptionalInt.empty();
  }

  /** The wanted view that a person means by this text, whatever its case. */
  public Optional<View> view(String code) {
    return views.stream().filter(view -> view.code().equalsIgnoreCase(code.strip())).findFirst();
  }

  /** The views as a list's cell shows them: {@code F:8, B:4}. */
  public String viewsText() {
    return ViewsText.write(views);
  }

  /**
   * Whether the list says the same of another setup; a column that is blank says as much as one
   * that is not there.
   */
  public boolean saysTheSameAs(Setup other) {
    return code.equals(other.code)
        && title.equals(other.title)
        && views.equals(other.views)
        && framesWanted.equals(other.framesWanted)
        && (columns.equals(other.columns) || filled(columns).equals(filled(other.columns)));
  }

  private static Map<String, String> filled(Map<String, String> columns) {
    var filled = new HashMap<>(columns);
    filled.values().removeIf(String::isEmpty);
    return filled;
  }

  private Optional<String> column(Heading heading) {
    return columns.entrySet().stream()
        .filter(column -> Heading.of(column.getKey()) == heading)
        .map(Map.Entry::getValue)
        .filter(text -> !text.isBlank())
        .findFirst();
  }

  /**
   * What two codes share when names and people cannot tell them apart: case and leading zeros do
   * not count, so {@code 1} and {@code 001}, {@code a-12} and {@code A-012} are one.
   */
  public static String canonicalKey(String code) {
    var upper = code.strip().toUpperCase(Locale.ROOT);
    if (upper.indexOf('0') < 0) {
      return upper;
    }
    var canonicalKey = new StringBuilder(upper.length());
    for (int i = 0; i < upper.length(); i++) {
      char c = upper.charAt(i);
      boolean behindDigit =
          !canonicalKey.isEmpty() && isDigit(canonicalKey.charAt(canonicalKey.length() - 1));
      boolean beforeDigit = i + 1 < upper.length() && isDigit(upper.charAt(i + 1));
      if (c != '0' || behindDigit || !beforeDigit) {
        canonicalKey.append(c);
      }
    }
    return canonicalKey.toString();
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }
}
