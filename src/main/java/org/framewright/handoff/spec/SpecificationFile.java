package org.framewright.handoff.spec;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.frames.PictureHeader;
import org.framewright.naming.Nearest;
import org.framewright.naming.YamlFile;
import org.framewright.naming.YamlNode;

/**
 * Makes a specification of its file's text. It goes on after a fault, so that one pass reports them
 * all, each with its place.
 */
final class SpecificationFile {
  private static final String TITLE = "specification";
  private static final String ABOUT = "about";
  private static final String SOURCES = "sources";
  private static final String NAME = "name";
  private static final String ALL = "all";
  private static final String VIEWS = "views";
  private static final List<String> TOP = List.of(TITLE, ABOUT, SOURCES, NAME, ALL, VIEWS);

  private static final String ANY = "any";
  private static final String YES = "yes";
  private static final String NO = "no";

  private static final int MOST_FAULTS = 100;
  private static final int MOST_VIEWS = 1_000;
  private static final int MOST_WORDS = 100;
  private static final int LONGEST = 255;
  private static final int LONGEST_PROSE = 10_000;

  private final String source;
  private final List<Fault> faults = new ArrayList<>();

  private record Fault(int line, int column, Text what, Text remedy) {}

  SpecificationFile(String source) {
    this.source = source;
  }

  Specification.Parsed parse(String yaml) {
    var read =
        switch (YamlFile.tree(yaml, source)) {
          case YamlFile.Tree.Sound sound -> specification(sound.root());
          case YamlFile.Tree.Faulty faulty -> {
            fault(faulty.line(), faulty.column(), faulty.what(), faulty.remedy());
            yield Optional.<Specification>empty();
          }
        };
    return read.isPresent() && faults.isEmpty()
        ? new Specification.Parsed.Sound(read.get())
        : new Specification.Parsed.Faulty(inOrder());
  }

  /** In the order of the file. */
  private List<Problem> inOrder() {
    return faults.stream()
        .sorted(Comparator.comparingInt(Fault::line).thenComparingInt(Fault::column))
        .map(
            fault -> new Problem(fault.what(), where(fault.line(), fault.column()), fault.remedy()))
        .toList();
  }

  private String where(int line, int column) {
    return source + ", line " + line + ", column " + column;
  }

  private String where(YamlNode node) {
    return where(node.line(), node.column());
  }

  private void fault(YamlNode at, Text what, Text remedy) {
    fault(at.line(), at.column(), what, remedy);
  }

  private void fault(int line, int column, Text what, Text remedy) {
    if (faults.size() < MOST_FAULTS) {
      faults.add(new Fault(line, column, what, remedy));
    }
  }

  private Optional<Specification> specification(Optional<YamlNode> root) {
    if (root.isEmpty()
        || !(root.get() instanceof YamlNode.Mapping mapping)
        || mapping.entries().stream().noneMatch(entry -> TOP.contains(entry.key().text()))) {
      fault(
          1,
          1,
          Text.of("this is no delivery specification"),
          Text.of("Start it with specification: and a title; see docs/formats.md."));
      return Optional.empty();
    }
    var items = map(mapping, TOP, true);
    var title = Optional.ofNullable(items.get(TITLE)).map(node -> text(node, LONGEST));
    if (title.isEmpty()) {
      fault(
          1,
          1,
          Text.of("“{0}:” is missing", TITLE),
          Text.of("Add it, such as {0}", "specification: Pictures for the web shop"));
    }
    var about = Optional.ofNullable(items.get(ABOUT)).map(node -> text(node, LONGEST_PROSE));
    Optional.ofNullable(items.get(SOURCES)).ifPresent(this::words);
    var name =
        Optional.ofNullable(items.get(NAME))
            .map(node -> new Specification.Named(text(node, LONGEST), where(node)));
    var all = new EnumMap<Rule, Asked>(Rule.class);
    Optional.ofNullable(items.get(ALL)).ifPresent(node -> all.putAll(asked(node)));
    var views = views(Optional.ofNullable(items.get(VIEWS)), all);
    if (!items.containsKey(ALL) && !items.containsKey(VIEWS)) {
      fault(
          1,
          1,
          Text.of("it asks for nothing"),
          Text.of("Add it, such as {0}", "all: {kinds: [jpeg, tiff], bits: 8}"));
    }
    Optional.ofNullable(items.get(ALL)).ifPresent(node -> contradiction(node, all));
    return Optional.of(
        new Specification(title.orElse("").strip(), about.orElse("").strip(), name, all, views));
  }

  private void contradiction(YamlNode at, Map<Rule, Asked> asked) {
    new Contradictions(asked)
        .found()
        .ifPresent(
            why ->
                fault(at, why, Text.of("Correct what is mistyped, or ask for one of them only.")));
  }

  private SequencedMap<String, Specification.Of> views(
      Optional<YamlNode> node, Map<Rule, Asked> all) {
    var views = new LinkedHashMap<String, Specification.Of>();
    if (node.isEmpty()) {
      return views;
    }
    if (!(node.get() instanceof YamlNode.Mapping mapping)) {
      notAMapping(node.get());
      return views;
    }
    if (mapping.entries().size() > MOST_VIEWS) {
      fault(
          mapping,
          Text.of("there are more than {0} {1}", MOST_VIEWS, Text.of("views")),
          Text.of("Take out those that no picture needs."));
      return views;
    }
    map(mapping, List.of(), false)
        .forEach(
            (view, own) -> {
              var asked = asked(own);
              views.put(view, new Specification.Of(asked, where(own)));
              var together = new EnumMap<Rule, Asked>(Rule.class);
              together.putAll(all);
              together.putAll(asked);
              contradiction(own, together);
            });
    return views;
  }

  private Map<Rule, Asked> asked(YamlNode node) {
    var asked = new EnumMap<Rule, Asked>(Rule.class);
    if (!(node instanceof YamlNode.Mapping mapping)) {
      notAMapping(node);
      return asked;
    }
    var rules =
        Rule.keys().stream().collect(Collectors.toMap(Rule::word, rule -> rule, (one, _) -> one));
    map(mapping, Rule.keys().stream().map(Rule::word).toList(), true)
        .forEach(
            (key, value) -> {
              var rule = rules.get(key);
              asked(rule, value).ifPresent(what -> asked.put(rule, what));
            });
    return asked;
  }

  private void notAMapping(YamlNode node) {
    fault(
        node,
        Text.of("this should be a list of “key: value”"),
        Text.of("Indent its keys under it."));
  }

  /** Each value by its key; a key that is given twice or has no meaning is a fault. */
  private SequencedMap<String, YamlNode> map(
      YamlNode.Mapping mapping, Collection<String> known, boolean closed) {
    var items = new LinkedHashMap<String, YamlNode>();
    for (var entry : mapping.entries()) {
      var key = Normalizer.normalize(entry.key().text(), Normalizer.Form.NFC);
      if (closed && !known.contains(key)) {
        fault(
            entry.key(),
            Text.of("“{0}” has no meaning here", quoted(key)),
            meant(key, known, Text.of("Known here: {0}.", String.join(", ", known))));
      } else if (items.putIfAbsent(key, entry.value()) != null) {
        fault(
            entry.key(),
            Text.of("“{0}” is given twice", quoted(key)),
            Text.of("Keep one of the two."));
      }
    }
    return items;
  }

  private static Text meant(String word, Collection<String> known, Text otherwise) {
    return Nearest.to(word, known).map(near -> Text.of("Is “{0}” meant?", near)).orElse(otherwise);
  }

  private static String quoted(String text) {
    return PlainText.line(text.length() > LONGEST ? text.substring(0, LONGEST) + " ..." : text);
  }

  private String text(YamlNode node, int longest) {
    if (!(node instanceof YamlNode.Text written)) {
      fault(
          node,
          Text.of("this should be plain text"),
          Text.of("Write it on the same line, in quotes."));
      return "";
    }
    if (written.text().length() > longest) {
      fault(
          node,
          Text.of("this text is longer than {0} characters", longest),
          Text.of("Shorten it."));
      return "";
    }
    return Normalizer.normalize(written.text(), Normalizer.Form.NFC).strip();
  }

  /** A text, or a list of texts. */
  private List<String> words(YamlNode node) {
    if (!(node instanceof YamlNode.Sequence sequence)) {
      var one = text(node, LONGEST_PROSE);
      return one.isEmpty() ? List.of() : List.of(one);
    }
    if (sequence.items().size() > MOST_WORDS) {
      fault(
          node,
          Text.of("there are more than {0} {1}", MOST_WORDS, Text.of("values")),
          Text.of("Shorten it."));
      return List.of();
    }
    return sequence.items().stream()
        .map(item -> text(item, LONGEST_PROSE))
        .filter(word -> !word.isEmpty())
        .toList();
  }

  private Optional<Asked> asked(Rule rule, YamlNode node) {
    if (node instanceof YamlNode.Text text && text.text().strip().equalsIgnoreCase(ANY)) {
      return Optional.of(new Asked.Anything());
    }
    return switch (rule) {
      case KINDS ->
          known(node, PictureHeader.Kind.values(), PictureHeader.Kind::word).map(Asked.Kinds::new);
      case COLOURS ->
          known(
                  node,
                  Arrays.stream(PictureHeader.Model.values())
                      .filter(model -> model != PictureHeader.Model.OTHER)
                      .toArray(PictureHeader.Model[]::new),
                  PictureHeader.Model::word)
              .map(Asked.Models::new);
      case BITS -> bits(node);
      case ASPECT -> ratios(node);
      case PROFILE -> profile(node);
      case ALPHA, LAYERS -> presence(node);
      case BACKGROUND -> background(node);
      case WIDTH, HEIGHT, LONG_SIDE, SHORT_SIDE ->
          amount(node, AskedText.pixels(text(node, LONGEST)), "at least 2400, or 900-4800");
      case RESOLUTION -> amount(node, AskedText.resolution(text(node, LONGEST)), "300");
      case FILE_SIZE -> amount(node, AskedText.bytes(text(node, LONGEST)), "at most 20 MB");
      case READABLE, ENDING, NAME -> Optional.empty();
    };
  }

  private void notUnderstood(YamlNode node, String word, Text remedy) {
    fault(node, Text.of("“{0}” is not understood here", quoted(word)), remedy);
  }

  private static Text example(String example) {
    return Text.of("Write it as {0}.", example);
  }

  private <T> Optional<List<T>> known(YamlNode node, T[] values, Function<T, String> word) {
    var known = new LinkedHashMap<String, T>();
    Arrays.stream(values).forEach(value -> known.put(word.apply(value), value));
    var found = new ArrayList<T>();
    for (var given : words(node)) {
      var value = known.get(given.toLowerCase(Locale.ROOT));
      if (value == null) {
        notUnderstood(
            node,
            given,
            meant(
                given,
                known.keySet(),
                Text.of("Known here: {0}.", String.join(", ", known.keySet()))));
      } else {
        found.add(value);
      }
    }
    return ifAny(node, found);
  }

  private <T> Optional<List<T>> ifAny(YamlNode node, List<T> found) {
    if (found.isEmpty() && faults.isEmpty()) {
      fault(node, Text.of("nothing stands here"), Text.of("Write a value, or any."));
    }
    return found.isEmpty() ? Optional.empty() : Optional.of(found);
  }

  private Optional<Asked> bits(YamlNode node) {
    var bits = new ArrayList<Integer>();
    for (var word : words(node)) {
      if (List.of("1", "2", "4", "8", "10", "12", "16", "32", "64").contains(word)) {
        bits.add(Integer.parseInt(word));
      } else {
        notUnderstood(node, word, example("8, 16"));
      }
    }
    return ifAny(node, bits).map(Asked.Numbers::new);
  }

  private Optional<Asked> ratios(YamlNode node) {
    var ratios = new ArrayList<Asked.Ratio>();
    for (var word : words(node)) {
      AskedText.ratio(word)
          .ifPresentOrElse(ratios::add, () -> notUnderstood(node, word, example("\"4:5\"")));
    }
    return ifAny(node, ratios).map(Asked.Ratios::new);
  }

  private Optional<Asked> profile(YamlNode node) {
    var names = words(node);
    if (names.size() == 1 && names.getFirst().equalsIgnoreCase(YES)) {
      return Optional.of(new Asked.Profiles(List.of()));
    }
    if (names.size() == 1 && names.getFirst().equalsIgnoreCase(NO)) {
      return Optional.of(new Asked.Presence(false));
    }
    return ifAny(node, names).map(Asked.Profiles::new);
  }

  private Optional<Asked> background(YamlNode node) {
    var word = text(node, LONGEST).toLowerCase(Locale.ROOT);
    var within = AskedText.white(word);
    if (within.isEmpty()) {
      notUnderstood(node, word, example("white, or white within 3"));
    }
    return within.map(Asked.White::new);
  }

  private Optional<Asked> presence(YamlNode node) {
    var word = text(node, LONGEST).toLowerCase(Locale.ROOT);
    if (word.equals(YES) || word.equals(NO)) {
      return Optional.of(new Asked.Presence(word.equals(YES)));
    }
    notUnderstood(node, word, example("yes, no, any"));
    return Optional.empty();
  }

  private Optional<Asked> amount(YamlNode node, Optional<AskedText.Bounds> bounds, String example) {
    if (bounds.isEmpty()) {
      if (node instanceof YamlNode.Text text) {
        notUnderstood(node, text.text(), example(example));
      }
      return Optional.empty();
    }
    return switch (bounds.get()) {
      case AskedText.Bounds.Of of -> Optional.of(of.amount());
      case AskedText.Bounds.Crossed crossed -> {
        fault(
            node,
            Text.of("{0} to {1} holds nothing", crossed.least(), crossed.most()),
            Text.of("Put the smaller one first."));
        yield Optional.empty();
      }
    };
  }
}
