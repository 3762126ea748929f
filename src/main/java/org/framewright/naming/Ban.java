package org.framewright.naming;

import dk.brics.automaton.Automaton;
import dk.brics.automaton.BasicAutomata;
import dk.brics.automaton.BasicOperations;
import dk.brics.automaton.RegExp;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.framewright.base.Text;

/** Names that a place does not take, or takes badly. */
record Ban(Severity severity, Text what, Text remedy, Dfa names) {
  private static final Map<Target, List<Ban>> BY_TARGET = new EnumMap<>(Target.class);

  static {
    for (var target : Target.values()) {
      BY_TARGET.put(target, of(target));
    }
  }

  static List<Ban> at(Target target) {
    return BY_TARGET.get(target);
  }

  private static List<Ban> of(Target target) {
    var made = new ArrayList<Ban>();
    made.add(
        ban(
            Severity.ERROR,
            Text.of("has a control character"),
            Text.of("Take it out."),
            containing(IntStream.concat(IntStream.range(0, 32), IntStream.range(127, 160)))));
    // UTS #39 and UTR #36, from memory: characters that nobody sees.
    made.add(
        ban(
            Severity.ERROR,
            Text.of("has an invisible character"),
            Text.of("Take it out."),
            containing(
                IntStream.concat(
                    IntStream.concat(
                        IntStream.rangeClosed(0x200B, 0x200F),
                        IntStream.rangeClosed(0x202A, 0x202E)),
                    IntStream.concat(
                        IntStream.rangeClosed(0x2060, 0x2069), IntStream.of(0xFEFF))))));
    switch (target) {
      case WINDOWS -> windows(made);
      case MACOS, LINUX -> unix(made);
      case CLOUD -> {
        windows(made);
        unix(made);
      }
      case POSIX -> {
        made.add(
            ban(
                Severity.ERROR,
                Text.of("has a character outside A-Z a-z 0-9 . _ -"),
                Text.of("Use only those."),
                () -> outside("[A-Za-z0-9._\\-]")));
        made.add(
            ban(
                Severity.ERROR,
                Text.of("begins with a hyphen"),
                Text.of("Begin with a letter or digit."),
                () -> regular("\\-(.|\n)*")));
      }
      case RECEIVERS ->
          made.add(
              ban(
                  Severity.ERROR,
                  Text.of("has a character outside A-Z a-z 0-9 - _"),
                  Text.of("Use only those."),
                  () -> outside("[A-Za-z0-9_\\-]")));
    }
    return List.copyOf(made);
  }

  private static void windows(List<Ban> bans) {
    bans.add(
        ban(
            Severity.ERROR,
            Text.of("has one of < > : \" \\ | ? *"),
            Text.of("Use another character."),
            containing("<>:\"\\|?*".chars())));
    bans.add(
        ban(
            Severity.ERROR,
            Text.of("ends with a dot or a space"),
            Text.of("End with a letter or digit."),
            () -> regular("(.|\n)*[. ]")));
    bans.add(
        ban(
            Severity.ERROR,
            Text.of("is reserved for a device"),
            Text.of("Put text before it."),
            () ->
                regular(
                    "([Cc][Oo][Nn]|[Pp][Rr][Nn]|[Aa][Uu][Xx]|[Nn][Uu][Ll]|"
                        + "([Cc][Oo][Mm]|[Ll][Pp][Tt])[1-9\u00B9\u00B2\u00B3])(\\.(.|\n)*)?")));
  }

  private static void unix(List<Ban> bans) {
    bans.add(
        ban(
            Severity.WARNING,
            Text.of("begins with a dot and so is hidden"),
            Text.of("Begin with a letter or digit."),
            () -> regular("\\.(.|\n)*")));
    bans.add(
        ban(
            Severity.WARNING,
            Text.of("begins with a hyphen, which programs take for an option"),
            Text.of("Begin with a letter or digit."),
            () -> regular("\\-(.|\n)*")));
  }

  private static Ban ban(Severity severity, Text what, Text remedy, Supplier<Automaton> names) {
    return new Ban(severity, what, remedy, Dfa.of(component(names.get())));
  }

  private static Automaton regular(String expression) {
    return new RegExp(expression, RegExp.NONE).toAutomaton();
  }

  private static Automaton outside(String characters) {
    return regular(characters + "*").complement();
  }

  private static Supplier<Automaton> containing(IntStream characters) {
    var set = characters.mapToObj(c -> String.valueOf((char) c)).collect(Collectors.joining());
    return () -> any().concatenate(BasicAutomata.makeCharSet(set)).concatenate(any());
  }

  private static Automaton any() {
    return BasicAutomata.makeAnyString();
  }

  /** A path of which some component is such a name. */
  private static Automaton component(Automaton name) {
    var slash = BasicAutomata.makeChar('/');
    var withoutSlash = name.minus(any().concatenate(slash).concatenate(any()));
    return BasicOperations.concatenate(
        List.of(
            any().concatenate(slash).optional(),
            withoutSlash,
            slash.concatenate(any()).optional()));
  }
}
