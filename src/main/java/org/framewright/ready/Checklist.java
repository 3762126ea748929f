package org.framewright.ready;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SequencedMap;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.base.SmallFiles;
import org.framewright.base.Text;

/**
 * What people look after before the first frame and after the last.
 *
 * @param title its name
 * @param morning the items before the first frame, by their ids
 * @param evening those after the last
 */
public record Checklist(
    String title, SequencedMap<String, Item> morning, SequencedMap<String, Item> evening) {
  /** What every caution says besides its own words. */
  public static final Text CAUTION =
      Text.of(
          "A reminder only. Follow local law, the venue’s rules and the equipment’s manuals; leave"
              + " electrical and rigging work to qualified people.");

  private static final int MOST_BYTES = 1 << 17;

  /**
   * Something that a person looks after.
   *
   * @param text what should be so, in the language of the list
   * @param caution whether somebody may be hurt where it is not
   * @param translated the text by language, such as {@code de}
   */
  public record Item(String text, boolean caution, Map<String, String> translated) {
    public Item {
      translated = Map.copyOf(translated);
    }

    /** The text in a language, where the list has it. */
    public String text(Locale locale) {
      return translated.getOrDefault(locale.getLanguage(), text);
    }
  }

  /** What a file is read as. */
  public sealed interface Parsed {
    /** It can be used. */
    record Sound(Checklist list) implements Parsed {}

    /** It cannot, for these reasons; each says line and column. */
    record Faulty(List<Problem> problems) implements Parsed {
      public Faulty {
        problems = List.copyOf(problems);
      }
    }
  }

  /** The items of the morning, or of the evening. */
  public SequencedMap<String, Item> items(boolean wrap) {
    return wrap ? evening : morning;
  }

  /** Reads one. */
  public static Parsed read(Path file) {
    try {
      var bytes = SmallFiles.read(file, MOST_BYTES, LinkOption.NOFOLLOW_LINKS);
      var text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return parse(text.startsWith("\uFEFF") ? text.substring(1) : text, file.toString());
    } catch (CharacterCodingException e) {
      return new Parsed.Faulty(List.of(FileProblems.of(e).at(file.toString())));
    } catch (IOException e) {
      return new Parsed.Faulty(List.of(FileProblems.of(e)));
    }
  }

  /** The same from its text. */
  static Parsed parse(String yaml, String source) {
    return new ChecklistFile(source).parse(yaml);
  }
}
