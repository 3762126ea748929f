package org.framewright.handoff;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * What would be handed off; nothing has been written.
 *
 * @param chosenBy how they were chosen, such as {@code rated 4 or higher}
 * @param selects those that can go, by name, and the slates that go along
 * @param withheld those that cannot, and why
 * @param before the names of chosen selects that went before, whether they go again or not, with
 *     the number of the last hand-off that had them
 */
public record HandOffPlan(
    String chosenBy,
    List<Select> selects,
    List<Withheld> withheld,
    SortedMap<String, Integer> before) {
  public HandOffPlan {
    selects = List.copyOf(selects);
    withheld = List.copyOf(withheld);
    before = Collections.unmodifiableSortedMap(new TreeMap<>(before));
  }

  /** One of selects that never went before. */
  HandOffPlan(String chosenBy, List<Select> selects, List<Withheld> withheld) {
    this(chosenBy, selects, withheld, new TreeMap<>(Map.of()));
  }

  /** How many of them are slates. */
  public int slates() {
    return (int) selects.stream().filter(Select::slate).count();
  }

  /** How many of them are no slates. */
  public int pictures() {
    return selects.size() - slates();
  }

  /** The number of files that would be copied. */
  public int files() {
    return selects.stream().mapToInt(select -> select.files().size()).sum();
  }

  /** Their size in bytes. */
  public long bytes() {
    return selects.stream().mapToLong(Select::bytes).sum();
  }

  /** How many of them went before. */
  public long again() {
    return selects.stream().filter(select -> before.containsKey(select.name())).count();
  }

  /** How many were chosen and stay, because they went before. */
  public long left() {
    return before.size() - again();
  }

  /**
   * The same selects in parts, in their order, none with more bytes of pictures than that; a select
   * that alone has more is a part by itself. What is withheld is said of the first part.
   *
   * @param most in bytes, from 1
   */
  public List<HandOffPlan> parts(long most) {
    var parts = new ArrayList<HandOffPlan>();
    var part = new ArrayList<Select>();
    long bytes = 0;
    for (var select : selects) {
      if (!part.isEmpty() && bytes + select.bytes() > most) {
        parts.add(part(part, parts.isEmpty()));
        part.clear();
        bytes = 0;
      }
      part.add(select);
      bytes += select.bytes();
    }
    parts.add(part(part, parts.isEmpty()));
    return List.copyOf(parts);
  }

  /** The selects of several parts in one, in the order of the parts. */
  static HandOffPlan joined(List<HandOffPlan> parts) {
    return new HandOffPlan(
        parts.isEmpty() ? "" : parts.getFirst().chosenBy(),
        parts.stream().flatMap(part -> part.selects().stream()).toList(),
        List.of());
  }

  private HandOffPlan part(List<Select> some, boolean isFirst) {
    var names = some.stream().map(Select::name).collect(Collectors.toSet());
    var again = new TreeMap<>(before);
    again.keySet().retainAll(names);
    return new HandOffPlan(chosenBy, some, isFirst ? withheld : List.of(), again);
  }
}
