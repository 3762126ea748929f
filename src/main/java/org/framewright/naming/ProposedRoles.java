package org.framewright.naming;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.framewright.base.Text;
import org.framewright.naming.NameColumns.Column;
import org.framewright.naming.Proposal.Role;

/** Which piece is what, as far as the texts say it. */
final class ProposedRoles {
  private static final int CODE = 6;

  /** A choice of more is no choice. */
  private static final int MOST_VIEWS = 60;

  private final NameColumns names;
  private final Role[] roles;

  private ProposedRoles(NameColumns names) {
    this.names = names;
    this.roles = new Role[names.columns().size()];
  }

  static List<Role> of(NameColumns names) {
    var roles = new ProposedRoles(names);
    roles.dates();
    roles.numbers();
    roles.letters();
    return List.of(roles.roles);
  }

  /** What a piece can be. */
  static List<Role> possible(Column column) {
    boolean number = column.kind() == NameTokens.Kind.DIGITS;
    return Arrays.stream(Role.values())
        .filter(
            role ->
                switch (role) {
                  case DATE -> ProposalText.isDate(column) || ProposalText.isShortDate(column);
                  case COUNTER, VERSION -> number;
                  case VIEW -> column.values().size() <= MOST_VIEWS;
                  case TEXT -> column.isConstant();
                  case CLIENT, TITLE, SETUP, OTHER -> true;
                })
        .toList();
  }

  /** What the names do not show of a piece, so that a person has to say it. */
  static Optional<Text> question(NameColumns names, List<Role> roles, int i) {
    var column = names.columns().get(i);
    var role = roles.get(i);
    if (ProposalText.isDate(column)) {
      return Optional.empty();
    }
    boolean number = column.kind() == NameTokens.Kind.DIGITS;
    if (number && role == Role.DATE) {
      return Optional.of(
          Text.of("Six digits that can be a year, a month and a day: is it a date?"));
    }
    if (names.rows().size() == 1) {
      return Optional.empty(); // Of one name nothing is known to stay or to change.
    }
    if (number) {
      return switch (role) {
        case COUNTER ->
            column.isConstant()
                ? Optional.of(Text.of("It is the same in all of them: does it count the frames?"))
                : Optional.empty();
        case OTHER -> Optional.of(Text.of("It is a number of its own: what does it stand for?"));
        default -> Optional.empty();
      };
    }
    if (column.isConstant()) {
      return Optional.of(
          Text.of(
              "It is the same in all of them: does it change with the job, or is it part of every"
                  + " name?"));
    }
    boolean guessed = role == Role.SETUP || role == Role.TITLE || role == Role.OTHER;
    return guessed
        ? Optional.of(
            Text.of("It changes from name to name: does it say the setup, or something else?"))
        : Optional.empty();
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
        .allMatch(value -> value.length() <= CODE && value.equals(value.toUpperCase(Locale.ROOT)));
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
