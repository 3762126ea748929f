package org.framewright.handoff.spec;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.framewright.base.FileProblemException;
import org.framewright.base.FileProblems;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.base.SmallFiles;
import org.framewright.base.Text;
import org.framewright.frames.PictureBorder;
import org.framewright.frames.PictureHeader;
import org.framewright.naming.Convention;
import org.framewright.naming.Nearest;
import org.framewright.naming.Reserved;

/** What a client asks of the pictures: of all, and more of those that show a view. */
public final class Specification {
  /** Its file in a job, beside the folders of pictures: a person writes it, and nobody else. */
  public static final String FILE = "delivery.yaml";

  private static final int MOST_BYTES = 1 << 18;
  private static final Pattern BEGINNING = Pattern.compile("(?m)^\uFEFF?specification[ \t]*:");

  private final String title;
  private final String about;
  private final Optional<Named> name;
  private final Map<Rule, Asked> all;
  private final SequencedMap<String, Of> views;

  Specification(
      String title,
      String about,
      Optional<Named> name,
      Map<Rule, Asked> all,
      SequencedMap<String, Of> views) {
    this.title = title;
    this.about = about;
    this.name = name;
    this.all = Collections.unmodifiableMap(all);
    this.views = Collections.unmodifiableSequencedMap(views);
  }

  /** A name in the file, and where it stands. */
  record Named(String text, String where) {}

  /** What is asked of the pictures of a view, and where that stands. */
  record Of(Map<Rule, Asked> asked, String where) {}

  /** What a file is read as. */
  public sealed interface Parsed {
    /** It can be used. */
    record Sound(Specification specification) implements Parsed {}

    /** It cannot, for these reasons; each says line and column. */
    record Faulty(List<Problem> problems) implements Parsed {
      public Faulty {
        problems = List.copyOf(problems);
      }
    }
  }

  /**
   * Reads a specification's text.
   *
   * @param source the name of its file, for what is said of it
   */
  public static Parsed parse(String yaml, String source) {
    return new SpecificationFile(source).parse(yaml);
  }

  /** Reads a specification from a UTF-8 file; a folder, a device and a large file are faulty. */
  public static Parsed read(Path file, LinkOption... links) {
    try {
      var bytes = SmallFiles.read(file, MOST_BYTES, links);
      var text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return parse(text.startsWith("\uFEFF") ? text.substring(1) : text, file.toString());
    } catch (CharacterCodingException e) {
      return new Parsed.Faulty(
          List.of(
              new Problem(
                  "this is not text in UTF-8",
                  file.toString(),
                  "Save it as plain text in UTF-8.")));
    } catch (FileProblemException e) {
      return new Parsed.Faulty(List.of(e.problem()));
    } catch (IOException e) {
      return new Parsed.Faulty(List.of(FileProblems.of(e)));
    }
  }

  /** Whether a file is meant as one, sound or not. */
  public static boolean isMeant(Path file) {
    try {
      return BEGINNING
          .matcher(new String(SmallFiles.read(file, MOST_BYTES), StandardCharsets.UTF_8))
          .find();
    } catch (IOException e) {
      return false;
    }
  }

  /** That of a job, where it has one. Links are not followed. */
  public static Optional<Parsed> ofJob(Path jobFolder) {
    var file = jobFolder.resolve(FILE);
    return Files.exists(file, LinkOption.NOFOLLOW_LINKS)
        ? Optional.of(read(file, LinkOption.NOFOLLOW_LINKS))
        : Optional.empty();
  }

  /** What it is called. */
  public String title() {
    return title;
  }

  /** What it is for; may be empty. */
  public String about() {
    return about;
  }

  /** The kind of name that pictures are to be delivered under, where it says one. */
  public Optional<String> name() {
    return name.map(Named::text);
  }

  /** Where it asks for what a job's convention does not have. */
  public List<Problem> problems(Convention convention) {
    var problems = new ArrayList<Problem>();
    if (name.isPresent() && !convention.kinds().containsKey(name.get().text())) {
      problems.add(
          new Problem(
              Text.of(
                  "the convention of this job has no names of the kind “{0}”",
                  PlainText.line(name.get().text())),
              name.get().where(),
              meant(name.get().text(), convention.kinds().keySet())));
    }
    var field = Optional.ofNullable(convention.fields().get(Reserved.VIEW));
    var known = new LinkedHashSet<String>();
    field.ifPresent(
        view ->
            view.choices()
                .forEach(
                    (code, meaning) -> {
                      known.add(code);
                      known.add(meaning);
                    }));
    views.forEach(
        (view, of) -> {
          boolean open = field.isPresent() && known.isEmpty();
          if (!open && known.stream().noneMatch(view::equalsIgnoreCase)) {
            problems.add(
                new Problem(
                    Text.of("“{0}” is no view of this job’s convention", PlainText.line(view)),
                    of.where(),
                    meant(view, known)));
          }
        });
    return List.copyOf(problems);
  }

  private static Text meant(String word, Collection<String> known) {
    return Nearest.to(word, known)
        .map(near -> Text.of("Is “{0}” meant?", near))
        .orElse(
            known.isEmpty()
                ? Text.of("Take it out.")
                : Text.of("Known here: {0}.", String.join(", ", known)));
  }

  /**
   * Where a picture is not what is asked.
   *
   * @param file its path, for the findings
   * @param view the view that it shows, by its code or in words; several spellings of one
   * @param reading what its header says
   * @param border how its border is read, where something is asked of it
   */
  public List<SpecFinding> findings(
      String file,
      Collection<String> view,
      PictureHeader.Reading reading,
      Supplier<PictureBorder.Reading> border) {
    return new Judgement(file, asked(view), border).of(reading);
  }

  /** What is asked of the pictures of a view, in the order of the rules. */
  private Map<Rule, Asked> asked(Collection<String> view) {
    var asked = new EnumMap<Rule, Asked>(Rule.class);
    asked.putAll(all);
    views.forEach(
        (name, of) -> {
          if (view.stream().anyMatch(name::equalsIgnoreCase)) {
            asked.putAll(of.asked());
          }
        });
    return asked;
  }

  /** What is asked, in words: of all under an empty name, then of each view. */
  public SequencedMap<String, SequencedMap<String, Text>> words() {
    var words = new LinkedHashMap<String, SequencedMap<String, Text>>();
    words.put("", words(all));
    views.forEach((view, of) -> words.put(view, words(of.asked())));
    return words;
  }

  private static SequencedMap<String, Text> words(Map<Rule, Asked> asked) {
    var words = new LinkedHashMap<String, Text>();
    asked.forEach((rule, what) -> words.put(rule.word(), what.words()));
    return words;
  }
}
