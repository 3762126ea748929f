package org.framewright.naming;

import java.text.Normalizer;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SequencedMap;
import org.framewright.base.Text;

/** Takes the values of the file as what each is meant to be; every fault is reported. */
final class Values {
  private final Faults faults;

  Values(Faults faults) {
    this.faults = faults;
  }

  /** A mapping's values by key; reports keys that are repeated or not among the known. */
  SequencedMap<String, Item> map(Item item, Collection<String> known) {
    var items = new LinkedHashMap<String, Item>();
    if (!(item.node() instanceof YamlNode.Mapping mapping)) {
      faults.add(
          item.place(),
          Text.of("this should be a list of “key: value”"),
          Text.of("Indent its keys under it."));
      return items;
    }
    for (var entry : mapping.entries()) {
      var name = composed(entry.key().text());
      var where = (item.where().isEmpty() ? "" : item.where() + ".") + Quoted.bare(name);
      var keyPlace = new Item(where, entry.key()).place();
      if (items.putIfAbsent(name, new Item(where, entry.value())) != null) {
        faults.add(
            keyPlace,
            Text.of("“{0}” is given twice", Quoted.bare(name)),
            Text.of("Keep one of the two."));
      } else if (!known.isEmpty() && !known.contains(name)) {
        faults.add(
            keyPlace,
            Text.of("“{0}” has no meaning here", Quoted.bare(name)),
            meant(name, known, Text.of("Known here: {0}.", String.join(", ", known))));
      }
    }
    return items;
  }

  /** The same for names of the author's own choice, of which there may be so many. */
  SequencedMap<String, Item> named(Item item, int most, Text what) {
    if (item.node() instanceof YamlNode.Mapping mapping && mapping.entries().size() > most) {
      faults.add(
          item.place(),
          Text.of("there are more than {0} {1}", most, what),
          Text.of("Take out those that no name needs."));
      return new LinkedHashMap<>();
    }
    return map(item, List.of());
  }

  static Text meant(String word, Collection<String> known, Text otherwise) {
    return Nearest.to(word, known).map(near -> Text.of("Is “{0}” meant?", near)).orElse(otherwise);
  }

  String text(Map<String, Item> items, String key, String otherwise) {
    var item = items.get(key);
    return item == null ? otherwise : text(item);
  }

  /** A text in one line that may become part of a name. */
  String text(Item item) {
    return text(item, Limits.TEXT);
  }

  String text(Item item, int longest) {
    var text = any(item, longest);
    int control = 0;
    while (control < text.length() && !Character.isISOControl(text.charAt(control))) {
      control++;
    }
    if (control < text.length()) {
      faults.add(
          item.placeOf(control),
          Text.of(
              "it has a control character, {0}", "U+%04X".formatted((int) text.charAt(control))),
          Text.of("Take it out, and write the text in one line."));
      return "";
    }
    return text;
  }

  /** A text for people, of several lines if they like. */
  String prose(Map<String, Item> items, String key) {
    var item = items.get(key);
    return item == null ? "" : any(item, Limits.PROSE).strip();
  }

  private String any(Item item, int longest) {
    if (!(item.node() instanceof YamlNode.Text written)) {
      faults.add(
          item.place(),
          Text.of("this should be plain text"),
          Text.of("Write it on the same line, in quotes."));
      return "";
    }
    if (written.text().length() > longest) {
      faults.add(
          item.place(),
          Text.of("this text is longer than {0} characters", longest),
          Text.of("Shorten it."));
      return "";
    }
    // A block of text ends with a line feed that nobody means.
    var text = composed(written.text().endsWith("\n") ? chopped(written.text()) : written.text());
    if (!isWhole(text)) {
      faults.add(
          item.place(),
          Text.of("it has a character that Unicode does not define"),
          Text.of("Take the \\u out."));
      return "";
    }
    if (!text.isEmpty() && isMark(text.codePointAt(0))) {
      faults.add(
          item.place(),
          Text.of(
              "“{0}” begins with a mark that would join the letter before it", Quoted.bare(text)),
          Text.of("Begin it with a letter."));
    }
    return text;
  }

  private static String chopped(String text) {
    int end = text.length();
    while (end > 0 && text.charAt(end - 1) == '\n') {
      end--;
    }
    return text.substring(0, end);
  }

  /** No half of a pair and none of the last two of the plane, which escapes can make. */
  private static boolean isWhole(String text) {
    return text.codePoints().noneMatch(c -> (c >= 0xD800 && c <= 0xDFFF) || (c & 0xFFFE) == 0xFFFE);
  }

  static String composed(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFC);
  }

  static boolean isMark(int character) {
    return switch (Character.getType(character)) {
      case Character.NON_SPACING_MARK, Character.COMBINING_SPACING_MARK, Character.ENCLOSING_MARK ->
          true;
      default -> false;
    };
  }

  /** Some texts; one text stands for a list of one. */
  List<String> list(Map<String, Item> items, String key, int most) {
    return switch (items.get(key)) {
      case null -> List.of();
      case Item(String where, YamlNode.Sequence sequence) when sequence.items().size() > most -> {
        faults.add(
            new Item(where, sequence).place(),
            Text.of("there are more than {0}", most),
            Text.of("Take some out."));
        yield List.of();
      }
      case Item(String where, YamlNode.Sequence sequence) ->
          sequence.items().stream().map(node -> text(new Item(where, node))).toList();
      case Item item -> {
        var text = text(item);
        yield text.isEmpty() ? List.of() : List.of(text);
      }
    };
  }

  int number(Map<String, Item> items, String key, int otherwise, int least, int most) {
    var item = items.get(key);
    if (item == null) {
      return otherwise;
    }
    var text = text(item);
    if (text.matches("[0-9]{1,9}")) {
      int number = Integer.parseInt(text);
      if (number >= least && number <= most) {
        return number;
      }
    }
    faults.add(
        item.place(),
        Text.of(
            "“{0}” is not a number from {1} to {2}",
            Quoted.bare(text), Integer.toString(least), Integer.toString(most)),
        Text.of("Write such a number."));
    return otherwise;
  }

  /** The ends of {@code 1-24}; both are the number where there is one, as in {@code 3}. */
  record Range(int first, int last) {}

  Range range(Map<String, Item> items, String key, Range otherwise, int least, int most) {
    var item = items.get(key);
    if (item == null) {
      return otherwise;
    }
    var text = text(item).replace(" ", "");
    if (text.matches("[0-9]{1,9}(-[0-9]{1,9})?")) {
      var ends = Arrays.stream(text.split("-", -1)).mapToInt(Integer::parseInt).toArray();
      int first = ends[0];
      int last = ends[ends.length - 1];
      if (first >= least && last <= most && first <= last) {
        return new Range(first, last);
      }
      if (last >= least && first <= most && last < first) {
        faults.add(
            item.place(),
            Text.of("the range “{0}” begins with its larger end", Quoted.bare(text)),
            Text.of("Write {0}-{1}.", Integer.toString(last), Integer.toString(first)));
        return otherwise;
      }
    }
    faults.add(
        item.place(),
        Text.of(
            "“{0}” is not a number or range from {1} to {2}",
            Quoted.bare(text), Integer.toString(least), Integer.toString(most)),
        Text.of(
            "Write it such as {0} or {0}-{1}.",
            Integer.toString(least), Integer.toString(Math.min(most, least + 5))));
    return otherwise;
  }

  boolean yes(Map<String, Item> items, String key, boolean otherwise) {
    var item = items.get(key);
    if (item == null) {
      return otherwise;
    }
    return switch (text(item).toLowerCase(Locale.ROOT)) {
      case "yes", "true" -> true;
      case "no", "false" -> false;
      default -> {
        faults.add(item.place(), Text.of("this should be yes or no"), Text.of("Write yes or no."));
        yield otherwise;
      }
    };
  }

  <E extends Enum<E>> E word(Map<String, Item> items, String key, Class<E> type, E otherwise) {
    var item = items.get(key);
    if (item == null) {
      return otherwise;
    }
    var text = text(item);
    var words = new LinkedHashMap<String, E>();
    for (var constant : type.getEnumConstants()) {
      words.put(constant.name().toLowerCase(Locale.ROOT).replace('_', '-'), constant);
    }
    var found = words.get(text);
    if (found == null) {
      faults.add(
          item.place(),
          Text.of("“{0}” is not known here", Quoted.bare(text)),
          meant(
              text,
              words.keySet(),
              Text.of("Write one of {0}.", String.join(", ", words.keySet()))));
      return otherwise;
    }
    return found;
  }
}
