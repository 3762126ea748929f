package org.framewright.naming;

import dk.brics.automaton.Automaton;
import dk.brics.automaton.BasicAutomata;
import dk.brics.automaton.BasicOperations;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.framewright.base.Text;

/** Names that a place does not take, or takes badly. */
final class Ban {
  private static final Ban CONTROL =
      new Ban(
          Severity.ERROR,
          Text.of("has a control character"),
          Text.of("Take it out."),
          () -> containing(IntStream.concat(IntStream.range(0, 32), IntStream.range(127, 160))));

  /** UTS #39 and UTR #36, from memory: characters that nobody sees. */
  private static final Ban INVISIBLE =
      new Ban(
          Severity.ERROR,
          Text.of("has an invisible character"),
          Text.of("Take it out."),
          () ->
              containing(
                  IntStream.concat(
                      IntStream.concat(
                          IntStream.rangeClosed(0x200B, 0x200F),
                          IntStream.rangeClosed(0x202A, 0x202E)),
                      IntStream.concat(
                          IntStream.rangeClosed(0x2060, 0x2069), IntStream.of(0xFEFF)))));

  private static final Ban WINDOWS_CHARACTER =
      new Ban(
          Severity.ERROR,
          Text.of("has one of < > : \" \\ | ? *"),
          Text.of("Use another character."),
          () -> containing("<>:\"\\|?*".chars()));

  private static final Ban LAST_DOT_OR_SPACE =
      new Ban(
          Severity.ERROR,
          Text.of("ends with a dot or a space"),
          Text.of("End with a letter or digit."),
          () -> within().concatenate(BasicAutomata.makeCharSet(". ")));

  private static final Ban DEVICE =
      new Ban(
          Severity.ERROR,
          Text.of("is reserved for a device"),
          Text.of("Put text before it."),
          () -> device().concatenate(character('.').concatenate(within()).optional()));

  private static final Ban HIDDEN =
      new Ban(
          Severity.WARNING,
          Text.of("begins with a dot and so is hidden"),
          Text.of("Begin with a letter or digit."),
          () -> character('.').concatenate(within()));

  private static final Ban OPTION =
      new Ban(
          Severity.WARNING,
          Text.of("begins with a hyphen, which programs take for an option"),
          Text.of("Begin with a letter or digit."),
          () -> character('-').concatenate(within()));

  private static final Ban NOT_POSIX =
      new Ban(
          Severity.ERROR,
          Text.of("has a character outside A-Z a-z 0-9 . _ -"),
          Text.of("Use only those."),
          () -> outside("._-"));

  private static final Ban POSIX_HYPHEN =
      new Ban(
          Severity.ERROR,
          Text.of("begins with a hyphen"),
          Text.of("Begin with a letter or digit."),
          () -> character('-').concatenate(within()));

  private static final Ban NOT_FOR_RECEIVERS =
      new Ban(
          Severity.ERROR,
          Text.of("has a character outside A-Z a-z 0-9 - _"),
          Text.of("Use only those."),
          () -> outside("_-"));

  private final Severity severity;
  private final Text what;
  private final Text remedy;
  private final Supplier<Automaton> name;
  private Dfa names;

  private Ban(Severity severity, Text what, Text remedy, Supplier<Automaton> name) {
    this.severity = severity;
    this.what = what;
    this.remedy = remedy;
    this.name = name;
  }

  static List<Ban> at(Target target) {
    return switch (target) {
      case WINDOWS -> List.of(CONTROL, INVISIBLE, WINDOWS_CHARACTER, LAST_DOT_OR_SPACE, DEVICE);
      case MACOS, LINUX -> List.of(CONTROL, INVISIBLE, HIDDEN, OPTION);
      case CLOUD ->
          List.of(CONTROL, INVISIBLE, WINDOWS_CHARACTER, LAST_DOT_OR_SPACE, DEVICE, HIDDEN, OPTION);
      case POSIX -> List.of(CONTROL, INVISIBLE, NOT_POSIX, POSIX_HYPHEN);
      case RECEIVERS -> List.of(CONTROL, INVISIBLE, NOT_FOR_RECEIVERS);
    };
  }

  Severity severity() {
    return severity;
  }

  Text what() {
    return what;
  }

  Text remedy() {
    return remedy;
  }

  /** The paths of which some component is such a name; worked out when it is first asked for. */
  synchronized Dfa names() {
    if (names == null) {
      names = Dfa.of(component(name.get()));
    }
    return names;
  }

  private static Automaton component(Automaton name) {
    var any = BasicAutomata.makeAnyString();
    var slash = character('/');
    return BasicOperations.concatenate(
        List.of(any.concatenate(slash).optional(), name, slash.concatenate(any).optional()));
  }

  /** Any characters of one component. */
  private static Automaton within() {
    return BasicAutomata.makeCharRange(Character.MIN_VALUE, '.')
        .union(BasicAutomata.makeCharRange('0', Character.MAX_VALUE))
        .repeat();
  }

  private static Automaton containing(IntStream characters) {
    return containing(
        BasicAutomata.makeCharSet(
            characters.mapToObj(Character::toString).collect(Collectors.joining())));
  }

  private static Automaton containing(Automaton character) {
    return within().concatenate(character).concatenate(within());
  }

  /** With another character than ASCII letters, digits and these. */
  private static Automaton outside(String others) {
    var allowed =
        BasicOperations.union(
            List.of(
                BasicAutomata.makeCharRange('A', 'Z'),
                BasicAutomata.makeCharRange('a', 'z'),
                BasicAutomata.makeCharRange('0', '9'),
                BasicAutomata.makeCharSet(others + '/')));
    return containing(BasicAutomata.makeAnyChar().minus(allowed));
  }

  private static Automaton device() {
    var numbered =
        caseless("COM")
            .union(caseless("LPT"))
            .concatenate(BasicAutomata.makeCharSet("123456789¹²³"));
    return BasicOperations.union(
        List.of(caseless("CON"), caseless("PRN"), caseless("AUX"), caseless("NUL"), numbered));
  }

  private static Automaton caseless(String capitals) {
    return BasicOperations.concatenate(
        capitals
            .chars()
            .mapToObj(c -> BasicAutomata.makeCharSet("" + (char) c + (char) (c | 0x20)))
            .toList());
  }

  private static Automaton character(char c) {
    return BasicAutomata.makeChar(c);
  }
}
