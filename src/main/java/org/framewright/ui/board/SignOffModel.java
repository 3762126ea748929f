package org.framewright.ui.board;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.beans.value.ObservableBooleanValue;
import org.framewright.base.NameKey;
import org.framewright.job.SetupStatus;

/**
 * Who agrees: one of those who agreed before in this job, or somebody whose name is typed. A name
 * has letters and is nobody's computer.
 */
final class SignOffModel {
  /** So many names stand there to be chosen, the last who agreed first. */
  static final int MOST_NAMES = 4;

  private final List<String> names;
  private final Set<String> computers;
  private final StringProperty typed = new SimpleStringProperty("");
  private final ReadOnlyIntegerWrapper chosen = new ReadOnlyIntegerWrapper(-1);

  /**
   * @param names those who agreed before, the last first
   * @param computers names that are of computers, whatever their case
   */
  SignOffModel(List<String> names, Set<String> computers) {
    this.names = List.copyOf(names);
    this.computers = new HashSet<>(computers.stream().map(SignOffModel::key).toList());
    chosen.set(names.isEmpty() ? -1 : 0);
    typed.addListener((_, _, now) -> chosen.set(now.isBlank() && !names.isEmpty() ? 0 : -1));
  }

  /** Those who agreed to any setup of a job and still do, the last first, each once. */
  static List<String> before(Stream<SetupStatus> setups) {
    return setups
        .filter(status -> status.signedOffBy().isPresent() && status.signedOffAt().isPresent())
        .sorted(
            Comparator.comparing((SetupStatus status) -> status.signedOffAt().orElseThrow())
                .reversed())
        .map(status -> status.signedOffBy().orElseThrow())
        .filter(once())
        .limit(MOST_NAMES)
        .toList();
  }

  private static Predicate<String> once() {
    var seen = new HashSet<String>();
    return name -> seen.add(key(name));
  }

  private static String key(String name) {
    return NameKey.of(name.strip()).toLowerCase(Locale.ROOT);
  }

  /** The names to choose among. */
  List<String> names() {
    return names;
  }

  /** Another name. */
  StringProperty typed() {
    return typed;
  }

  /** Which of the names is chosen; -1 while another is typed. */
  ReadOnlyIntegerProperty chosen() {
    return chosen.getReadOnlyProperty();
  }

  /** Chooses one of the names; what was typed goes. */
  void choose(int place) {
    if (place >= 0 && place < names.size()) {
      typed.set("");
      chosen.set(place);
    }
  }

  /** Chooses the name a number of places further down, within the names. */
  void step(int by) {
    if (!names.isEmpty()) {
      choose(Math.clamp((long) chosen.get() + by, 0, names.size() - 1));
    }
  }

  /** Who agrees, if that is a person's name. */
  Optional<String> name() {
    var name = chosen.get() >= 0 ? names.get(chosen.get()) : typed.get().strip();
    return Optional.of(name).filter(one -> hasLetters(one) && !isComputer(one));
  }

  /** Whether what is typed is no name for want of letters. */
  boolean lacksLetters() {
    return chosen.get() < 0 && !typed.get().isBlank() && !hasLetters(typed.get());
  }

  /** Whether what is typed is the name of a computer. */
  boolean isComputer() {
    return chosen.get() < 0 && isComputer(typed.get());
  }

  private boolean isComputer(String name) {
    return computers.contains(key(name));
  }

  private static boolean hasLetters(String name) {
    return name.codePoints().anyMatch(Character::isLetter);
  }

  /** Whether it is known who agrees. */
  ObservableBooleanValue ready() {
    return Bindings.createBooleanBinding(() -> name().isPresent(), typed, chosen);
  }
}
