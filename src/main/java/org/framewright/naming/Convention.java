package org.framewright.naming;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SequencedMap;

/** How every name of a job is made. */
@SuppressWarnings("DoNotCallSuggester")
public final class Convention {
  /** What came of reading a convention's file. */
  public sealed interface Parsed {
    /** It can build and read names; {@link Convention#check} says whether it should. */
    record Sound(Convention convention) implements Parsed {}

    /** Everything that is wrong with it, each with its line and column. */
    record Faulty(List<Finding> findings) implements Parsed {}
  }

  private Convention() {}

  /** Reads a convention. {@code sourceName} names the text in messages. */
  public static Parsed parse(String yaml, String sourceName) {
    throw new UnsupportedOperationException(sourceName + yaml.length());
  }

  /** Reads a convention from a UTF-8 file. */
  public static Parsed read(Path file) throws IOException {
    return parse(Files.readString(file), file.toString());
  }

  public String title() {
    throw new UnsupportedOperationException();
  }

  /** The text as read. */
  public String yaml() {
    throw new UnsupportedOperationException();
  }

  /** The fields by name, in file order. */
  public SequencedMap<String, Field> fields() {
    throw new UnsupportedOperationException();
  }

  /** The kinds of names by id, in file order. */
  public SequencedMap<String, Kind> kinds() {
    throw new UnsupportedOperationException();
  }

  /** The folders inside a job by role; each a path with {@code /}, which may show fields. */
  public SequencedMap<String, String> folders() {
    throw new UnsupportedOperationException();
  }

  /** Builds a name of a kind from people's text, ISO 8601 dates and plain numbers. */
  public Built build(String kind, Map<String, String> values) {
    throw new UnsupportedOperationException(kind + values);
  }

  /** Builds a folder's path, relative to the job folder and with {@code /}. */
  public Built buildFolder(String role, Map<String, String> values) {
    throw new UnsupportedOperationException(role + values);
  }

  /** Reads a name, without its file ending, as any kind. */
  public Reading read(String name) {
    throw new UnsupportedOperationException(name);
  }

  /** Reads a name, without its file ending, as one kind. */
  public Reading read(String name, String kind) {
    throw new UnsupportedOperationException(name + kind);
  }

  /** Numbers for a kind's counter that follow on those of the names that exist. */
  public Numbering numbering(String kind, Iterable<String> existing) {
    throw new UnsupportedOperationException(kind + existing);
  }

  /**
   * Proves the convention sound, or shows what is not.
   *
   * @param framesPlanned frames planned for each run of a counter; 0 if unknown
   */
  public List<Finding> check(long framesPlanned) {
    throw new UnsupportedOperationException("" + framesPlanned);
  }
}
