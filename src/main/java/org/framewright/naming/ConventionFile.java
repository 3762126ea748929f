package org.framewright.naming;

import java.io.StringReader;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.events.AliasEvent;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** Reads a convention's YAML; goes on after each fault, so that one pass tells them all. */
final class ConventionFile {
  private static final Set<String> TOP =
      new LinkedHashSet<>(
          List.of(
              "convention",
              "about",
              "sources",
              "fields",
              "names",
              "folders",
              "travels-to",
              "before"));
  private static final Set<String> COMMON =
      new LinkedHashSet<>(List.of("type", "label", "default", "required", "shapes"));
  private static final Map<FieldType, List<String>> KEYS =
      Map.of(
          FieldType.DATE, List.of("pattern", "years"),
          FieldType.CODE, List.of("letters", "digits", "accents", "also", "length"),
          FieldType.WORDS, List.of("letters", "digits", "accents", "also", "length", "separator"),
          FieldType.PERSON,
              List.of("letters", "digits", "accents", "also", "length", "separator", "order"),
          FieldType.NUMBER, List.of("digits", "from", "to"),
          FieldType.COUNTER, List.of("digits", "start", "restarts"),
          FieldType.CHOICE, List.of("values"),
          FieldType.GTIN, List.of("digits"),
          FieldType.FIXED, List.of("text"));

  /** A name has room for no more; so no field needs more either. */
  private static final int LONGEST = 255;

  private static final int LARGEST_FILE = 1_000_000;

  /** One value of the file and where it stands. */
  private record Item(String where, Node node) {
    Declared.Place place() {
      var mark = node.getStartMark();
      return new Declared.Place(where, mark.getLine() + 1, mark.getColumn() + 1);
    }
  }

  private final String yaml;
  private final String source;
  private final List<Finding> faults = new ArrayList<>();
  private final SequencedMap<String, Declared> fields = new LinkedHashMap<>();
  private final SequencedMap<String, Item> patterns = new LinkedHashMap<>();
  private final Map<String, List<Part>> resolved = new LinkedHashMap<>();
  private final Set<String> resolving = new LinkedHashSet<>();
  private final SequencedMap<String, String> folderTexts = new LinkedHashMap<>();

  ConventionFile(String yaml, String source) {
    this.yaml = yaml;
    this.source = source;
  }

  Convention.Parsed parse() {
    var root = compose();
    if (!(root instanceof MappingNode top)) {
      if (faults.isEmpty()) {
        fault(
            new Declared.Place("convention", 1, 1),
            source + " is not a convention",
            "Start it with convention: and a title; see the templates.");
      }
      return new Convention.Parsed.Faulty(List.copyOf(faults));
    }
    var items = map(new Item("", top), TOP);
    var title = text(items, "convention", "");
    if (title.isBlank() && !items.containsKey("convention")) {
      missing(new Item("", top), "convention", "convention: Fashion, several days");
    }
    declare(items, top);
    var kinds = kinds(items, top);
    var folders = folders(items, top);
    var travels = travels(items);
    int before = number(items, "before", 60, 0, 200);
    if (!faults.isEmpty()) {
      faults.sort(
          (a, b) ->
              a.line() != b.line()
                  ? Integer.compare(a.line(), b.line())
                  : Integer.compare(a.column(), b.column()));
      return new Convention.Parsed.Faulty(List.copyOf(faults));
    }
    return new Convention.Parsed.Sound(
        new Convention(
            title,
            text(items, "about", ""),
            yaml,
            source,
            fields,
            kinds,
            folderTexts,
            folders,
            travels,
            before));
  }

  private Node compose() {
    if (yaml.length() > LARGEST_FILE) {
      fault(
          new Declared.Place("convention", 1, 1),
          source + " is larger than a convention can be",
          "A convention is a page of text.");
      return null;
    }
    var options = new LoaderOptions();
    options.setNestingDepthLimit(10);
    options.setCodePointLimit(LARGEST_FILE);
    try {
      for (var event : new Yaml(options).parse(new StringReader(yaml))) {
        if (event instanceof AliasEvent alias) {
          fault(
              new Declared.Place(
                  "convention",
                  event.getStartMark().getLine() + 1,
                  event.getStartMark().getColumn() + 1),
              "a convention has no aliases (*" + alias.getAnchor() + ")",
              "Write the text out.");
          return null;
        }
      }
      return new Yaml(options).compose(new StringReader(yaml));
    } catch (MarkedYAMLException e) {
      var mark = e.getProblemMark();
      fault(
          new Declared.Place(
              "convention",
              mark == null ? 1 : mark.getLine() + 1,
              mark == null ? 1 : mark.getColumn() + 1),
          source + " is not YAML: " + e.getProblem(),
          "Check the indentation, the colons and the quotes there.");
      return null;
    } catch (YAMLException e) {
      fault(
          new Declared.Place("convention", 1, 1),
          source + " is not YAML: " + String.valueOf(e.getMessage()).lines().findFirst().orElse(""),
          "Save it as plain text in UTF-8.");
      return null;
    }
  }

  // ---- faults

  private void fault(Declared.Place place, String what, String remedy) {
    fault(Rule.BAD_CONVENTION, place, what, remedy);
  }

  private void fault(Rule rule, Declared.Place place, String what, String remedy) {
    faults.add(
        new Finding(
            rule,
            Severity.ERROR,
            place.where(),
            place.line(),
            place.column(),
            place.where().isEmpty() ? capital(what) : place.where() + ": " + what,
            Optional.empty(),
            remedy.isEmpty() ? Optional.empty() : Optional.of(remedy)));
  }

  private static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  private void missing(Item item, String key, String example) {
    fault(item.place(), "“" + key + ":” is missing", "Add it, such as " + example);
  }

  // ---- YAML values

  /** A mapping's values by key; tells keys that are repeated, not text or not among the known. */
  private SequencedMap<String, Item> map(Item item, Collection<String> known) {
    var items = new LinkedHashMap<String, Item>();
    if (!(item.node instanceof MappingNode mapping)) {
      fault(item.place(), "this should be a list of “key: value”", "Indent its keys under it.");
      return items;
    }
    for (var tuple : mapping.getValue()) {
      var where = item.where.isEmpty() ? "" : item.where + ".";
      if (!(tuple.getKeyNode() instanceof ScalarNode key)) {
        fault(new Item(item.where, tuple.getKeyNode()).place(), "a key must be plain text", "");
        continue;
      }
      var name = composed(key.getValue());
      var keyPlace = new Item(where + name, key).place();
      if (items.putIfAbsent(name, new Item(where + name, tuple.getValueNode())) != null) {
        fault(keyPlace, "“" + name + "” is given twice", "Keep one of the two.");
      } else if (!known.isEmpty() && !known.contains(name)) {
        fault(
            keyPlace,
            "“" + name + "” has no meaning here",
            Nearest.to(name, known)
                .map(near -> "Is “" + near + "” meant?")
                .orElse("Known here: " + String.join(", ", known) + "."));
      }
    }
    return items;
  }

  private String text(Map<String, Item> items, String key, String otherwise) {
    var item = items.get(key);
    return item == null ? otherwise : text(item);
  }

  private String text(Item item) {
    if (item.node instanceof ScalarNode scalar) {
      var text = composed(scalar.getValue());
      if (!text.isEmpty() && isMark(text.codePointAt(0))) {
        fault(
            item.place(),
            "“" + text + "” begins with a mark that would join the letter before it",
            "Begin it with a letter.");
      }
      return text;
    }
    fault(item.place(), "this should be plain text", "Write it on the same line, in quotes.");
    return "";
  }

  private static String composed(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFC);
  }

  private static boolean isMark(int character) {
    return switch (Character.getType(character)) {
      case Character.NON_SPACING_MARK, Character.COMBINING_SPACING_MARK, Character.ENCLOSING_MARK ->
          true;
      default -> false;
    };
  }

  private List<String> list(Map<String, Item> items, String key) {
    return switch (items.get(key)) {
      case null -> List.of();
      case Item(String where, SequenceNode sequence) ->
          sequence.getValue().stream().map(node -> text(new Item(where, node))).toList();
      case Item item -> {
        var text = text(item);
        yield text.isEmpty() ? List.of() : List.of(text);
      }
    };
  }

  private int number(Map<String, Item> items, String key, int otherwise, int least, int most) {
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
    fault(
        item.place(),
        "“" + text + "” is not a number from " + least + " to " + most,
        "Write such a number.");
    return otherwise;
  }

  /** {@code 3} or {@code 1-24}. */
  private int[] range(Map<String, Item> items, String key, int[] otherwise, int least, int most) {
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
        return new int[] {first, last};
      }
    }
    fault(
        item.place(),
        "“" + text + "” is not a number or range from " + least + " to " + most,
        "Write it such as " + least + " or " + least + "-" + Math.min(most, least + 5) + ".");
    return otherwise;
  }

  private boolean yes(Map<String, Item> items, String key, boolean otherwise) {
    var item = items.get(key);
    if (item == null) {
      return otherwise;
    }
    return switch (text(item).toLowerCase(Locale.ROOT)) {
      case "yes", "true" -> true;
      case "no", "false" -> false;
      default -> {
        fault(item.place(), "this should be yes or no", "Write yes or no.");
        yield otherwise;
      }
    };
  }

  private <E extends Enum<E>> E word(
      Map<String, Item> items, String key, Class<E> type, E otherwise) {
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
      fault(
          item.place(),
          "“" + text + "” is not known here",
          Nearest.to(text, words.keySet())
              .map(near -> "Is “" + near + "” meant?")
              .orElse("Write one of " + String.join(", ", words.keySet()) + "."));
      return otherwise;
    }
    return found;
  }

  // ---- fields

  private void declare(Map<String, Item> items, Node top) {
    var item = items.get("fields");
    if (item == null) {
      missing(new Item("", top), "fields", "fields: {take: {type: counter, digits: 4}}");
      return;
    }
    map(item, Set.of())
        .forEach(
            (name, declaration) -> {
              if (!name.matches("[A-Za-z0-9_]{1,40}")) {
                fault(
                    declaration.place(),
                    "a field's name is made of A-Z, a-z, 0-9 and _",
                    "Rename it, such as " + name.replaceAll("[^A-Za-z0-9_]", "_") + ".");
              } else {
                declare(name, declaration);
              }
            });
    for (var field : fields.values()) {
      for (var on : field.restarts()) {
        if (!fields.containsKey(on) || on.equals(field.name())) {
          fault(
              Rule.UNKNOWN_FIELD,
              field.place(),
              "it restarts on “" + on + "”, which is no other field",
              Nearest.to(on, fields.keySet())
                  .map(near -> "Is " + near + " meant?")
                  .orElse("Declare that field."));
        }
      }
    }
  }

  private void declare(String name, Item item) {
    int before = faults.size();
    fields.put(name, faulty(name, item));
    if (!(item.node instanceof MappingNode)) {
      fault(item.place(), "a field is declared by its type and more", "Write {type: words}.");
      return;
    }
    var bare = map(item, Set.of());
    if (!bare.containsKey("type")) {
      missing(item, "type", "type: words");
      return;
    }
    var type = word(bare, "type", FieldType.class, null);
    if (type == null) {
      return;
    }
    faults.subList(before, faults.size()).clear();
    Set<String> known = new LinkedHashSet<>(COMMON);
    known.addAll(KEYS.get(type));
    var keys = map(item, known);
    var choices = choices(type, keys, item);
    var main = shape(type, item, keys, null, choices);
    var shapes = new LinkedHashMap<String, Shape>();
    if (main != null) {
      shapes.put("", main);
      if (keys.containsKey("shapes")) {
        shapes(type, keys, main, choices, shapes);
      }
    }
    var byDefault = Optional.ofNullable(keys.get("default")).map(this::text);
    if (main != null && byDefault.isPresent()) {
      if (type == FieldType.COUNTER) {
        fault(keys.get("default").place(), "a counter counts; it has no default", "Leave it out.");
      } else if (main.settle(name, byDefault.get(), new ArrayList<>())
          instanceof Shape.Settled.Refused(String why, String remedy)) {
        fault(keys.get("default").place(), why, remedy);
      }
    }
    var declared =
        new Declared(
            name,
            type,
            text(keys, "label", name),
            byDefault,
            yes(keys, "required", false),
            choices,
            list(keys, "restarts"),
            shapes,
            main == null ? "" : example(type, main),
            item.place());
    fields.put(name, declared);
  }

  /** Stands for a field whose declaration is not understood, so that patterns may name it. */
  private static Declared faulty(String name, Item item) {
    return new Declared(
        name,
        FieldType.FIXED,
        name,
        Optional.empty(),
        false,
        new LinkedHashMap<>(),
        List.of(),
        new LinkedHashMap<>(),
        "",
        item.place());
  }

  private static String example(FieldType type, Shape main) {
    var raw =
        switch (type) {
          case DATE -> "2026-11-25T14:05:09";
          case CODE -> "NOVA";
          case WORDS -> "Spring looks";
          case PERSON -> "Ada Example";
          case GTIN -> "6291041500213";
          case NUMBER, COUNTER, CHOICE, FIXED -> "";
        };
    return !raw.isEmpty()
            && main.settle("", raw, new ArrayList<>())
                instanceof Shape.Settled.Text(String text, String value)
        ? value
        : main.value(main.texts().shortest());
  }

  private SequencedMap<String, String> choices(
      FieldType type, Map<String, Item> keys, Item declaration) {
    var choices = new LinkedHashMap<String, String>();
    if (type != FieldType.CHOICE) {
      return choices;
    }
    var values = keys.get("values");
    if (values == null) {
      missing(declaration, "values", "values: {F: front, B: back}");
    } else if (values.node instanceof SequenceNode) {
      list(keys, "values").forEach(value -> choices.put(value, value));
    } else {
      map(values, Set.of()).forEach((value, item) -> choices.put(value, text(item)));
    }
    if (values != null && (choices.isEmpty() || choices.containsKey(""))) {
      fault(values.place(), "a choice needs values, and none may be empty", "Give its values.");
      choices.remove("");
    }
    return choices;
  }

  private void shapes(
      FieldType type,
      Map<String, Item> keys,
      Shape main,
      SequencedMap<String, String> choices,
      Map<String, Shape> shapes) {
    map(keys.get("shapes"), Set.of())
        .forEach(
            (shapeName, item) -> {
              if (!shapeName.matches("[A-Za-z0-9_]{1,40}")) {
                fault(item.place(), "a shape's name is made of A-Z, a-z, 0-9 and _", "Rename it.");
                return;
              }
              var own = new LinkedHashMap<>(keys);
              switch (type) {
                case CHOICE -> {
                  shape(item, choices).ifPresent(shape -> shapes.put(shapeName, shape));
                  return;
                }
                case DATE -> {
                  if (item.node instanceof ScalarNode) {
                    own.put("pattern", item);
                  } else {
                    own.putAll(map(item, List.of("pattern")));
                  }
                }
                case CODE, WORDS, PERSON -> own.putAll(map(item, List.of("letters", "separator")));
                case NUMBER, COUNTER -> own.putAll(map(item, List.of("digits")));
                case GTIN, FIXED -> {
                  fault(item.place(), "a " + type.word() + " field has one shape", "Leave it out.");
                  return;
                }
              }
              var shape = shape(type, item, own, main, choices);
              if (shape != null) {
                shapes.put(shapeName, shape);
              }
            });
  }

  /** A choice's other texts; each of its values has one. */
  private Optional<Shape> shape(Item item, SequencedMap<String, String> choices) {
    var shown = new LinkedHashMap<String, String>();
    map(item, choices.keySet()).forEach((value, text) -> shown.put(value, text(text)));
    for (var value : choices.keySet()) {
      if (shown.getOrDefault(value, "").isEmpty()) {
        fault(item.place(), "it has no text for “" + value + "”", "Give every value a text.");
        return Optional.empty();
      }
    }
    return choices.isEmpty() || !shown.keySet().equals(choices.keySet())
        ? Optional.empty()
        : Optional.of(new ChoiceShape(choices, shown));
  }

  private Shape shape(
      FieldType type,
      Item item,
      Map<String, Item> keys,
      Shape main,
      SequencedMap<String, String> choices) {
    int before = faults.size();
    var shape =
        switch (type) {
          case DATE -> date(item, keys, (DateShape) main);
          case CODE, WORDS, PERSON -> words(type, item, keys, (TextShape) main);
          case NUMBER, COUNTER -> number(type, keys, (NumberShape) main);
          case CHOICE -> {
            var shown = new LinkedHashMap<String, String>();
            choices.keySet().forEach(value -> shown.put(value, value));
            yield shown.isEmpty() ? null : new ChoiceShape(choices, shown);
          }
          case GTIN -> gtin(keys);
          case FIXED -> {
            var text = text(keys, "text", "");
            if (text.isEmpty()) {
              missing(item, "text", "text: STUDIO");
              yield null;
            }
            yield new FixedShape(text);
          }
        };
    return faults.size() > before ? null : shape;
  }

  private Shape date(Item item, Map<String, Item> keys, DateShape main) {
    if (!keys.containsKey("pattern")) {
      missing(item, "pattern", "pattern: uuuu-MM-dd");
      return null;
    }
    var pattern = text(keys, "pattern", "");
    boolean shortYear = pattern.matches(".*(?<![uy])(uu|yy)(?![uy]).*");
    var years =
        range(
            keys,
            "years",
            shortYear
                ? new int[] {2000, 2099}
                : new int[] {DateShape.FIRST_YEAR, DateShape.LAST_YEAR},
            1,
            9999);
    if (years[1] - years[0] > 999) {
      fault(keys.get("years").place(), "a thousand years are enough", "Give years: 1900-2199.");
      return null;
    }
    if (main != null && shortYear && !keys.containsKey("years")) {
      years = new int[] {2000, 2099};
    }
    try {
      var shape = DateShape.of(pattern, years[0], years[1]);
      if (main != null) {
        shape.compareWith(main);
      }
      return shape;
    } catch (DateShape.BadPattern e) {
      var place = keys.get("pattern").place();
      fault(
          new Declared.Place(place.where(), place.line(), place.column() + e.at),
          e.getMessage(),
          e.remedy);
      return null;
    }
  }

  private Shape words(FieldType type, Item item, Map<String, Item> keys, TextShape main) {
    var letters =
        word(
            keys,
            "letters",
            Alphabet.Letters.class,
            type == FieldType.CODE ? Alphabet.Letters.UPPER : Alphabet.Letters.LOWER);
    var also = text(keys, "also", "");
    var alphabet =
        new Alphabet(letters, yes(keys, "digits", true), yes(keys, "accents", false), also);
    if (also.chars().anyMatch(c -> !mayBeAlso((char) c))) {
      fault(
          keys.get("also").place(),
          "spaces, marks, invisible characters, / and characters beyond U+FFFF cannot be in a field",
          "Leave them out.");
    }
    var separator = type == FieldType.CODE ? "" : text(keys, "separator", "-");
    if (type != FieldType.CODE
        && (separator.length() != 1
            || alphabet.has(separator.charAt(0))
            || "/[]{}".contains(separator))) {
      fault(
          keys.getOrDefault("separator", item).place(),
          "a separator is one character that is not in the words themselves",
          "Write separator: \"-\".");
    }
    var length =
        range(
            keys,
            "length",
            type == FieldType.CODE ? new int[] {1, 12} : new int[] {1, 32},
            1,
            LONGEST);
    var order = word(keys, "order", TextShape.Order.class, TextShape.Order.AS_GIVEN);
    if (type != FieldType.CODE && separator.isEmpty()) {
      return null;
    }
    var form = new TextShape.Form(alphabet, separator, length[0], length[1], order);
    return new TextShape(form, main == null ? form : main.form());
  }

  /** Characters that stand alone and stay as they are under normalisation form C. */
  private static boolean mayBeAlso(char c) {
    return c > ' '
        && c != '/'
        && !Character.isISOControl(c)
        && !Character.isSurrogate(c)
        && !Character.isWhitespace(c)
        && Character.isDefined(c)
        && Character.getType(c) != Character.FORMAT
        && !isMark(c)
        && composed(String.valueOf(c)).equals(String.valueOf(c));
  }

  private Shape number(FieldType type, Map<String, Item> keys, NumberShape main) {
    var digits =
        range(
            keys,
            "digits",
            type == FieldType.COUNTER ? new int[] {4, 4} : new int[] {1, NumberShape.MOST_DIGITS},
            1,
            NumberShape.MOST_DIGITS);
    int room = (int) NumberShape.room(digits[1]);
    int smallest =
        type == FieldType.COUNTER
            ? number(keys, "start", 1, 0, room)
            : number(keys, "from", 0, 0, room);
    int largest = type == FieldType.COUNTER ? room : number(keys, "to", room, smallest, room);
    return new NumberShape(
        digits[0], digits[1], main == null ? digits[0] : main.width(), smallest, largest);
  }

  private Shape gtin(Map<String, Item> keys) {
    int digits = number(keys, "digits", 14, 8, 14);
    if (digits == 8 || digits >= 12) {
      return new GtinShape(digits);
    }
    fault(
        keys.get("digits").place(),
        "a product number has 8, 12, 13 or 14 digits",
        "Write digits: 14, which holds them all.");
    return null;
  }

  // ---- names and folders

  private SequencedMap<String, DeclaredKind> kinds(Map<String, Item> items, Node top) {
    var kinds = new LinkedHashMap<String, DeclaredKind>();
    var item = items.get("names");
    if (item == null) {
      missing(new Item("", top), "names", "names: {frame: \"{day}_{take}\"}");
      return kinds;
    }
    map(item, Set.of())
        .forEach(
            (id, pattern) -> {
              if (!id.matches("[A-Za-z0-9_]{1,40}")) {
                fault(
                    pattern.place(),
                    "a kind of name is called by A-Z, a-z, 0-9 and _",
                    "Rename it.");
              } else if (fields.containsKey(id)) {
                fault(
                    pattern.place(),
                    "a field is called “"
                        + id
                        + "” too, so that {"
                        + id
                        + "} would mean two things",
                    "Rename one of them.");
              } else {
                patterns.put(id, pattern);
              }
            });
    if (patterns.isEmpty() && faults.isEmpty()) {
      fault(item.place(), "there is no kind of name", "Add one, such as frame: \"{day}_{take}\".");
    }
    for (var id : patterns.keySet()) {
      resolve(id);
    }
    if (faults.isEmpty()) {
      patterns.forEach(
          (id, pattern) -> {
            var text = text(pattern);
            kinds.put(
                id,
                new DeclaredKind(
                    id, text, resolved.get(id), sameAs(text), patternPlace(pattern, 0)));
          });
    }
    return kinds;
  }

  private Optional<String> sameAs(String pattern) {
    return pattern.matches("\\{[A-Za-z0-9_]+}")
            && patterns.containsKey(pattern.substring(1, pattern.length() - 1))
        ? Optional.of(pattern.substring(1, pattern.length() - 1))
        : Optional.empty();
  }

  private List<Part> resolve(String id) {
    var known = resolved.get(id);
    if (known != null) {
      return known;
    }
    resolving.add(id);
    var item = patterns.get(id);
    var parts =
        parts(
            item,
            false,
            (other, position) -> {
              if (resolving.contains(other)) {
                fault(
                    patternPlace(item, position),
                    "the names go in a circle: " + String.join(", ", resolving) + ", " + other,
                    "Write one of them out in fields.");
                return null;
              }
              return resolve(other);
            });
    resolving.remove(id);
    resolved.put(id, parts);
    return parts;
  }

  private List<Part> parts(Item item, boolean folder, PatternText.Kinds inner) {
    var text = text(item);
    if (text.length() > 10_000) {
      fault(item.place(), "the pattern is far longer than a name can be", "Shorten it.");
      return List.of();
    }
    var parts =
        new PatternText(
                text,
                fields,
                patterns.keySet(),
                inner,
                folder,
                (position, rule, what, remedy) ->
                    fault(rule, patternPlace(item, position), what, remedy))
            .parts();
    checkOptional(item, parts, false);
    return parts;
  }

  private void checkOptional(Item item, List<Part> parts, boolean inRun) {
    for (var part : parts) {
      switch (part) {
        case Part.Run run -> checkOptional(item, run.parts(), true);
        case Part.Show show when inRun && show.field().required() ->
            fault(
                patternPlace(item, 0),
                "the field " + show.field().name() + " is required, yet shows in an optional run",
                "Take the brackets away, or required: yes.");
        case Part.Show show when inRun && show.field().defaultValue().isPresent() ->
            fault(
                patternPlace(item, 0),
                "the field "
                    + show.field().name()
                    + " has a default, so the optional run around it would always show",
                "Take the brackets away, or the default.");
        case Part.Show show -> {}
        case Part.Text text -> {}
      }
    }
  }

  /** A character's place in a pattern on one line; the pattern's beginning otherwise. */
  private static Declared.Place patternPlace(Item item, int position) {
    var place = item.place();
    if (item.node instanceof ScalarNode scalar
        && scalar.getStartMark().getLine() == scalar.getEndMark().getLine()) {
      int quote = scalar.getEndMark().getColumn() - scalar.getStartMark().getColumn();
      int offset = quote == scalar.getValue().length() + 2 ? 1 : 0;
      return new Declared.Place(place.where(), place.line(), place.column() + offset + position);
    }
    return place;
  }

  private SequencedMap<String, List<Part>> folders(Map<String, Item> items, Node top) {
    var folders = new LinkedHashMap<String, List<Part>>();
    var item = items.get("folders");
    if (item == null) {
      missing(new Item("", top), "folders", "folders: {frames: 01_frames}");
      return folders;
    }
    map(item, Set.of())
        .forEach(
            (role, pattern) -> {
              var text = text(pattern);
              folderTexts.put(role, text);
              var components = Arrays.asList(text.split("/", -1));
              if (components.stream().anyMatch(c -> c.isEmpty() || c.equals(".") || c.equals(".."))
                  || text.contains("\\")) {
                fault(
                    pattern.place(),
                    "“" + text + "” is not a path inside the job folder",
                    "Write names with / between them, such as 01_frames/raw.");
              }
              folders.put(role, parts(pattern, true, (id, position) -> null));
            });
    if (!folders.containsKey("frames")) {
      fault(item.place(), "the folder for frames is missing", "Add frames: 01_frames");
    }
    return folders;
  }

  private Set<Target> travels(Map<String, Item> items) {
    var targets = new LinkedHashSet<Target>();
    var item = items.get("travels-to");
    if (item == null) {
      targets.addAll(List.of(Target.WINDOWS, Target.MACOS, Target.LINUX, Target.CLOUD));
      return targets;
    }
    Function<Target, String> id = Target::id;
    var known = Arrays.stream(Target.values()).collect(Collectors.toMap(id, target -> target));
    for (var word : list(items, "travels-to")) {
      var target = known.get(word);
      if (target == null) {
        fault(
            item.place(),
            "“" + word + "” is no place that names travel to",
            Nearest.to(word, known.keySet())
                .map(near -> "Is “" + near + "” meant?")
                .orElse(
                    "Known: "
                        + Arrays.stream(Target.values()).map(id).collect(Collectors.joining(", "))
                        + "."));
      } else {
        targets.add(target);
      }
    }
    return targets;
  }
}
