package org.framewright.naming;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import org.framewright.base.Text;

/** Reads the parts {@code names:} and {@code folders:} of a convention, the patterns. */
final class NameDeclarations {
  private final Faults faults;
  private final Values values;
  private final Map<String, Declared> fields;
  private final SequencedMap<String, Item> patterns = new LinkedHashMap<>();
  private final Map<String, List<Part>> resolved = new LinkedHashMap<>();
  private final Set<String> resolving = new LinkedHashSet<>();

  NameDeclarations(Faults faults, Values values, Map<String, Declared> fields) {
    this.faults = faults;
    this.values = values;
    this.fields = fields;
  }

  /** The kinds by id; only where nothing is wrong so far can they be compiled. */
  SequencedMap<String, DeclaredKind> kinds(Item item) {
    var kinds = new LinkedHashMap<String, DeclaredKind>();
    values
        .named(item, Limits.KINDS, Text.of("kinds of names"))
        .forEach(
            (id, pattern) -> {
              if (!FieldDeclarations.isName(id)) {
                faults.add(
                    pattern.place(),
                    Text.of("the name of a kind is made of A-Z, a-z, 0-9 and _"),
                    Text.of("Rename it."));
              } else if (fields.containsKey(id)) {
                faults.add(
                    pattern.place(),
                    Text.of(
                        "a field is called “{0}” too, so that {1} would mean two things",
                        id, "{" + id + "}"),
                    Text.of("Rename one of them."));
              } else {
                patterns.put(id, pattern);
              }
            });
    if (patterns.isEmpty() && faults.none()) {
      faults.add(
          item.place(),
          Text.of("there is no kind of name"),
          Text.of("Add one, such as {0}.", "frame: \"{day}_{take}\""));
    }
    for (var id : patterns.keySet()) {
      resolve(id);
    }
    if (faults.none()) {
      patterns.forEach(
          (id, pattern) -> {
            var text = values.text(pattern, Limits.PATTERN);
            kinds.put(
                id, new DeclaredKind(id, text, resolved.get(id), sameAs(text), pattern.placeOf(0)));
          });
    }
    return kinds;
  }

  private Optional<String> sameAs(String pattern) {
    return pattern.matches("\\{[A-Za-z0-9_]{1,40}}")
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
                faults.add(
                    item.placeOf(position),
                    Text.of(
                        "the names go in a circle: {0}, {1}", String.join(", ", resolving), other),
                    Text.of("Write one of them out in fields."));
                return null;
              }
              return resolve(other);
            });
    resolving.remove(id);
    resolved.put(id, parts);
    return parts;
  }

  private List<Part> parts(Item item, boolean folder, PatternText.Kinds inner) {
    int before = faults.count();
    var text = values.text(item, Limits.PATTERN);
    if (faults.count() > before) {
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
                    faults.add(rule, item.placeOf(position), what, remedy))
            .parts();
    checkOptional(item, parts, false);
    if (faults.count() == before && Chain.states(parts) > Limits.STATES) {
      faults.add(
          item.placeOf(0),
          Text.of("its names have too many possible texts"),
          Text.of("Show fewer fields in it, or give them smaller lengths or fewer choices."));
    }
    return parts;
  }

  private void checkOptional(Item item, List<Part> parts, boolean inRun) {
    for (var part : parts) {
      switch (part) {
        case Part.Run run -> checkOptional(item, run.parts(), true);
        case Part.Show show when inRun && show.field().required() ->
            faults.add(
                item.placeOf(0),
                Text.of(
                    "the field {0} is required, yet shows in an optional run", show.field().name()),
                Text.of("Take the brackets away, or {0}.", "required: yes"));
        case Part.Show show when inRun && show.field().defaultValue().isPresent() ->
            faults.add(
                item.placeOf(0),
                Text.of(
                    "the field {0} has a default, so the optional run around it would always show",
                    show.field().name()),
                Text.of("Take the brackets away, or the default."));
        case Part.Show _, Part.Text _ -> {}
      }
    }
  }

  /** The folders inside a job by role. */
  SequencedMap<String, DeclaredFolder> folders(Item item) {
    var folders = new LinkedHashMap<String, DeclaredFolder>();
    if (!(item.node() instanceof YamlNode.Mapping)) {
      faults.add(
          item.place(),
          Text.of("each folder of a job has a role, and this gives it none"),
          Text.of(
              "Write each below folders: with its role, such as {0}.",
              Reserved.FRAMES + ": " + firstOf(item.node()).orElse("01_frames")));
      return folders;
    }
    values
        .named(item, Limits.FOLDERS, Text.of("folders"))
        .forEach(
            (role, pattern) -> {
              var text = values.text(pattern, Limits.PATTERN);
              var components = Arrays.asList(text.split("/", -1));
              if (components.stream().anyMatch(c -> c.isEmpty() || c.equals(".") || c.equals(".."))
                  || text.contains("\\")) {
                faults.add(
                    pattern.place(),
                    Text.of("“{0}” is not a path inside the job folder", Quoted.bare(text)),
                    Text.of("Write names with / between them, such as 01_frames/raw."));
              }
              folders.put(
                  role,
                  new DeclaredFolder(
                      role, text, parts(pattern, true, (id, position) -> null), pattern.place()));
            });
    if (!folders.containsKey(Reserved.FRAMES)) {
      faults.add(
          item.place(),
          Text.of("the folder for {0} is missing", Reserved.FRAMES),
          Nearest.to(Reserved.FRAMES, folders.keySet())
              .map(near -> Text.of("Is {0}: meant? Call it {1}.", near, Reserved.FRAMES))
              .orElse(Text.of("Add {0}", Reserved.FRAMES + ": 01_frames")));
    }
    return folders;
  }

  private static Optional<String> firstOf(YamlNode node) {
    return node instanceof YamlNode.Sequence(List<YamlNode> items, int _, int _)
            && !items.isEmpty()
            && items.getFirst() instanceof YamlNode.Text text
        ? Optional.of(Quoted.bare(text.text()))
        : Optional.empty();
  }
}
