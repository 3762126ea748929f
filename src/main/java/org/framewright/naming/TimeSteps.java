package org.framewright.naming;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/** A kind's names as steps, in which the parts of a date and the counter stand by themselves. */
final class TimeSteps {
  /** One step of a name: a literal, a field that both names share, or a part of the time. */
  sealed interface Slot {
    record Same(String text) implements Slot {}

    record Shared(Dfa texts) implements Slot {}

    record Unit(DatePattern.Part part) implements Slot {}

    record Count(NumberShape shape) implements Slot {}
  }

  /**
   * A step and what may come after it.
   *
   * @param last whether the name may end here
   */
  record Placed(Slot slot, Chain.Leaf leaf, List<Integer> next, boolean last) {}

  private final Chain chain;
  private final List<Placed> slots = new ArrayList<>();
  private final List<Integer> firsts;
  private final boolean hasTime;
  private final boolean counterRestartsWithTime;

  TimeSteps(DeclaredKind kind) {
    this.chain = kind.chain();
    Optional<Declared> counter =
        kind.shows().values().stream()
            .map(Part.Show::field)
            .filter(field -> field.type() == FieldType.COUNTER)
            .findFirst();
    var dates = timeFields();
    this.hasTime = !dates.isEmpty() || counter.isPresent();
    this.counterRestartsWithTime =
        counter.isPresent() && counter.get().restarts().stream().anyMatch(dates::contains);
    this.firsts = place(dates);
  }

  /** Whether names show a date or a counter at all. */
  boolean hasTime() {
    return hasTime;
  }

  /** Whether the counter restarts on a date that names show. */
  boolean counterRestartsWithTime() {
    return counterRestartsWithTime;
  }

  /** The steps with which a name may begin. */
  List<Integer> firsts() {
    return firsts;
  }

  Placed at(int index) {
    return slots.get(index);
  }

  /** Whether a digit may come right after a step. */
  boolean digitMayFollow(Placed placed) {
    return placed.next.stream().anyMatch(next -> mayBeginWithDigit(slots.get(next)));
  }

  /** The date fields that make the order: each unit counts where it first shows. */
  private Set<String> timeFields() {
    var fields = new LinkedHashSet<String>();
    var units = EnumSet.noneOf(DatePattern.Unit.class);
    for (var leaf : chain.leaves()) {
      if (leaf.part() instanceof Part.Show(Declared field, DateShape shape)) {
        var own = EnumSet.noneOf(DatePattern.Unit.class);
        shape.parts().stream()
            .filter(part -> part.unit() != null)
            .forEach(part -> own.add(part.unit()));
        var both = EnumSet.copyOf(own);
        both.retainAll(units);
        if (both.isEmpty()) {
          units.addAll(own);
          fields.add(field.name());
        }
      }
    }
    return fields;
  }

  private List<Integer> place(Set<String> dates) {
    var start = new ArrayList<Integer>();
    var expanded = new ArrayList<List<Slot>>();
    int count = 0;
    for (var leaf : chain.leaves()) {
      List<Slot> own = expand(leaf, dates);
      start.add(count);
      count += own.size();
      expanded.add(own);
    }
    for (int i = 0; i < expanded.size(); i++) {
      var leaf = chain.leaves().get(i);
      var own = expanded.get(i);
      for (int k = 0; k < own.size(); k++) {
        boolean end = k == own.size() - 1;
        slots.add(
            new Placed(
                own.get(k),
                leaf,
                end ? leaf.next().stream().map(start::get).toList() : List.of(slots.size() + 1),
                end && leaf.last()));
      }
    }
    return chain.firsts().stream().map(start::get).toList();
  }

  private static List<Slot> expand(Chain.Leaf leaf, Set<String> dates) {
    return switch (leaf.part()) {
      case Part.Text(String text) -> List.of(new Slot.Same(text));
      case Part.Show(Declared field, DateShape shape) when dates.contains(field.name()) ->
          shape.parts().stream()
              .map(
                  part -> part.unit() == null ? new Slot.Same(part.literal()) : new Slot.Unit(part))
              .map(Slot.class::cast)
              .toList();
      case Part.Show(Declared field, NumberShape shape) when field.type() == FieldType.COUNTER ->
          List.of(new Slot.Count(shape));
      case Part.Show show -> List.of(new Slot.Shared(leaf.texts()));
      case Part.Run run -> throw new IllegalStateException("a run is no leaf");
    };
  }

  private static boolean mayBeginWithDigit(Placed placed) {
    return switch (placed.slot) {
      case Slot.Same(String text) -> Character.isDigit(text.charAt(0));
      case Slot.Shared(Dfa texts) ->
          IntStream.rangeClosed('0', '9').anyMatch(c -> texts.step(0, (char) c) >= 0);
      case Slot.Unit(DatePattern.Part part) ->
          part.unit() != DatePattern.Unit.MONTH || part.letters() < 3;
      case Slot.Count count -> true;
    };
  }
}
