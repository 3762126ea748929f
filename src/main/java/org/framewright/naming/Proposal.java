package org.framewright.naming;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;
import org.framewright.base.DurableFiles;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/**
 * A convention proposed from names that a studio already uses: what their pieces are taken for, the
 * convention's text, and the proof, every example read back by it. Immutable; {@link #with} gives
 * another for what a person says that a piece is.
 */
public final class Proposal {
  /** What a piece of a frame's name is taken for. */
  public enum Role {
    DATE("the day, or the time, of the shoot"),
    CLIENT("whom it is shot for"),
    TITLE("what the job is called"),
    SETUP("what is shot: a line of the list"),
    VIEW("front, back, detail"),
    COUNTER("counts the frames"),
    VERSION("counts the versions of one frame"),
    TEXT("the same in every name there will be"),
    OTHER("something that the program need not know");

    private final String meaning;

    Role(String meaning) {
      this.meaning = meaning;
    }

    /** The word for it, such as {@code setup}. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    /** What that is, such as {@code whom it is shot for}. */
    public String meaning() {
      return meaning;
    }
  }

  /**
   * A piece of the names.
   *
   * @param number counted from 1
   * @param before the text between it and the piece before
   * @param values its text in the examples, each once
   * @param optional whether some examples do not have it
   * @param choices what it can be
   * @param question what the names do not show of it; none once a person said what it is
   * @param field its declaration, such as {@code setup: {type: number, digits: 3}}; empty for text
   */
  public record Piece(
      int number,
      String before,
      List<String> values,
      boolean optional,
      Role role,
      List<Role> choices,
      Optional<Text> question,
      Optional<String> field) {}

  /**
   * An example, taken apart.
   *
   * @param given as it was given
   * @param name what of it is read: without its folders and its ending
   * @param texts its text for each piece; none where it is not made as the others are
   * @param unread why it is not read back as it is meant; empty where it is
   */
  public record Example(
      String given, String name, List<Optional<String>> texts, Optional<Unread> unread) {}

  /**
   * Why a name is not read back as it is meant.
   *
   * @param at where in the name reading it ended, in UTF-16 units from 0; empty where it did not
   */
  public record Unread(String example, Text said, OptionalInt at) {
    /** Why, in English. */
    public String why() {
      return said.english();
    }
  }

  private final String title;
  private final List<String> examples;
  private final Optional<String> job;
  private final NameColumns columns;
  private final List<Role> roles;

  /** The pieces of which a person said what they are. */
  private final Set<Integer> said;

  private final Draft draft;
  private final List<Example> read;
  private final List<Unread> unread;

  private Proposal(
      String title,
      List<String> examples,
      Optional<String> job,
      NameColumns columns,
      List<Role> roles,
      Set<Integer> said) {
    this.title = title;
    this.examples = examples;
    this.job = job;
    this.columns = columns;
    this.roles = roles;
    this.said = said;
    this.draft = best();
    this.read = examples.stream().map(this::example).toList();
    this.unread =
        Stream.concat(
                read.stream().flatMap(example -> example.unread().stream()),
                job.flatMap(name -> unread(name, NameTokens.folder(name), Reserved.JOB)).stream())
            .toList();
  }

  /** A way to write it, and what is so about it. */
  private record Draft(ProposalText text, Optional<Convention> convention, List<Finding> findings) {
    static Draft of(ProposalText text, String title) {
      return switch (Convention.parse(text.yaml(), title)) {
        case Convention.Parsed.Sound(Convention convention) ->
            new Draft(text, Optional.of(convention), convention.check(0));
        case Convention.Parsed.Faulty(List<Finding> findings) ->
            new Draft(text, Optional.empty(), findings);
      };
    }

    /** Whether no name of one kind is one of another. */
    boolean isApart() {
      return convention.isPresent()
          && findings.stream()
              .noneMatch(
                  finding ->
                      finding.rule() == Rule.WRONG_KIND && finding.severity() == Severity.ERROR);
    }
  }

  /** The first way to write it whose job names are no frame's names, too. */
  private Draft best() {
    var first = draft("");
    if (job.isPresent() || first.isApart()) {
      return first;
    }
    var marked = draft("_job");
    return marked.isApart() ? marked : first;
  }

  private Draft draft(String jobEnd) {
    return Draft.of(new ProposalText(title, columns, roles, job, jobEnd), title);
  }

  /**
   * Proposes a convention.
   *
   * @param title what the convention is called
   * @param frames names of frames, with their folders and endings or without; the first {@value
   *     NameColumns#MOST} are compared with each other, and all are read back
   * @param job the name of a job's folder, if there is one
   * @return empty if there is no name among the frames
   */
  public static Optional<Proposal> of(String title, List<String> frames, Optional<String> job) {
    var examples = frames.stream().map(String::strip).filter(name -> !name.isEmpty()).toList();
    var columns = NameColumns.of(examples);
    if (columns.columns().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Proposal(
            title.isBlank() ? "Our names" : title.strip(),
            examples,
            job.map(String::strip).filter(name -> !name.isEmpty()),
            columns,
            ProposedRoles.of(columns),
            Set.of()));
  }

  /**
   * The same with another role for one piece; what other piece had it becomes another field.
   *
   * @throws IllegalArgumentException if there is no such piece, or it cannot be that
   */
  public Proposal with(int piece, Role role) {
    if (!canBe(piece, role)) {
      throw new IllegalArgumentException("Piece " + piece + " is no " + role.word());
    }
    var others = new ArrayList<>(roles);
    if (role != Role.TEXT && role != Role.OTHER && role != Role.DATE) {
      others.replaceAll(other -> other == role ? Role.OTHER : other);
    }
    others.set(piece - 1, role);
    var now = new HashSet<>(said);
    now.add(piece);
    return new Proposal(title, examples, job, columns, List.copyOf(others), Set.copyOf(now));
  }

  /** Whether there is such a piece, and it can be that. */
  public boolean canBe(int piece, Role role) {
    return piece >= 1
        && piece <= roles.size()
        && ProposedRoles.possible(columns.columns().get(piece - 1)).contains(role);
  }

  /** The names of frames that it was proposed from, taken apart and read back. */
  public List<Example> examples() {
    return read;
  }

  /** The pieces of the names in order. */
  public List<Piece> pieces() {
    var pieces = new ArrayList<Piece>();
    for (int i = 0; i < roles.size(); i++) {
      var column = columns.columns().get(i);
      pieces.add(
          new Piece(
              i + 1,
              column.before(),
              List.copyOf(column.values()),
              column.optional(),
              roles.get(i),
              ProposedRoles.possible(column),
              said.contains(i + 1) ? Optional.empty() : ProposedRoles.question(columns, roles, i),
              draft.text().declaration(i)));
    }
    return pieces;
  }

  /** The convention's text. */
  public String yaml() {
    return draft.text().yaml();
  }

  /** What is so about it, as {@code check} finds it. */
  public List<Finding> findings() {
    return draft.findings();
  }

  /** The convention; empty where the text is none. */
  public Optional<Convention> convention() {
    return draft.convention();
  }

  /** What it does not read back as exactly one frame's name, or job's. */
  public List<Unread> unread() {
    return unread;
  }

  private Example example(String given) {
    var name = NameTokens.of(given).name();
    return new Example(given, name, columns.row(name), unread(given, name, Reserved.FRAME));
  }

  private Optional<Unread> unread(String given, String name, String kind) {
    if (convention().isEmpty()) {
      return unread(given, Text.of("there is no convention to read it by"), OptionalInt.empty());
    }
    return switch (convention().get().read(name, kind)) {
      case Reading.One one ->
          convention().get().build(kind, one.fields()) instanceof Built.Name built
                  && built.text().equals(name)
              ? Optional.empty()
              : unread(given, Text.of("it would be built in another way"), OptionalInt.empty());
      case Reading.Several _ ->
          unread(given, Text.of("it can be read in several ways"), OptionalInt.empty());
      case Reading.None none -> unread(given, none.said(), OptionalInt.of(none.position()));
    };
  }

  private static Optional<Unread> unread(String given, Text why, OptionalInt at) {
    return Optional.of(new Unread(given, why, at));
  }

  /**
   * Saves the convention's text under a name that nothing has yet.
   *
   * @return why it was not saved: something has the name already, and it is as it was
   * @throws IOException if it cannot be written
   */
  public Optional<Problem> save(Path file) throws IOException {
    try {
      DurableFiles.create(file, yaml().getBytes(StandardCharsets.UTF_8));
      return Optional.empty();
    } catch (FileAlreadyExistsException e) {
      return Optional.of(
          new Problem(
              "this file exists already",
              file.toString(),
              "Give another name; it is not replaced."));
    }
  }
}
