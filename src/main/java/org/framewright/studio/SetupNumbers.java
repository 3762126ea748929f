package org.framewright.studio;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What became of setups on one day or on several, as they stand now.
 *
 * @param planned how many were to be shot; nothing where the list does not say for which day
 * @param done how many came to be shot, and still are, or are signed off
 * @param signedOff how many were signed off, and still are
 * @param pickups how many were marked to be shot again, and still are
 * @param dropped how many were dropped, and still are
 * @param onSet the working time of each that is done, as far as it is known
 * @param waits the working time from the tick that each was shot to its sign-off, as far as both
 *     were ticked
 */
public record SetupNumbers(
    OptionalInt planned,
    int done,
    int signedOff,
    int pickups,
    int dropped,
    List<Duration> onSet,
    List<Duration> waits) {
  /** Nothing. */
  public static final SetupNumbers NONE =
      new SetupNumbers(OptionalInt.empty(), 0, 0, 0, 0, List.of(), List.of());

  public SetupNumbers {
    onSet = List.copyOf(onSet);
    waits = List.copyOf(waits);
  }

  static SetupNumbers ofPlanned(int setups) {
    return new SetupNumbers(OptionalInt.of(setups), 0, 0, 0, 0, List.of(), List.of());
  }

  static SetupNumbers ofDone(Optional<Duration> onSet) {
    return new SetupNumbers(OptionalInt.empty(), 1, 0, 0, 0, onSet.stream().toList(), List.of());
  }

  static SetupNumbers ofSignedOff(Optional<Duration> wait) {
    return new SetupNumbers(OptionalInt.empty(), 0, 1, 0, 0, List.of(), wait.stream().toList());
  }

  static SetupNumbers ofPickup() {
    return new SetupNumbers(OptionalInt.empty(), 0, 0, 1, 0, List.of(), List.of());
  }

  static SetupNumbers ofDropped() {
    return new SetupNumbers(OptionalInt.empty(), 0, 0, 0, 1, List.of(), List.of());
  }

  /** Both together. */
  SetupNumbers plus(SetupNumbers other) {
    return sum(List.of(this, other));
  }

  static SetupNumbers sum(List<SetupNumbers> all) {
    return new SetupNumbers(
        all.stream().map(SetupNumbers::planned).reduce(OptionalInt.empty(), SetupNumbers::sum),
        all.stream().mapToInt(SetupNumbers::done).sum(),
        all.stream().mapToInt(SetupNumbers::signedOff).sum(),
        all.stream().mapToInt(SetupNumbers::pickups).sum(),
        all.stream().mapToInt(SetupNumbers::dropped).sum(),
        all.stream().flatMap(one -> one.onSet().stream()).toList(),
        all.stream().flatMap(one -> one.waits().stream()).toList());
  }

  static OptionalInt sum(OptionalInt one, OptionalInt other) {
    return one.isEmpty() && other.isEmpty()
        ? OptionalInt.empty()
        : OptionalInt.of(one.orElse(0) + other.orElse(0));
  }

  /** The median of the times on set; nothing where none is known. */
  public Optional<Duration> medianOnSet() {
    return median(onSet);
  }

  /** The median of the waits for a sign-off; nothing where none is known. */
  public Optional<Duration> medianWait() {
    return median(waits);
  }

  /** Of an even number of times, the middle between the two in the middle. */
  private static Optional<Duration> median(List<Duration> times) {
    if (times.isEmpty()) {
      return Optional.empty();
    }
    var sorted = times.stream().sorted().toList();
    int middle = sorted.size() / 2;
    return Optional.of(
        sorted.size() % 2 == 1
            ? sorted.get(middle)
            : sorted.get(middle - 1).plus(sorted.get(middle)).dividedBy(2));
  }
}
