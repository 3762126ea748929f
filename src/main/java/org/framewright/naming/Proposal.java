package org.framewright.naming;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.framewright.naming.NameColumns.Column;

/**
 * A convention proposed from names that a studio already uses: what their pieces are taken for, the
 * convention's text, and the proof, every example read back by it. Immutable; {@link #with} gives
 * another for what a person says that a piece is.
 */
public final class Proposal {
  /** What a piece of a frame's name is taken for. */
  public enum Role {
    DATE,
    CLIENT,
    TITLE,
    SETUP,
    VIEW,
    COUNTER,
    VERSION,
    /** Text that is always the same. */
    TEXT,
    /** A field that the program gives no meaning. */
    OTHER;

    /** The word for it, such as {@code setup}. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * A piece of the names.
   *
   * @param number counted from 1
   * @param values its text in the examples, each once
   * @param optional whether some examples do not have it
   * @param field its declaration, such as {@code setup: {type: number, digits: 3}}; empty for text
   */
  public record Piece(
      int number, List<String> values, boolean optional, Role role, Optional<String> field) {}

  /** An example that the convention does not read as meant, and why. */
  public record Unread(String example, String why) {}

  private final String title;
  private final List<String> examples;
  private final Optional<String> job;
  private final NameColumns columns;
  private final List<Role> roles;
  private final Draft draft;
  private final List<Unread> unread;

  private Proposal(
      String title,
      List<String> examples,
      Optional<String> job,
      NameColumns columns,
      List<Role> roles) {
    this.title = title;
    this.examples = examples;
    this.job = job;
    this.columns = columns;
    this.roles = roles;
    this.draft = best();
    this.unread = findUnread();
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
   *     NameColumns#MOST} are looked at
   * @param job the name of a job's folder, if there is one
   * @throws IllegalArgumentException if there is no name among the frames
   */
  public static Proposal of(String title, List<String> frames, Optional<String> job) {
    var examples = frames.stream().map(String::strip).filter(name -> !name.isEmpty()).toList();
    var columns = NameColumns.of(examples);
    if (columns.columns().isEmpty()) {
      throw new IllegalArgumentException("There is no name of a frame");
    }
    return new Proposal(
        title.isBlank() ? "Our names" : title.strip(),
        examples,
        job.map(String::strip).filter(name -> !name.isEmpty()),
        columns,
        Roles.of(columns));
  }

  /**
   * The same with another role for one piece; what other piece had it becomes another field.
   *
   * @throws IllegalArgumentException if there is no such piece
   */
  public Proposal with(int piece, Role role) {
    if (piece < 1 || piece > roles.size()) {
      throw new IllegalArgumentException("There is no piece " + piece);
    }
    var others = new ArrayList<>(roles);
    if (role != Role.TEXT && role != Role.OTHER && role != Role.DATE) {
      others.replaceAll(other -> other == role ? Role.OTHER : other);
    }
    others.set(piece - 1, role);
    return new Proposal(title, examples, job, columns, List.copyOf(others));
  }

  /** The names of frames that it was proposed from. */
  public List<String> examples() {
    return examples;
  }

  /** The pieces of the names in order. */
  public List<Piece> pieces() {
    var pieces = new ArrayList<Piece>();
    for (int i = 0; i < roles.size(); i++) {
      var column = columns.columns().get(i);
      pieces.add(
          new Piece(
              i + 1,
              List.copyOf(column.values()),
              column.optional(),
              roles.get(i),
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

  /** The examples that it does not read back as exactly one frame's name, or job's. */
  public List<Unread> unread() {
    return unread;
  }

  private List<Unread> findUnread() {
    var found = new ArrayList<Unread>();
    for (var example : examples) {
      unread(example, Reserved.FRAME).ifPresent(found::add);
    }
    job.flatMap(name -> unread(name, Reserved.JOB)).ifPresent(found::add);
    return List.copyOf(found);
  }

  private Optional<Unread> unread(String example, String kind) {
    if (convention().isEmpty()) {
      return Optional.of(new Unread(example, "there is no convention to read it by"));
    }
    var name =
        kind.equals(Reserved.JOB) ? NameTokens.folder(example) : NameTokens.of(example).name();
    return switch (convention().get().read(name, kind)) {
      case Reading.One one ->
          convention().get().build(kind, one.fields()) instanceof Built.Name built
                  && built.text().equals(name)
              ? Optional.empty()
              : Optional.of(new Unread(example, "it would be built in another way"));
      case Reading.Several _ -> Optional.of(new Unread(example, "it can be read in several ways"));
      case Reading.None none -> Optional.of(new Unread(example, none.message()));
    };
  }

  /** Which piece is what, as far as the texts say it. */
  private static final class Roles {
    private static final int CODE = 6;

    private final NameColumns names;
    private final Role[] roles;

    private Roles(NameColumns names) {
      this.names = names;
      this.roles = new Role[names.columns().size()];
    }

    static List<Role> of(NameColumns names) {
      var roles = new Roles(names);
      roles.dates();
      roles.numbers();
      roles.letters();
      return List.of(roles.roles);
    }

    private Column column(int i) {
      return names.columns().get(i);
    }

    private boolean isConstant(int i) {
      return column(i).isConstant();
    }

    private boolean has(Role role) {
      return List.of(roles).contains(role);
    }

    private void dates() {
      boolean any = names.columns().stream().anyMatch(ProposalText::isDate);
      for (int i = 0; i < roles.length; i++) {
        roles[i] = Role.OTHER;
        boolean short6 = !any && i == 0 && ProposalText.isShortDate(column(i));
        if (ProposalText.isDate(column(i)) || short6) {
          roles[i] = Role.DATE;
        }
      }
    }

    private void numbers() {
      var numbers = new ArrayList<Integer>();
      for (int i = 0; i < roles.length; i++) {
        if (column(i).kind() == NameTokens.Kind.DIGITS && roles[i] == Role.OTHER) {
          numbers.add(i);
        }
      }
      if (numbers.size() > 1 && isVersion(numbers.getLast())) {
        roles[numbers.removeLast()] = Role.VERSION;
      }
      if (!numbers.isEmpty()) {
        int last = numbers.removeLast();
        // Where numbers before it change and this one does not, it may still be what counts.
        roles[last] = Role.COUNTER;
      }
      numbers.stream()
          .filter(i -> ProposalText.isGtin(column(i)))
          .findFirst()
          .or(() -> numbers.isEmpty() ? Optional.empty() : Optional.of(numbers.getLast()))
          .ifPresent(i -> roles[i] = Role.SETUP);
    }

    private boolean isVersion(int i) {
      return i == roles.length - 1
          && i > 0
          && isConstant(i - 1)
          && column(i).before().isEmpty()
          && column(i - 1).values().iterator().next().equalsIgnoreCase("v");
    }

    private void letters() {
      for (int i = 0; i < roles.length; i++) {
        if (roles[i] != Role.OTHER || column(i).kind() == NameTokens.Kind.DIGITS) {
          continue;
        }
        var values = column(i).values();
        boolean isShort = values.stream().allMatch(value -> value.length() <= 3);
        if (isConstant(i)) {
          roles[i] = constant(i);
        } else if (!has(Role.VIEW)
            && values.size() <= 12
            && (isShort || column(i).optional())
            && isBehindSetup(i)) {
          roles[i] = Role.VIEW;
        } else if (!has(Role.SETUP) && isLikelySetup(i)) {
          roles[i] = Role.SETUP;
        } else {
          roles[i] = titleOr(Role.OTHER);
        }
      }
    }

    /** Text that all examples share: one job's client, or part of every name there will be. */
    private Role constant(int i) {
      var text = column(i).values().iterator().next();
      boolean joined =
          i + 1 < roles.length
              && column(i + 1).before().isEmpty()
              && column(i + 1).kind() == NameTokens.Kind.DIGITS;
      boolean counted = !has(Role.DATE) && !has(Role.SETUP);
      if (i == roles.length - 1 || counted || (joined && text.length() < 3)) {
        return Role.TEXT;
      }
      if (has(Role.SETUP) && List.of(roles).indexOf(Role.SETUP) < i && text.length() < 3) {
        return has(Role.VIEW) ? Role.TEXT : Role.VIEW;
      }
      return !has(Role.CLIENT) && isCode(i) ? Role.CLIENT : titleOr(Role.TEXT);
    }

    private Role titleOr(Role other) {
      return has(Role.TITLE) ? other : Role.TITLE;
    }

    private boolean isCode(int i) {
      return column(i).values().stream()
          .allMatch(
              value -> value.length() <= CODE && value.equals(value.toUpperCase(Locale.ROOT)));
    }

    private boolean isBehindSetup(int i) {
      if (has(Role.SETUP)) {
        return List.of(roles).indexOf(Role.SETUP) < i;
      }
      return column(i).optional() || i > 1;
    }

    /** Text that changes with the counter's runs: more than one name has each of it. */
    private boolean isLikelySetup(int i) {
      return column(i).values().size() > 1 && !column(i).optional();
    }
  }
}
