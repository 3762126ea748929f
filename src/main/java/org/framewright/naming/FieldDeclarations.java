package org.framewright.naming;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.stream.Collectors;
import org.framewright.base.Text;

/** Reads the part {@code fields:} of a convention. */
final class FieldDeclarations {
  private final Faults faults;
  private final Values values;
  private final SequencedMap<String, Declared> fields = new LinkedHashMap<>();
  private long moves;

  FieldDeclarations(Faults faults, Values values) {
    this.faults = faults;
    this.values = values;
  }

  /** The fields by name; one that is not understood is there without shapes. */
  SequencedMap<String, Declared> read(Item item) {
    values
        .named(item, Limits.FIELDS, Text.of("fields"))
        .forEach(
            (name, declaration) -> {
              if (isName(name)) {
                fields.put(name, notUnderstood(name, declaration));
                declare(name, declaration);
              } else {
                faults.add(
                    declaration.place(),
                    Text.of("a field's name is made of A-Z, a-z, 0-9 and _"),
                    Text.of(
                        "Rename it, such as {0}.",
                        Quoted.bare(name.replaceAll("[^A-Za-z0-9_]", "_"))));
              }
            });
    for (var field : fields.values()) {
      for (var on : field.restarts()) {
        if (!fields.containsKey(on) || on.equals(field.name())) {
          faults.add(
              Rule.UNKNOWN_FIELD,
              field.place(),
              Text.of("it restarts on “{0}”, which is no other field", Quoted.bare(on)),
              Nearest.to(on, fields.keySet())
                  .map(near -> Text.of("Is {0} meant?", near))
                  .orElse(
                      Text.of(
                          "Name one of the others, such as {0}.",
                          fields.keySet().stream()
                              .filter(other -> !other.equals(field.name()))
                              .limit(5)
                              .collect(Collectors.joining(", ")))));
        }
      }
    }
    return fields;
  }

  static boolean isName(String text) {
    return text.matches("[A-Za-z0-9_]{1,40}");
  }

  private void declare(String name, Item item) {
    if (!(item.node() instanceof YamlNode.Mapping mapping)) {
      faults.add(
          item.place(),
          Text.of("a field is declared by its type and more"),
          Text.of("Write {0} there.", "{type: words}"));
      return;
    }
    var written = mapping.entries().stream().filter(e -> e.key().text().equals("type")).findFirst();
    if (written.isEmpty()) {
      var joined =
          mapping.entries().stream().filter(e -> e.key().text().startsWith("type:")).findFirst();
      joined.ifPresentOrElse(
          entry ->
              faults.add(
                  new Item(item.where(), entry.key()).place(),
                  Text.of("after “type:” there is no space, so it is not read as a key"),
                  Text.of(
                      "Write {0}.",
                      "type: " + Quoted.bare(entry.key().text().substring(5).strip()))),
          () -> faults.missing(item, "type", "type: words"));
      return;
    }
    var type =
        values.word(
            Map.of("type", new Item(item.where() + ".type", written.get().value())),
            "type",
            FieldType.class,
            null);
    if (type != null) {
      declare(name, type, item);
    }
  }

  private void declare(String name, FieldType type, Item item) {
    var known = Language.known(type);
    if (type == FieldType.CHOICE && isBareList(item)) {
      return;
    }
    var keys = values.map(item, known);
    var choices = choices(type, keys, item);
    var shapes = new ShapeDeclarations(faults, values, type, keys, choices).read(item);
    bounded(item, shapes);
    var main = shapes.get("");
    var byDefault = Optional.ofNullable(keys.get("default")).map(values::text);
    if (main != null && byDefault.isPresent()) {
      if (type == FieldType.COUNTER) {
        faults.add(
            keys.get("default").place(),
            Text.of("a counter counts; it has no default"),
            Text.of("Leave it out."));
      } else if (main.settle(name, byDefault.get(), new ArrayList<>())
          instanceof Shape.Settled.Refused(Text why, Text remedy)) {
        faults.add(keys.get("default").place(), why, remedy);
      }
    }
    fields.put(
        name,
        new Declared(
            name,
            type,
            values.text(keys, "label", name),
            byDefault,
            values.yes(keys, "required", false),
            choices,
            values.list(keys, "restarts", Limits.RESTARTS),
            shapes,
            main == null ? "" : example(type, main),
            item.place()));
  }

  /** Refuses a field with which all their automata would take too much memory. */
  private void bounded(Item item, Map<String, Shape> shapes) {
    long more = shapes.values().stream().mapToLong(shape -> shape.texts().moves()).sum();
    if (moves + more > Limits.MOVES) {
      faults.add(
          item.place(),
          Text.of("the fields can have too many texts, counted up to this one"),
          Text.of("Give them smaller lengths, fewer choices or fewer shapes."));
      shapes.clear();
    } else {
      moves += more;
    }
  }

  /** Stands for a field whose declaration is not understood, so that patterns may name it. */
  private static Declared notUnderstood(String name, Item item) {
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
                instanceof Shape.Settled.Legal(String text, String value)
        ? value
        : main.value(main.texts().shortest());
  }

  /** Reports {@code values: F, B}, of which YAML makes one value and a key without any. */
  private boolean isBareList(Item item) {
    var entries = ((YamlNode.Mapping) item.node()).entries();
    for (int i = 0; i < entries.size(); i++) {
      if (entries.get(i).key().text().equals("values")
          && entries.get(i).value() instanceof YamlNode.Text first) {
        var all = new ArrayList<String>(List.of(first.text()));
        for (var next : entries.subList(i + 1, entries.size())) {
          if (next.value() instanceof YamlNode.Text(String nothing, int _, int _, int _)
              && nothing.isEmpty()) {
            all.add(next.key().text());
          }
        }
        faults.add(
            new Item(item.where() + ".values", first).place(),
            Text.of("the values of a choice are a list"),
            Text.of("Write {0}.", "values: [" + Quoted.bare(String.join(", ", all)) + "]"));
        return true;
      }
    }
    return false;
  }

  /** A choice's values and what each means. */
  private SequencedMap<String, String> choices(
      FieldType type, Map<String, Item> keys, Item declaration) {
    var choices = new LinkedHashMap<String, String>();
    if (type != FieldType.CHOICE) {
      return choices;
    }
    var item = keys.get("values");
    if (item == null) {
      faults.missing(declaration, "values", "values: {F: front, B: back}");
      return choices;
    }
    int before = faults.count();
    if (item.node() instanceof YamlNode.Sequence) {
      values.list(keys, "values", Limits.CHOICES).forEach(value -> choices.put(value, value));
    } else {
      values
          .named(item, Limits.CHOICES, Text.of("values"))
          .forEach((value, meaning) -> choices.put(value, values.text(meaning)));
    }
    if (faults.count() > before) {
      choices.clear();
    } else if (choices.isEmpty() || choices.containsKey("")) {
      faults.add(
          item.place(),
          Text.of("a choice needs values, and none may be empty"),
          Text.of("Give its values."));
      choices.remove("");
    }
    return choices;
  }
}
