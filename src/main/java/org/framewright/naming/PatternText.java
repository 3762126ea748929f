package org.framewright.naming;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.framewright.base.Text;

/**
 * Reads a pattern: literal text, {@code {field}} or {@code {field.shape}} or {@code {kind}} (RFC
 * 6570 level 1 expressions), and optional runs in square brackets.
 */
final class PatternText {
  /** Takes a fault: at which character, by which rule, what and its remedy. */
  interface Fault {
    void at(int position, Rule rule, Text what, Text remedy);
  }

  /** Where an expression's name leads: the parts of a kind, or null where there is no such kind. */
  interface Kinds {
    List<Part> parts(String id, int position);
  }

  private static final int DEEPEST = 20;

  /** Characters of literal text so far. */
  private int literals;

  private final String text;
  private final Map<String, Declared> fields;
  private final Set<String> kindIds;
  private final Kinds kinds;
  private final boolean folder;
  private final Fault fault;
  private final Set<String> shown = new HashSet<>();
  private int at;

  /** Fields that are not understood; what they would have shown is not missed as well. */
  private int notUnderstood;

  PatternText(
      String text,
      Map<String, Declared> fields,
      Set<String> kindIds,
      Kinds kinds,
      boolean folder,
      Fault fault) {
    this.text = text;
    this.fields = fields;
    this.kindIds = kindIds;
    this.kinds = kinds;
    this.folder = folder;
    this.fault = fault;
  }

  List<Part> parts() {
    var parts = run(0);
    var shows = new ArrayList<Part.Show>();
    Part.eachShow(parts, shows::add);
    long counters = shows.stream().filter(show -> show.field().type() == FieldType.COUNTER).count();
    if (shows.size() > Limits.SHOWN) {
      fault.at(
          0,
          Rule.BAD_CONVENTION,
          Text.of("it shows more than {0} fields", Limits.SHOWN),
          Text.of("A name has room for a few."));
    }
    if (counters > 1) {
      fault.at(
          0,
          Rule.BAD_CONVENTION,
          Text.of("it shows {0} counters", counters),
          Text.of("A name has one counter at most; make the other a number."));
    }
    if (parts.isEmpty() && notUnderstood == 0) {
      fault.at(
          0,
          Rule.BAD_CONVENTION,
          Text.of("it is empty"),
          Text.of("Write fields and text, such as {day}_{take}."));
    } else if (!folder
        && notUnderstood == 0
        && parts.stream().allMatch(Part.Run.class::isInstance)) {
      fault.at(
          0,
          Rule.BAD_CONVENTION,
          Text.of("everything in it is optional, so that a name could be empty"),
          Text.of("Show at least one field or text outside square brackets."));
    }
    return parts;
  }

  private List<Part> run(int depth) {
    List<Part> parts = new ArrayList<>();
    var literal = new StringBuilder();
    while (at < text.length()) {
      char c = text.charAt(at);
      switch (c) {
        case '{' -> {
          flush(literal, parts);
          expression(parts);
        }
        case '[' -> {
          flush(literal, parts);
          int start = at++;
          if (depth >= DEEPEST) {
            fault.at(
                start,
                Rule.BAD_CONVENTION,
                Text.of("optional runs are nested deeper than {0}", DEEPEST),
                Text.of("Put them beside one another."));
            at = text.length();
            return parts;
          }
          int before = notUnderstood;
          var run = new Part.Run(run(depth + 1));
          if (at >= text.length()) {
            fault.at(
                start,
                Rule.BAD_CONVENTION,
                Text.of("this [ is not closed"),
                Text.of("Close it with ]."));
          } else {
            at++;
            if (run.own().isEmpty() && notUnderstood == before) {
              fault.at(
                  start,
                  Rule.BAD_CONVENTION,
                  Text.of(
                      "this optional run shows no field of its own, so nothing says when it shows"),
                  Text.of("Put a field into it, or take the brackets away."));
            }
          }
          parts.add(run);
        }
        case ']' -> {
          if (depth > 0) {
            flush(literal, parts);
            return parts;
          }
          fault.at(
              at++,
              Rule.BAD_CONVENTION,
              Text.of("this ] closes nothing"),
              Text.of("Open the run with [."));
        }
        case '}' ->
            fault.at(
                at++,
                Rule.BAD_CONVENTION,
                Text.of("this } closes nothing"),
                Text.of("Open the field with {."));
        case '/' -> {
          if (!folder) {
            fault.at(
                at,
                Rule.BAD_CONVENTION,
                Text.of("a name cannot contain a /"),
                Text.of("Put folders under folders:, and only the last part here."));
          }
          literal.append(c);
          at++;
        }
        default -> {
          literal.append(c);
          at++;
        }
      }
    }
    flush(literal, parts);
    return parts;
  }

  private void flush(StringBuilder literal, List<Part> parts) {
    if (!literal.isEmpty() && hasRoom(literal.length())) {
      parts.add(new Part.Text(literal.toString()));
    }
    literal.setLength(0);
  }

  /** Whether so much more text may show; reports it once if not. */
  private boolean hasRoom(int more) {
    int most = folder ? Limits.PATH_LITERALS : Limits.LITERALS;
    boolean had = literals <= most;
    literals += more;
    if (had && literals > most) {
      fault.at(
          0,
          Rule.BAD_CONVENTION,
          Text.of("the text in it is longer than {0} characters", most),
          Text.of("Shorten it."));
    }
    return literals <= most;
  }

  private void expression(List<Part> parts) {
    int start = at;
    int end = text.indexOf('}', at);
    if (end < 0) {
      fault.at(
          start, Rule.BAD_CONVENTION, Text.of("this { is not closed"), Text.of("Close it with }."));
      at = text.length();
      return;
    }
    at = end + 1;
    var name = text.substring(start + 1, end);
    int dot = name.indexOf('.');
    var fieldName = dot < 0 ? name : name.substring(0, dot);
    var shapeName = dot < 0 ? "" : name.substring(dot + 1);
    var field = fields.get(fieldName);
    if (field != null && field.shapes().isEmpty()) {
      // Its declaration is faulty, which is reported where it stands.
      shown.add(fieldName);
      notUnderstood++;
    } else if (field != null) {
      var shape = field.shapes().get(shapeName);
      if (shape == null) {
        notUnderstood++;
        fault.at(
            start,
            Rule.UNKNOWN_FIELD,
            Text.of("the field {0} has no shape “{1}”", fieldName, Quoted.bare(shapeName)),
            Nearest.to(shapeName, field.shapes().keySet())
                .map(
                    near ->
                        Text.of(
                            "Declare it under fields.{0}.shapes. Is “{1}” meant?", fieldName, near))
                .orElse(Text.of("Declare it under fields.{0}.shapes.", fieldName)));
        return;
      }
      add(parts, new Part.Show(field, shape), start);
    } else if (dot < 0 && kindIds.contains(name) && !folder) {
      var inner = kinds.parts(name, start);
      if (inner != null && hasRoom(Part.literals(inner))) {
        Part.eachShow(inner, show -> remember(show, start));
        parts.addAll(inner);
      }
    } else {
      notUnderstood++;
      if (name.startsWith("{")) {
        at += text.startsWith("}", at) ? 1 : 0;
        fault.at(
            start,
            Rule.BAD_CONVENTION,
            Text.of("a field has one pair of braces"),
            Text.of("Write {0}.", "{" + Quoted.bare(name.substring(1)) + "}"));
        return;
      }
      Set<String> known = new HashSet<>(fields.keySet());
      known.addAll(kindIds);
      fault.at(
          start,
          Rule.UNKNOWN_FIELD,
          Text.of("there is no field “{0}”", Quoted.bare(fieldName)),
          Nearest.to(fieldName, known)
              .map(near -> Text.of("Is {0} meant?", "{" + near + "}"))
              .orElse(Text.of("Declare it under fields.")));
    }
  }

  private void add(List<Part> parts, Part.Show show, int start) {
    if (remember(show, start)) {
      parts.add(show);
    }
  }

  private boolean remember(Part.Show show, int start) {
    var name = show.field().name();
    if (!shown.add(name)) {
      fault.at(
          start,
          Rule.BAD_CONVENTION,
          Text.of("the field {0} shows twice in one name", name),
          Text.of("Show it once; a date can show year, month and day in one shape."));
      return false;
    }
    return true;
  }
}
