package org.framewright.naming;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import org.framewright.base.FileProblemException;
import org.framewright.base.SmallFiles;
import org.framewright.base.Text;

/**
 * How every name of a job is made: typed fields, and patterns that show them. Immutable, and safe
 * for several threads.
 *
 * <p>{@code docs/conventions.md} describes the file and its limits: 256 kB, 10 levels of nesting,
 * 200 fields, 50 kinds of names, and so on. Beyond them it is {@link Parsed.Faulty}, so that any
 * file is read, checked and used in bounded time and memory.
 *
 * <p>A sound convention, one whose {@link #check} finds no error, keeps this law: a name that
 * {@link #build} makes is read by {@link #read} in exactly one way, as the same kind with the same
 * values.
 */
public final class Convention {
  /** The most bytes that a convention's file may have. */
  public static final int MOST_BYTES = Limits.FILE;

  /** What came of reading a convention's file. */
  public sealed interface Parsed {
    /** It can build and read names; {@link Convention#check} says whether it should. */
    record Sound(Convention convention) implements Parsed {}

    /** Everything that is wrong with it, each with its line and column. */
    record Faulty(List<Finding> findings) implements Parsed {}
  }

  private final String title;
  private final String about;
  private final String yaml;
  private final String source;
  private final SequencedMap<String, Declared> fields;
  private final SequencedMap<String, DeclaredKind> kinds;
  private final SequencedMap<String, DeclaredFolder> folders;
  private final Set<Target> targets;
  private final int before;
  private volatile List<Finding> unplanned; // a proof takes long, and is asked for more than once

  Convention(
      String title,
      String about,
      String yaml,
      String source,
      SequencedMap<String, Declared> fields,
      SequencedMap<String, DeclaredKind> kinds,
      SequencedMap<String, DeclaredFolder> folders,
      Set<Target> targets,
      int before) {
    this.title = title;
    this.about = about;
    this.yaml = yaml;
    this.source = source;
    this.fields = fields;
    this.kinds = kinds;
    this.folders = folders;
    this.targets = targets;
    this.before = before;
  }

  /** Reads a convention. {@code sourceName} names the text in messages. */
  public static Parsed parse(String yaml, String sourceName) {
    return new ConventionFile(yaml, sourceName).parse();
  }

  /**
   * Reads a convention from a UTF-8 file.
   *
   * @throws IOException if the file cannot be read; a folder or a device, a file that is too large
   *     and one in another encoding are {@link Parsed.Faulty}
   */
  public static Parsed read(Path file) throws IOException {
    byte[] bytes;
    try {
      bytes = SmallFiles.read(file, Limits.FILE);
    } catch (FileProblemException e) {
      return faulty(e.problem().where(), e.problem().fault(), e.problem().fix());
    }
    try {
      var text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return parse(text.startsWith("\uFEFF") ? text.substring(1) : text, file.toString());
    } catch (CharacterCodingException e) {
      return faulty(
          file.toString(),
          Text.of("this is not text in UTF-8"),
          Text.of("Save it as plain text in UTF-8."));
    }
  }

  private static Parsed faulty(String file, Text what, Text remedy) {
    var faults = new Faults();
    faults.add(
        new Declared.Place("convention", 1, 1),
        Text.of("{0}: {1}", Quoted.bare(file), what),
        remedy);
    return new Parsed.Faulty(faults.inOrder());
  }

  public String title() {
    return title;
  }

  /** What it is for, in its author's words; may be empty. */
  public String about() {
    return about;
  }

  /** The text as read. */
  public String yaml() {
    return yaml;
  }

  /** The name of the file that it was read from, for messages. */
  public String source() {
    return source;
  }

  /** The fields by name, in file order. */
  public SequencedMap<String, Field> fields() {
    return Collections.unmodifiableSequencedMap(fields);
  }

  /** The kinds of names by id, in file order. */
  public SequencedMap<String, Kind> kinds() {
    return Collections.unmodifiableSequencedMap(kinds);
  }

  /** The folders inside a job by role; each a path with {@code /}, which may show fields. */
  public SequencedMap<String, String> folders() {
    var patterns = new LinkedHashMap<String, String>();
    folders.forEach((role, folder) -> patterns.put(role, folder.pattern()));
    return Collections.unmodifiableSequencedMap(patterns);
  }

  SequencedMap<String, Declared> declared() {
    return fields;
  }

  SequencedMap<String, DeclaredKind> declaredKinds() {
    return kinds;
  }

  SequencedMap<String, DeclaredFolder> declaredFolders() {
    return folders;
  }

  Set<Target> targets() {
    return targets;
  }

  /** UTF-16 units kept free for the path of the folder that jobs lie in. */
  int before() {
    return before;
  }

  private DeclaredKind kind(String id) {
    var kind = kinds.get(id);
    if (kind == null) {
      throw new IllegalArgumentException("There is no kind of name " + id + " in " + source);
    }
    return kind;
  }

  /**
   * Builds a name of a kind.
   *
   * @param values people's text of at most 1,000 characters, ISO 8601 dates and plain numbers by
   *     field; an empty text is no value, and fields that the kind does not show are left aside
   * @throws IllegalArgumentException if there is no such kind
   */
  public Built build(String kind, Map<String, String> values) {
    var declared = kind(kind);
    return new Builder(declared.place(), targets).build(declared.parts(), values);
  }

  /** Whether a field has a shape of that name; that of the main one is empty. */
  public boolean hasShape(String field, String shape) {
    return fields.containsKey(field) && fields.get(field).shapes().containsKey(shape);
  }

  /** How a field shows a value in one of its shapes; empty where it is no value of that field. */
  public Optional<String> shown(String field, String shape, String value) {
    return hasShape(field, shape)
            && fields.get(field).shapes().get(shape).settle(field, value, new ArrayList<>())
                instanceof Shape.Settled.Legal legal
        ? Optional.of(legal.text())
        : Optional.empty();
  }

  /**
   * Builds a folder's path, relative to the job folder and with {@code /}.
   *
   * @throws IllegalArgumentException if there is no such role
   */
  public Built buildFolder(String role, Map<String, String> values) {
    var folder = folders.get(role);
    if (folder == null) {
      throw new IllegalArgumentException("There is no folder for " + role + " in " + source);
    }
    return new Builder(folder.place(), targets).build(folder.parts(), values);
  }

  /**
   * A name of a kind as an example, made of every field's example value.
   *
   * @throws IllegalArgumentException if there is no such kind
   */
  public String exampleName(String kind) {
    var values = new LinkedHashMap<String, String>();
    fields.forEach((name, field) -> values.put(name, field.example()));
    return switch (new Builder(kind(kind).place(), Set.of()).build(kind(kind).parts(), values)) {
      case Built.Name name -> name.text();
      case Built.Refused refused -> throw new IllegalStateException(refused.toString());
    };
  }

  /**
   * A longest name of a kind, in bytes of UTF-8.
   *
   * @throws IllegalArgumentException if there is no such kind
   */
  public String longestName(String kind) {
    return kind(kind).chain().longest(true);
  }

  /**
   * Reads a name, without its file ending, as any kind. No name has more than 255 characters. Some
   * volumes list letters with accents in two parts; they are read as one.
   */
  public Reading read(String listed) {
    var name = composed(listed);
    if (name.length() > Limits.NAME) {
      return Expectation.tooLong();
    }
    var readings = new ArrayList<Reading.One>();
    DeclaredKind furthest = null;
    Reader.Result best = null;
    for (var kind : kinds.values()) {
      if (kind.sameAs().isPresent()) {
        continue;
      }
      var result = kind.reader().read(name);
      for (var values : result.readings()) {
        readings.add(new Reading.One(kind.id(), values));
      }
      if (best == null || result.reached() > best.reached()) {
        best = result;
        furthest = kind;
      }
    }
    return reading(name, readings, furthest, best);
  }

  private static String composed(String name) {
    return Normalizer.normalize(name, Normalizer.Form.NFC);
  }

  /**
   * Reads a name, without its file ending, as one kind.
   *
   * @throws IllegalArgumentException if there is no such kind
   */
  public Reading read(String listed, String kind) {
    var declared = kind(kind);
    var name = composed(listed);
    if (name.length() > Limits.NAME) {
      return Expectation.tooLong();
    }
    var result = declared.reader().read(name);
    var readings = new ArrayList<Reading.One>();
    result.readings().forEach(values -> readings.add(new Reading.One(kind, values)));
    return reading(name, readings, declared, result);
  }

  private static Reading reading(
      String name, List<Reading.One> readings, DeclaredKind kind, Reader.Result result) {
    return switch (readings.size()) {
      case 0 -> Expectation.of(name, kind, result);
      case 1 -> readings.getFirst();
      default ->
          new Reading.Several(
              List.copyOf(readings.subList(0, Math.min(Reader.MOST_READINGS, readings.size()))));
    };
  }

  /**
   * Numbers for a kind's counter that follow on those of the names that exist. Names of other kinds
   * among them are left aside.
   *
   * @throws IllegalArgumentException if there is no such kind, or it shows no counter
   */
  public Numbering numbering(String kind, Iterable<String> existing) {
    var declared = kind(kind);
    var counter =
        declared
            .counter()
            .map(fields::get)
            .orElseThrow(() -> new IllegalArgumentException("No counter shows in a " + kind));
    var largest = new HashMap<List<String>, Long>();
    for (var name : existing) {
      if (name.length() > Limits.NAME) {
        continue;
      }
      for (var values : declared.reader().read(name).readings()) {
        var number = values.get(counter.name());
        if (number != null) {
          largest.merge(run(declared, counter, values), Long.valueOf(number), Math::max);
        }
      }
    }
    return values ->
        largest.merge(run(declared, counter, values), counter.start(), (last, start) -> last + 1);
  }

  /** The values on which the counter restarts, as the kind shows them. */
  private static List<String> run(DeclaredKind kind, Declared counter, Map<String, String> values) {
    var run = new ArrayList<String>();
    for (var name : counter.restarts()) {
      var show = kind.shows().get(name);
      if (show == null) {
        continue;
      }
      var raw =
          Optional.ofNullable(values.get(name)).or(() -> show.field().defaultValue()).orElse("");
      run.add(
          !raw.isBlank()
                  && show.shape().settle(name, raw, new ArrayList<>())
                      instanceof Shape.Settled.Legal(String text, String value)
              ? value
              : raw);
    }
    return run;
  }

  /**
   * Proves the convention sound and fit for a job, or shows what is not.
   *
   * @param framesPlanned frames planned for each run of a counter; 0 if unknown
   */
  public List<Finding> check(long framesPlanned) {
    if (framesPlanned != 0) {
      return proven(framesPlanned);
    }
    var known = unplanned;
    if (known == null) {
      known = proven(0);
      unplanned = known;
    }
    return known;
  }

  private List<Finding> proven(long framesPlanned) {
    var report = new Report();
    new Check(this, report).prove(framesPlanned);
    new UseCheck(this, report).check();
    return report.findings();
  }

  /** The same without what a job needs, for conventions that only build and read names. */
  List<Finding> prove(long framesPlanned) {
    var report = new Report();
    new Check(this, report).prove(framesPlanned);
    return report.findings();
  }
}
