package org.framewright.ui.start;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A piece of a name on the ruler.
 *
 * @param field the field that it shows; empty for the convention's own text between fields
 * @param example whether an example stands there because nothing was typed yet
 */
record Segment(String text, Optional<String> field, boolean example) {
  private static final Pattern EXPRESSION = Pattern.compile("\\{([^{}.]+)(?:\\.[^{}]*)?}|\\[|]");

  /** A pattern of more fields than a person reads is not cut: matching could take long. */
  private static final int MOST_FIELDS = 12;

  /**
   * Cuts a name along its pattern. Only for showing: where a name could be cut in two ways, the
   * shortest first pieces are taken.
   *
   * @param examples the fields whose values are examples
   */
  static List<Segment> cut(String name, String pattern, Set<String> examples) {
    var fields = new ArrayList<Optional<String>>();
    var matched = matcher(pattern, fields).matcher(name);
    if (fields.stream().flatMap(Optional::stream).count() > MOST_FIELDS || !matched.matches()) {
      return List.of(new Segment(name, Optional.empty(), false));
    }
    return pieces(matched, fields, examples);
  }

  private static Pattern matcher(String pattern, List<Optional<String>> fields) {
    var regex = new StringBuilder();
    var parts = EXPRESSION.matcher(pattern);
    var from = 0;
    while (parts.find()) {
      literal(regex, pattern.substring(from, parts.start()), fields);
      from = parts.end();
      switch (parts.group()) {
        case "[" -> regex.append("(?:");
        case "]" -> regex.append(")?");
        default -> {
          regex.append("(.+?)");
          fields.add(Optional.of(parts.group(1)));
        }
      }
    }
    literal(regex, pattern.substring(from), fields);
    return Pattern.compile(regex.toString(), Pattern.DOTALL);
  }

  private static void literal(StringBuilder regex, String text, List<Optional<String>> fields) {
    if (!text.isEmpty()) {
      regex.append('(').append(Pattern.quote(text)).append(')');
      fields.add(Optional.empty());
    }
  }

  private static List<Segment> pieces(
      Matcher matched, List<Optional<String>> fields, Set<String> examples) {
    var segments = new ArrayList<Segment>();
    for (var i = 0; i < fields.size(); i++) {
      var text = matched.group(i + 1);
      if (text != null) {
        var field = fields.get(i);
        segments.add(new Segment(text, field, field.filter(examples::contains).isPresent()));
      }
    }
    return List.copyOf(segments);
  }
}
