package org.framewright.naming;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.framewright.naming.NameColumns.Column;
import org.framewright.naming.NameTokens.Kind;
import org.framewright.naming.Proposal.Role;

/** Writes a proposed convention: the pieces as fields, and patterns that put them together. */
final class ProposalText {
  /** What letters for views mean in the trade; common practice, no source. */
  private static final Map<String, String> VIEWS =
      Map.of(
          "F", "front", "B", "back", "S", "side", "D", "detail", "L", "left", "R", "right", "T",
          "top");

  private final NameColumns names;
  private final List<Role> roles;
  private final List<String> fieldNames = new ArrayList<>();
  private final Map<String, String> fields = new LinkedHashMap<>();
  private final String yaml;

  /**
   * @param jobEnd literal text behind a job's name that no example gives
   */
  ProposalText(
      String title, NameColumns names, List<Role> roles, Optional<String> job, String jobEnd) {
    this.names = names;
    this.roles = roles;
    for (int i = 0; i < roles.size(); i++) {
      fieldNames.add(fieldName(i));
      if (roles.get(i) != Role.TEXT) {
        fields.put(fieldNames.get(i), declaration(names.columns().get(i), roles.get(i), i));
      }
    }
    var jobPattern = job.map(this::jobPattern).orElseGet(() -> jobPattern() + jobEnd);
    boolean versioned = roles.contains(Role.VERSION);
    if (!versioned) {
      fields.put("version", "{type: number, digits: 2, from: 1}");
    }
    var text = new StringBuilder();
    text.append("convention: ").append(quoted(title)).append('\n');
    text.append("about: Proposed from names in use.\n\n");
    text.append("fields:\n");
    fields.forEach((name, declared) -> text.append("  " + name + ": " + declared + "\n"));
    text.append("\nnames:\n");
    text.append("  job:       " + quoted(jobPattern) + "\n");
    text.append("  frame:     " + quoted(framePattern()) + "\n");
    text.append("  select:    \"{frame}\"\n");
    text.append(
        "  retouched: "
            + (versioned ? "\"{select}_retouched\"" : "\"{select}_v{version}\"")
            + "\n");
    text.append("\nfolders:\n  frames: 01_frames\n  selects: 02_selects\n");
    text.append("  retouched: 03_retouched\n  paper: 09_paper\n");
    text.append("\ntravels-to: [windows, macos, linux, cloud]\n");
    this.yaml = text.toString();
  }

  /**
   * What a field's text is made of.
   *
   * @param signs what is neither letter nor digit, each once; what no field can have is not in it
   * @param beyond letters of other scripts, each once
   */
  private record Characters(
      Alphabet.Letters letterCase, boolean accents, String signs, String beyond) {
    static Characters of(String text) {
      var letterCase =
          text.equals(text.toUpperCase(Locale.ROOT))
              ? Alphabet.Letters.UPPER
              : text.equals(text.toLowerCase(Locale.ROOT))
                  ? Alphabet.Letters.LOWER
                  : Alphabet.Letters.MIXED;
      var plain = new Alphabet(letterCase, true, false, "");
      var accented = new Alphabet(letterCase, true, true, "");
      var signs = new StringBuilder();
      var beyond = new StringBuilder();
      text.chars()
          .distinct()
          .mapToObj(c -> (char) c)
          .filter(c -> !accented.has(c) && (c == ' ' || ShapeDeclarations.mayBeAlso(c)))
          .forEach(c -> (Character.isLetterOrDigit(c) ? beyond : signs).append(c.charValue()));
      boolean accents = text.chars().anyMatch(c -> accented.has((char) c) && !plain.has((char) c));
      return new Characters(letterCase, accents, signs.toString(), beyond.toString());
    }

    /** What stands between words: a space, or the only sign there is; empty if they are none. */
    String separator() {
      return signs.contains(" ") || signs.length() == 1 ? anySeparator() : "";
    }

    /** A space, which can be nothing else, or the first sign. */
    String anySeparator() {
      return signs.contains(" ") ? " " : signs.substring(0, 1);
    }

    /** What a field must be told to have besides letters and digits, as far as it can have it. */
    String also() {
      return alsoBesides(separator());
    }

    String alsoBesides(String separator) {
      var also = signs.replace(separator, "") + beyond;
      return also.substring(0, Math.min(also.length(), Limits.ALSO));
    }
  }

  String yaml() {
    return yaml;
  }

  Optional<String> declaration(int piece) {
    return roles.get(piece) == Role.TEXT
        ? Optional.empty()
        : Optional.of(fieldNames.get(piece) + ": " + fields.get(fieldNames.get(piece)));
  }

  static boolean isDate(Column column) {
    return column.kind() == Kind.DATE;
  }

  /** Six digits that are year, month and day in all names. */
  static boolean isShortDate(Column column) {
    return column.kind() == Kind.DIGITS
        && column.values().stream()
            .allMatch(
                value ->
                    value.length() == 6
                        && NameTokens.isDate(
                            "20" + value.substring(0, 2),
                            value.substring(2, 4),
                            value.substring(4, 6)));
  }

  static boolean isGtin(Column column) {
    return column.kind() == Kind.DIGITS
        && column.values().stream()
            .allMatch(
                value ->
                    value.matches("[0-9]{8}|[0-9]{12,14}")
                        && Gtin.checkDigit(value.substring(0, value.length() - 1))
                            == value.charAt(value.length() - 1) - '0');
  }

  private String fieldName(int i) {
    var name =
        switch (roles.get(i)) {
          case DATE -> names.columns().get(i).pattern().contains("HH") ? "time" : "day";
          case COUNTER -> "take";
          case OTHER -> "part" + (i + 1);
          case CLIENT, TITLE, SETUP, VIEW, VERSION, TEXT -> roles.get(i).word();
        };
    return roles.get(i) != Role.TEXT && fieldNames.contains(name) ? name + (i + 1) : name;
  }

  private String declaration(Column column, Role role, int i) {
    return switch (role) {
      case DATE -> date(column);
      case COUNTER -> counter(column, i);
      case VERSION -> "{type: number, digits: " + digits(column) + "}";
      case VIEW -> choice(column);
      case SETUP -> isGtin(column) ? gtin(column) : text(column, i);
      case CLIENT, TITLE, OTHER, TEXT -> text(column, i);
    };
  }

  private static String date(Column column) {
    if (column.kind() == Kind.DATE) {
      return "{type: date, pattern: \"" + column.pattern() + "\"}";
    }
    return "{type: date, pattern: uuMMdd, years: 2000-2099}";
  }

  private static String gtin(Column column) {
    return "{type: gtin, digits: " + column.values().iterator().next().length() + "}";
  }

  /** Whether a number can have as many digits; a longer one is a code. */
  private static boolean isNumber(Column column) {
    return widths(column.values()).getLast() <= NumberShape.MOST_DIGITS;
  }

  private static String number(Column column) {
    return "{type: number, digits: " + digits(column) + "}";
  }

  /** How many digits: as many as all have, or a range where they have no zeros in front. */
  private static String digits(Column column) {
    var widths = widths(column.values());
    int most = Math.min(widths.getLast(), NumberShape.MOST_DIGITS);
    return widths.size() == 1
        ? String.valueOf(most)
        : Math.min(widths.getFirst(), most) + "-" + most;
  }

  private static List<Integer> widths(Set<String> values) {
    return values.stream().map(String::length).distinct().sorted().toList();
  }

  private String counter(Column column, int i) {
    boolean fromZero = column.values().stream().anyMatch(value -> value.matches("0+"));
    return "{type: counter, digits: "
        + digits(column)
        + (fromZero ? ", start: 0" : "")
        + (restarts(i) ? ", restarts: setup" : "")
        + "}";
  }

  /** Two setups that share a number say that it begins anew; where none do, it runs on. */
  private boolean restarts(int counter) {
    int setup = roles.indexOf(Role.SETUP);
    if (setup < 0) {
      return false;
    }
    var setupOf = new LinkedHashMap<String, String>();
    for (var row : names.rows()) {
      var number = row.get(counter).orElse("");
      var other = setupOf.putIfAbsent(number, row.get(setup).orElse(""));
      if (other != null && !other.equals(row.get(setup).orElse(""))) {
        return true;
      }
    }
    return names.columns().get(setup).values().size() == 1;
  }

  private static String choice(Column column) {
    return column.values().stream()
        .map(
            value ->
                scalar(value)
                    + ": "
                    + scalar(VIEWS.getOrDefault(value.toUpperCase(Locale.ROOT), value)))
        .collect(Collectors.joining(", ", "{type: choice, values: {", "}}"));
  }

  private String text(Column column, int i) {
    if (column.kind() == Kind.DIGITS && isNumber(column)) {
      return number(column);
    }
    var values = column.values();
    var all = String.join("", values);
    boolean digits = all.chars().anyMatch(c -> c >= '0' && c <= '9') || runsFree(i);
    var letters = Characters.of(all);
    var separator = letters.separator();
    var widths = widths(values);
    boolean words =
        !separator.isEmpty() || (roles.get(i) == Role.TITLE && letters.signs().isEmpty());
    var also = letters.also();
    return "{type: "
        + (words ? "words" : "code")
        + ", letters: "
        + letters.letterCase().word()
        + (digits ? "" : ", digits: no")
        + (letters.accents() ? ", accents: yes" : "")
        + (also.isEmpty() ? "" : ", also: " + quoted(also))
        + (separator.isEmpty() ? "" : ", separator: " + quoted(separator))
        + ", length: "
        + length(widths, i)
        + "}";
  }

  /** Whether other text keeps it apart from its neighbours, so that it may be longer or shorter. */
  private boolean runsFree(int i) {
    boolean before = i == 0 || !names.columns().get(i).before().isEmpty();
    boolean after =
        i + 1 == names.columns().size() || !names.columns().get(i + 1).before().isEmpty();
    return before && after;
  }

  private String length(List<Integer> widths, int i) {
    int least = widths.getFirst();
    int most = widths.getLast();
    if (!runsFree(i)) {
      return least == most ? String.valueOf(most) : least + "-" + most;
    }
    return switch (roles.get(i)) {
      case CLIENT -> Math.min(2, least) + "-" + Math.max(6, most);
      case TITLE -> "1-" + Math.max(24, most);
      default -> "1-" + Math.max(12, most);
    };
  }

  private String framePattern() {
    var pattern = new StringBuilder();
    var columns = names.columns();
    var held = "";
    for (int i = 0; i < columns.size(); i++) {
      var column = columns.get(i);
      var before = i > 0 && !held.isEmpty() && column.before().equals(held) ? "" : column.before();
      held = "";
      if (column.optional() && i == 0 && columns.size() > 1) {
        // The first piece takes the separator behind it along.
        held = columns.get(1).before();
        pattern.append("[" + shown(i) + held + "]");
      } else if (column.optional()) {
        pattern.append("[" + before + shown(i) + "]");
      } else {
        pattern.append(before).append(shown(i));
      }
    }
    return pattern + names.end();
  }

  private String shown(int i) {
    return roles.get(i) == Role.TEXT
        ? names.columns().get(i).values().iterator().next()
        : "{" + fieldNames.get(i) + "}";
  }

  /** Date first, then client and title; those that the frames' names lack are added. */
  private String jobPattern() {
    var pattern = new ArrayList<String>();
    fields.putIfAbsent("day", "{type: date, pattern: uuuu-MM-dd}");
    pattern.add("{day}");
    if (fields.containsKey("client")) {
      pattern.add("{client}");
    }
    fields.putIfAbsent("title", "{type: words, letters: lower, length: 1-24}");
    pattern.add("{title}");
    return String.join("_", pattern);
  }

  /** A job's name by example: dates, the client and what is left, as a title. */
  private String jobPattern(String example) {
    var tokens = NameTokens.ofName(NameTokens.folder(example)).tokens();
    var pattern = new StringBuilder();
    var rest = new StringBuilder();
    var client = roles.indexOf(Role.CLIENT);
    boolean titled = false;
    for (var token : tokens) {
      var known =
          token.kind() == Kind.DATE
              ? Optional.of(jobDate(token.pattern()))
              : client >= 0 && names.columns().get(client).values().contains(token.text())
                  ? Optional.of("{" + fieldNames.get(client) + "}")
                  : Optional.<String>empty();
      if (known.isPresent() && pattern.indexOf(known.get()) < 0) {
        titled |= title(rest, pattern, titled);
        pattern.append(known.get());
      } else {
        rest.append(token.text());
      }
    }
    title(rest, pattern, titled);
    return pattern.toString();
  }

  /** Appends what is left as a title, or as text where it has no letter or there is a title. */
  private boolean title(StringBuilder rest, StringBuilder pattern, boolean titled) {
    var left = rest.toString();
    rest.setLength(0);
    int from = 0;
    int to = left.length();
    while (from < to && !Character.isLetterOrDigit(left.charAt(from))) {
      from++;
    }
    while (to > from && !Character.isLetterOrDigit(left.charAt(to - 1))) {
      to--;
    }
    var middle = left.substring(from, to);
    if (titled || middle.isEmpty()) {
      pattern.append(left);
      return false;
    }
    int end = client(middle, from > 0 ? left.charAt(from - 1) : '_');
    if (end > 0) {
      fields.put("client", "{type: code, letters: upper, digits: no, length: 2-6}");
      pattern.append(left, 0, from).append("{client}");
      return title(new StringBuilder(left.substring(from + end)), pattern, false);
    }
    var name = fields.containsKey("title") ? "job_title" : "title";
    var letters = Characters.of(middle);
    var separator = letters.signs().isEmpty() ? "-" : letters.anySeparator();
    var also = letters.alsoBesides(separator);
    fields.put(
        name,
        "{type: words, letters: "
            + letters.letterCase().word()
            + (letters.accents() ? ", accents: yes" : "")
            + (also.isEmpty() ? "" : ", also: " + quoted(also))
            + ", separator: "
            + quoted(separator)
            + ", length: 1-"
            + Math.max(32, middle.length())
            + "}");
    pattern.append(left, 0, from).append("{" + name + "}").append(left.substring(to));
    return true;
  }

  /** The end of a client's code that the text begins with; 0 if it begins with none. */
  private int client(String text, char separator) {
    int end = text.indexOf(separator);
    return end > 0 && !fields.containsKey("client") && text.substring(0, end).matches("[A-Z]{2,6}")
        ? end
        : 0;
  }

  /** The frames' date in the job's way to write it. */
  private String jobDate(String pattern) {
    var own = fields.get("day");
    if (own == null) {
      fields.put("day", "{type: date, pattern: \"" + pattern + "\"}");
      return "{day}";
    }
    if (own.contains("\"" + pattern + "\"")) {
      return "{day}";
    }
    fields.put("day", own.substring(0, own.length() - 1) + ", shapes: {job: \"" + pattern + "\"}}");
    return "{day.job}";
  }

  private static String quoted(String text) {
    return "\"" + text.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
  }

  private static String scalar(String text) {
    return text.matches("[\\p{L}][\\p{L}0-9]*") ? text : quoted(text);
  }
}
