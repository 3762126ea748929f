package org.framewright.ready;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.regex.Pattern;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.naming.Nearest;
import org.framewright.naming.YamlFile;
import org.framewright.naming.YamlNode;

/**
 * Makes a checklist of its file's text. It goes on after a fault, so that one pass reports them
 * all, each with its place.
 */
final class ChecklistFile {
  private static final String TITLE = "checklist";
  private static final String ABOUT = "about";
  private static final String SOURCES = "sources";
  private static final String MORNING = "morning";
  private static final String EVENING = "evening";
  private static final List<String> TOP = List.of(TITLE, ABOUT, SOURCES, MORNING, EVENING);

  private static final String TEXT = "text";
  private static final String CAUTION = "caution";
  private static final List<String> LANGUAGES = List.of("de", "fr");
  private static final List<String> OF_ITEM = List.of(TEXT, CAUTION, "de", "fr");

  private static final Pattern ID = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");
  private static final int LONGEST_ID = 40;
  private static final int LONGEST = 500;
  private static final int MOST_ITEMS = 200;
  private static final int MOST_FAULTS = 100;

  private final String source;
  private final List<Fault> faults = new ArrayList<>();

  private record Fault(int line, int column, Text what, Text remedy) {}

  ChecklistFile(String source) {
    this.source = source;
  }

  Checklist.Parsed parse(String yaml) {
    var read =
        switch (YamlFile.tree(yaml, source)) {
          case YamlFile.Tree.Sound sound -> list(sound.root());
          case YamlFile.Tree.Faulty faulty -> {
            fault(faulty.line(), faulty.column(), faulty.what(), faulty.remedy());
            yield Optional.<Checklist>empty();
          }
        };
    return read.isPresent() && faults.isEmpty()
        ? new Checklist.Parsed.Sound(read.get())
        : new Checklist.Parsed.Faulty(inOrder());
  }

  /** In the order of the file. */
  private List<Problem> inOrder() {
    return faults.stream()
        .sorted(Comparator.comparingInt(Fault::line).thenComparingInt(Fault::column))
        .map(
            fault ->
                new Problem(
                    fault.what(),
                    source + ", line " + fault.line() + ", column " + fault.column(),
                    fault.remedy()))
        .toList();
  }

  private void fault(YamlNode at, Text what, Text remedy) {
    fault(at.line(), at.column(), what, remedy);
  }

  private void fault(int line, int column, Text what, Text remedy) {
    if (faults.size() < MOST_FAULTS) {
      faults.add(new Fault(line, column, what, remedy));
    }
  }

  private Optional<Checklist> list(Optional<YamlNode> root) {
    if (root.isEmpty()
        || !(root.get() instanceof YamlNode.Mapping mapping)
        || mapping.entries().stream().noneMatch(entry -> entry.key().text().equals(TITLE))) {
      fault(
          1,
          1,
          Text.of("this is no checklist"),
          Text.of("Start it with {0} and a title; see docs/formats.md.", TITLE + ":"));
      return Optional.empty();
    }
    var keys = map(mapping, TOP);
    var title = text(keys.get(TITLE));
    Optional.ofNullable(keys.get(ABOUT)).ifPresent(this::text);
    var morning = items(Optional.ofNullable(keys.get(MORNING)));
    var evening = items(Optional.ofNullable(keys.get(EVENING)));
    if (keys.get(EVENING) instanceof YamlNode.Mapping late) {
      for (var entry : late.entries()) {
        if (morning.containsKey(entry.key().text())) {
          fault(
              entry.key(),
              Text.of("“{0}” is an item of the morning, too", quoted(entry.key().text())),
              Text.of("Give one of the two another name: a tick goes by it."));
        }
      }
    }
    return Optional.of(new Checklist(title, morning, evening));
  }

  private SequencedMap<String, Checklist.Item> items(Optional<YamlNode> node) {
    var items = new LinkedHashMap<String, Checklist.Item>();
    if (node.isEmpty()) {
      return items;
    }
    if (!(node.get() instanceof YamlNode.Mapping mapping)) {
      notAMapping(node.get());
      return items;
    }
    if (mapping.entries().size() > MOST_ITEMS) {
      fault(
          mapping,
          Text.of("there are more than {0} items", MOST_ITEMS),
          Text.of("Nobody goes through that many; take some out."));
      return items;
    }
    for (var entry : mapping.entries()) {
      var id = entry.key().text();
      if (id.length() > LONGEST_ID || !ID.matcher(id).matches()) {
        fault(
            entry.key(),
            Text.of("“{0}” is no name of an item", quoted(id)),
            Text.of(
                "Use small letters a to z, digits and hyphens, at most {0}: spare-cable.",
                LONGEST_ID));
      } else if (items.putIfAbsent(id, item(entry.value())) != null) {
        twice(entry.key());
      }
    }
    return Collections.unmodifiableSequencedMap(items);
  }

  private Checklist.Item item(YamlNode node) {
    if (!(node instanceof YamlNode.Mapping mapping)) {
      return new Checklist.Item(text(node), false, new LinkedHashMap<>());
    }
    var keys = map(mapping, OF_ITEM);
    boolean caution = keys.containsKey(CAUTION);
    if (caution == keys.containsKey(TEXT)) {
      fault(
          mapping,
          Text.of("an item has either a text or a caution"),
          Text.of(
              "Write what should be so behind {0} or behind {1}, not both.",
              TEXT + ":", CAUTION + ":"));
    }
    var translated = new LinkedHashMap<String, String>();
    for (var language : LANGUAGES) {
      if (keys.containsKey(language)) {
        translated.put(language, text(keys.get(language)));
      }
    }
    var words = Optional.ofNullable(keys.get(caution ? CAUTION : TEXT));
    return new Checklist.Item(words.map(this::text).orElse(""), caution, translated);
  }

  private String text(YamlNode node) {
    if (!(node instanceof YamlNode.Text written) || written.text().isBlank()) {
      fault(node, Text.of("a text should stand here"), Text.of("Write it in one line."));
      return "";
    }
    if (written.text().length() > LONGEST) {
      fault(
          node,
          Text.of("this is longer than {0} letters", LONGEST),
          Text.of("Say it in a line or two."));
    }
    return PlainText.line(written.text().strip());
  }

  private void notAMapping(YamlNode node) {
    fault(
        node,
        Text.of("this should be a list of “key: value”"),
        Text.of("Indent its keys under it."));
  }

  private void twice(YamlNode at) {
    fault(
        at,
        Text.of("“{0}” is given twice", at instanceof YamlNode.Text key ? quoted(key.text()) : ""),
        Text.of("Keep one of the two."));
  }

  /** Each value by its key; a key that is given twice or has no meaning is a fault. */
  private SequencedMap<String, YamlNode> map(YamlNode.Mapping mapping, List<String> known) {
    var items = new LinkedHashMap<String, YamlNode>();
    for (var entry : mapping.entries()) {
      var key = entry.key().text();
      if (!known.contains(key)) {
        fault(
            entry.key(),
            Text.of("“{0}” has no meaning here", quoted(key)),
            Nearest.to(key, known)
                .map(near -> Text.of("Is “{0}” meant?", near))
                .orElseGet(() -> Text.of("Known here: {0}.", String.join(", ", known))));
      } else if (items.putIfAbsent(key, entry.value()) != null) {
        twice(entry.key());
      }
    }
    return items;
  }

  private static String quoted(String text) {
    return PlainText.line(text.length() > LONGEST_ID ? text.substring(0, LONGEST_ID) : text);
  }
}
