package org.framewright.naming;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.naming.ConventionTest.sound;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.framewright.naming.Language.Takes;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Holds the JSON Schema and the reference of conventions to {@link Language}, from which both are
 * generated: {@code -Dreference.write=true} writes them anew. Every example of the reference runs.
 */
class ReferenceTest {
  private static final Path SCHEMA = Path.of("templates", "convention.schema.json");
  private static final Path REFERENCE = Path.of("docs", "conventions.md");
  private static final boolean WRITE = Boolean.getBoolean("reference.write");

  @Test
  void theSchemaIsTheOneOfTheLanguage() throws IOException {
    holds(SCHEMA, schema());
  }

  @Test
  void theTablesOfTheReferenceAreThoseOfTheLanguage() throws IOException {
    var text = Files.readString(REFERENCE);
    text = between(text, "keys of the file", table(Language.TOP));
    text = between(text, "types of fields", types());
    text = between(text, "rules", rules());
    holds(REFERENCE, text);
  }

  private static void holds(Path file, String expected) throws IOException {
    if (WRITE) {
      Files.writeString(file, expected);
    }
    assertThat(Files.readString(file)).isEqualTo(expected);
  }

  private static String between(String text, String name, String inner) {
    var begin = "<!-- generated: " + name + " -->\n";
    var end = "<!-- end -->";
    int from = text.indexOf(begin) + begin.length();
    assertThat(from).isGreaterThan(begin.length());
    return text.substring(0, from) + "\n" + inner + "\n" + text.substring(text.indexOf(end, from));
  }

  // ---- the reference

  private static String table(List<Language.Key> keys) {
    var table = new StringBuilder("| key | takes | left out | what it is |\n|---|---|---|---|\n");
    for (var key : keys) {
      table.append(
          "| `%s` | %s | %s | %s |\n"
              .formatted(
                  key.name(),
                  words(key.takes()),
                  key.byDefault().orElse("must be given"),
                  key.meaning()));
    }
    return table.toString();
  }

  private static String words(Takes takes) {
    return switch (takes) {
      case Takes.Text _ -> "text";
      case Takes.OneCharacter _ -> "one character";
      case Takes.Texts _ -> "a text or a list of texts";
      case Takes.YesNo _ -> "`yes` or `no`";
      case Takes.WholeNumber(int least, int most) -> "a number, %,d to %,d".formatted(least, most);
      case Takes.Range(int least, int most) ->
          "a number or range, %,d to %,d, as in `2-6`".formatted(least, most);
      case Takes.Word(List<String> words) -> "`" + String.join("`, `", words) + "`";
      case Takes.OneOf(List<Integer> numbers) ->
          String.join(", ", numbers.stream().map(String::valueOf).toList());
      case Takes.Values _ -> "a list of values, or `value: meaning`";
      case Takes.Named(String of) -> "`name: " + of + "`";
    };
  }

  private static String types() {
    var text = new StringBuilder();
    text.append("Every field has these keys, whatever its type:\n\n");
    text.append(table(Language.keys(FieldType.CODE).subList(0, 5)));
    for (var type : FieldType.values()) {
      var example = Language.example(type);
      text.append("\n### `%s`\n\n%s\n\n".formatted(type.word(), Language.meaning(type)));
      text.append(
          "`%s`: %s`%s`\n\n"
              .formatted(
                  example.declaration(),
                  example.given().isEmpty() ? "always " : "`" + example.given() + "` shows as ",
                  example.shown()));
      text.append(table(Language.own(type)));
      var lacks =
          Stream.of("default", "shapes")
              .filter(key -> !Language.names(Language.keys(type)).contains(key))
              .toList();
      if (!lacks.isEmpty()) {
        text.append("\nIt has no `" + String.join("` and no `", lacks) + "`.\n");
      }
      if (!Language.shapeKeys(type).isEmpty()) {
        text.append(
            "\nA shape may have its own `%s`.\n"
                .formatted(String.join("` and `", Language.shapeKeys(type))));
      }
    }
    return text.toString();
  }

  private static String rules() {
    var table = new StringBuilder("| rule | what is found | its remedy |\n|---|---|---|\n");
    for (var rule : Rule.values()) {
      table.append("| `%s` | %s | %s |\n".formatted(rule.id(), rule.meaning(), rule.remedy()));
    }
    return table.toString();
  }

  // ---- the schema

  private static final Map<String, Object> PLAIN =
      Map.of("type", List.of("string", "integer", "number", "boolean"));
  private static final Map<String, Object> NAME = Map.of("pattern", "^[A-Za-z0-9_]{1,40}$");

  private static Map<String, Object> map(Object... pairs) {
    var map = new LinkedHashMap<String, Object>();
    for (int i = 0; i < pairs.length; i += 2) {
      map.put((String) pairs[i], pairs[i + 1]);
    }
    return map;
  }

  private static String schema() throws JsonProcessingException {
    var top =
        map(
            "$schema", "https://json-schema.org/draft/2020-12/schema",
            "title", "A naming convention",
            "description",
                "How every name of a job is made. For editors; the check command proves what a"
                    + " schema cannot.");
    top.putAll(object(Language.TOP));
    var fields = new LinkedHashMap<String, Object>();
    for (var type : FieldType.values()) {
      var field = object(Language.keys(type));
      field.put("description", Language.meaning(type));
      properties(field).put("type", Map.of("const", type.word()));
      if (properties(field).containsKey("shapes")) {
        properties(field).put("shapes", named(shape(type), 0));
      }
      fields.put(type.word(), field);
    }
    properties(top)
        .put(
            "fields",
            named(
                map(
                    "type",
                    "object",
                    "required",
                    List.of("type"),
                    "oneOf",
                    fields.keySet().stream()
                        .map(type -> Map.of("$ref", "#/$defs/" + type))
                        .toList()),
                1));
    properties(top).put("names", named(map("type", "string", "minLength", 1), 1));
    var folders = map("type", "object", "required", List.of(Reserved.FRAMES));
    folders.put("additionalProperties", map("type", "string", "minLength", 1));
    properties(top).put("folders", folders);
    properties(top)
        .put("travels-to", texts(map("enum", Stream.of(Target.values()).map(Target::id).toList())));
    for (var key : Language.TOP) {
      describe(properties(top), key);
    }
    top.put("$defs", fields);
    var printer = new DefaultPrettyPrinter();
    printer.indentArraysWith(DefaultPrettyPrinter.FixedSpaceIndenter.instance);
    printer.indentObjectsWith(new DefaultIndenter("  ", "\n"));
    return new ObjectMapper().writer(printer).writeValueAsString(top) + "\n";
  }

  @SuppressWarnings("unchecked")
  private static Map<String, Object> properties(Map<String, Object> object) {
    return (Map<String, Object>) object.get("properties");
  }

  private static Map<String, Object> object(List<Language.Key> keys) {
    var properties = new LinkedHashMap<String, Object>();
    for (var key : keys) {
      properties.put(key.name(), new LinkedHashMap<>(schema(key.takes())));
      describe(properties, key);
    }
    return map(
        "type",
        "object",
        "required",
        keys.stream().filter(key -> key.byDefault().isEmpty()).map(Language.Key::name).toList(),
        "additionalProperties",
        false,
        "properties",
        properties);
  }

  @SuppressWarnings("unchecked")
  private static void describe(Map<String, Object> properties, Language.Key key) {
    var described = map("description", key.meaning());
    described.putAll((Map<String, Object>) properties.get(key.name()));
    properties.put(key.name(), described);
  }

  private static Map<String, Object> named(Map<String, Object> inner, int least) {
    return map(
        "type",
        "object",
        "minProperties",
        least,
        "propertyNames",
        NAME,
        "additionalProperties",
        inner);
  }

  private static Map<String, Object> texts(Map<String, Object> item) {
    return map("oneOf", List.of(item, map("type", "array", "minItems", 1, "items", item)));
  }

  private static Map<String, Object> shape(FieldType type) {
    if (type == FieldType.CHOICE) {
      return map("type", "object", "additionalProperties", PLAIN);
    }
    var keys =
        Language.own(type).stream()
            .filter(key -> Language.shapeKeys(type).contains(key.name()))
            .toList();
    var object = object(keys);
    if (type == FieldType.NUMBER || type == FieldType.COUNTER) {
      object.put("required", List.of("digits"));
    }
    return type == FieldType.DATE
        ? map("oneOf", List.of(map("type", "string", "minLength", 1), object))
        : object;
  }

  private static Map<String, Object> schema(Takes takes) {
    return switch (takes) {
      case Takes.Text _ -> PLAIN;
      case Takes.OneCharacter _ -> map("type", "string", "minLength", 1, "maxLength", 1);
      case Takes.Texts _ -> texts(PLAIN);
      case Takes.YesNo _ -> map("enum", List.of(true, false, "yes", "no", "true", "false"));
      case Takes.WholeNumber(int least, int most) ->
          map("type", "integer", "minimum", least, "maximum", most);
      case Takes.Range(int least, int most) ->
          map(
              "oneOf",
              List.of(
                  map("type", "integer", "minimum", least, "maximum", most),
                  map("type", "string", "pattern", "^[0-9]{1,9}( *- *[0-9]{1,9})?$")));
      case Takes.Word(List<String> words) -> map("enum", words);
      case Takes.OneOf(List<Integer> numbers) -> map("enum", numbers);
      case Takes.Values _ ->
          map(
              "oneOf",
              List.of(
                  map("type", "object", "minProperties", 1, "additionalProperties", PLAIN),
                  map("type", "array", "minItems", 1, "items", PLAIN)));
      case Takes.Named _ -> map("type", "object");
    };
  }

  // ---- that it is true

  @ParameterizedTest
  @EnumSource(FieldType.class)
  void theExampleOfATypeShowsWhatIsSaid(FieldType type) {
    var example = Language.example(type);
    assertThat(shown(example.declaration(), example.given())).isEqualTo(example.shown());
  }

  @TestFactory
  Stream<DynamicTest> aDefaultIsWhatIsUsedWhereTheKeyIsLeftOut() {
    return Stream.of(FieldType.values())
        .flatMap(
            type ->
                Language.own(type).stream()
                    .filter(key -> key.byDefault().filter(ReferenceTest::canBeWritten).isPresent())
                    .map(
                        key ->
                            DynamicTest.dynamicTest(
                                type.word() + "." + key.name(), () -> sameWithDefault(type, key))));
  }

  private static boolean canBeWritten(String byDefault) {
    return !byDefault.equals(Language.NONE) && !byDefault.contains(" ");
  }

  private static void sameWithDefault(FieldType type, Language.Key key) {
    var least =
        switch (type) {
          case DATE -> "pattern: uuuu-MM-dd";
          case CHOICE -> "values: [F, B]";
          case FIXED -> "text: STUDIO";
          default -> "";
        };
    var plain = "{type: " + type.word() + (least.isEmpty() ? "" : ", " + least) + "}";
    var given = plain.replace("}", ", " + key.name() + ": " + key.byDefault().orElseThrow() + "}");
    assertThat(names(given)).isEqualTo(names(plain));
  }

  /** What a field makes of texts that its keys decide about. */
  private static List<String> names(String declaration) {
    var names = new ArrayList<String>();
    for (var value :
        List.of(
            "7",
            "Ab Ünïx Example Words, of some length that is cut",
            "6291041500213",
            "2199-12-31",
            "1234567890",
            "F")) {
      names.add(shown(declaration, value));
    }
    names.add(convention("fields: {f: " + declaration + "}\nnames: {k: \"{f}\"}").longestName("k"));
    return names;
  }

  private static String shown(String declaration, String given) {
    var convention = convention("fields: {f: " + declaration + "}\nnames: {k: \"{f}\"}");
    return switch (convention.build("k", given.isEmpty() ? Map.of() : Map.of("f", given))) {
      case Built.Name name -> name.text();
      case Built.Refused refused -> refused.findings().toString();
    };
  }

  private static Convention convention(String fieldsAndNames) {
    return sound(Convention.parse(whole(fieldsAndNames), "example"));
  }

  private static String whole(String text) {
    return (text.contains("convention:") ? "" : "convention: Example\n")
        + text
        + (text.contains("\nfolders:") ? "" : "\nfolders: {frames: 01_frames}\n");
  }

  /** Below {@code ### rule}: a block that shows the finding, and one without it. */
  @TestFactory
  Stream<DynamicTest> everyExampleOfAFindingHasItAndItsRemedyHasNot() throws IOException {
    var section =
        Pattern.compile("(?m)^### Example of `([a-z-]+)`$(.*?)(?=^##|\\z)", Pattern.DOTALL);
    var tests = new ArrayList<DynamicTest>();
    for (var match = section.matcher(Files.readString(REFERENCE)); match.find(); ) {
      var rule = match.group(1);
      var blocks = blocks(match.group(2));
      tests.add(
          DynamicTest.dynamicTest(
              rule,
              () -> {
                assertThat(blocks).hasSize(2);
                assertThat(rules(blocks.getFirst())).contains(rule);
                assertThat(rules(blocks.getLast())).doesNotContain(rule);
              }));
    }
    assertThat(tests).hasSize(Rule.values().length - 3);
    return tests.stream();
  }

  private static List<String> blocks(String text) {
    return Pattern.compile("(?m)^```yaml\\n(.*?)^```$", Pattern.DOTALL)
        .matcher(text)
        .results()
        .map(match -> match.group(1))
        .toList();
  }

  private static List<String> rules(String yaml) {
    var findings =
        switch (Convention.parse(whole(yaml), "example")) {
          case Convention.Parsed.Sound(Convention convention) -> convention.check(1_000);
          case Convention.Parsed.Faulty(List<Finding> faults) -> faults;
        };
    return findings.stream().map(finding -> finding.rule().id()).toList();
  }

  /** Recipes are whole conventions, or parts of one. */
  @TestFactory
  Stream<DynamicTest> everyRecipeIsSound() throws IOException {
    var text = Files.readString(REFERENCE);
    var recipes = text.substring(text.indexOf("\n## Recipes"), text.indexOf("\n## Findings"));
    var tests = new ArrayList<DynamicTest>();
    for (var recipe : recipes.split("\n### ", -1)) {
      var blocks = blocks(recipe + "\n");
      if (!blocks.isEmpty()) {
        tests.add(
            DynamicTest.dynamicTest(
                recipe.lines().findFirst().orElse("").strip(),
                () -> {
                  var convention = convention(blocks.getFirst());
                  assertThat(convention.check(99))
                      .filteredOn(finding -> finding.rule() != Rule.RESERVED_NAME)
                      .filteredOn(finding -> finding.severity() != Severity.NOTE)
                      .isEmpty();
                  assertThat(shownNames(recipe)).isNotEmpty();
                  for (var name : shownNames(recipe)) {
                    assertThat(convention.read(name)).isInstanceOf(Reading.One.class);
                  }
                }));
      }
    }
    assertThat(tests).hasSizeGreaterThanOrEqualTo(5);
    return tests.stream();
  }

  private static List<String> shownNames(String recipe) {
    return Pattern.compile("(?m)^Makes `([^`]+)`(?: and `([^`]+)`)?")
        .matcher(recipe)
        .results()
        .flatMap(match -> Stream.of(match.group(1), match.group(2)))
        .flatMap(name -> Optional.ofNullable(name).stream())
        .toList();
  }

  @Test
  void theReservedNamesAreAllDescribed() throws IOException {
    var text = Files.readString(REFERENCE);
    for (var name :
        List.of("job", "frame", "select", "retouched", "setup", "view", "frames", "selects")) {
      assertThat(text).contains("| `" + name + "`");
    }
    assertThat(text.toLowerCase(Locale.ROOT)).doesNotContain("todo");
  }
}
