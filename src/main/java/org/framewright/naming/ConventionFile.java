package org.framewright.naming;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.framewright.base.Text;

/**
 * Makes a convention of its file's text. It goes on after a fault, so that one pass reports them
 * all: the YAML becomes a tree ({@link YamlFile}), its fields are declared ({@link
 * FieldDeclarations}), then the names and folders that show them ({@link NameDeclarations}).
 */
final class ConventionFile {
  private static final Set<String> TOP = Language.names(Language.TOP);

  private final String yaml;
  private final String source;
  private final Faults faults = new Faults();
  private final Values values = new Values(faults);

  ConventionFile(String yaml, String source) {
    this.yaml = yaml;
    this.source = source;
  }

  Convention.Parsed parse() {
    try {
      var convention = YamlFile.read(yaml, source, faults).flatMap(this::convention);
      if (convention.isPresent() && faults.none()) {
        return new Convention.Parsed.Sound(convention.get());
      }
      if (faults.none()) {
        notAConvention();
      }
    } catch (Faults.TooMany _) {
      // Those found are enough to work on.
    }
    return new Convention.Parsed.Faulty(faults.inOrder());
  }

  private void notAConvention() {
    faults.add(
        new Declared.Place("convention", 1, 1),
        Text.of("{0} is not a convention", Quoted.bare(source)),
        Text.of("Start it with convention: and a title; see the templates."));
  }

  /** The convention as far as it is understood; empty where kinds cannot be compiled. */
  private Optional<Convention> convention(YamlNode root) {
    if (!(root instanceof YamlNode.Mapping mapping)) {
      return Optional.empty();
    }
    var top = new Item("", root);
    if (mapping.entries().stream().noneMatch(entry -> isKey(entry.key().text()))) {
      return Optional.empty();
    }
    var items = values.map(top, TOP);
    var title = values.prose(items, "convention");
    if (title.isBlank() && !items.containsKey("convention")) {
      faults.missing(top, "convention", "convention: Fashion, several days");
    }
    var fields =
        section(top, items, "fields", "fields: {take: {type: counter, digits: 4}}")
            .map(item -> new FieldDeclarations(faults, values).read(item))
            .orElseGet(LinkedHashMap::new);
    var names = new NameDeclarations(faults, values, fields);
    var kinds =
        section(top, items, "names", "names: {frame: \"{day}_{take}\"}")
            .map(names::kinds)
            .orElseGet(LinkedHashMap::new);
    var folders =
        section(top, items, "folders", "folders: {frames: 01_frames}").map(names::folders);
    var travels = travels(items);
    int before = values.number(items, "before", 60, 0, 200);
    var about = values.prose(items, "about");
    if (!faults.none()) {
      return Optional.empty();
    }
    return folders.map(
        found -> new Convention(title, about, yaml, source, fields, kinds, found, travels, before));
  }

  private static boolean isKey(String word) {
    return TOP.contains(word) || Nearest.to(word, TOP).isPresent();
  }

  private Optional<Item> section(Item top, Map<String, Item> items, String key, String example) {
    var item = Optional.ofNullable(items.get(key));
    if (item.isEmpty()) {
      faults.missing(top, key, example);
    }
    return item;
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
    var words = values.list(items, "travels-to", Limits.FAULTS);
    if (words.isEmpty()) {
      faults.add(
          item.place(),
          Text.of("it names no place"),
          Text.of("Name one, or leave travels-to: out for all systems."));
    }
    for (var word : words) {
      var target = known.get(word);
      if (target == null) {
        faults.add(
            item.place(),
            Text.of("“{0}” is no place that names travel to", Quoted.bare(word)),
            Values.meant(
                word,
                known.keySet(),
                Text.of(
                    "Known: {0}.",
                    Arrays.stream(Target.values()).map(id).collect(Collectors.joining(", ")))));
      } else {
        targets.add(target);
      }
    }
    return targets;
  }
}
