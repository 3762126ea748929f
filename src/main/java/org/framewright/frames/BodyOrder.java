package org.framewright.frames;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;
import org.framewright.base.Text;

/**
 * The order in which one body took its frames. Clocks are set back, and bursts are faster than
 * clocks that count seconds; numbers go round after 9999, and begin anew when a card is changed or
 * somebody resets them. So each is read in the light of the other:
 *
 * <p>Walking by time, a number that comes again begins an epoch. Within an epoch, numbers at most
 * {@link #NEAR} apart, also from 9999 to 0001, make a chain. In a chain the number says the order,
 * and chains stand in the order of the times of their first frames. A chain from 0001 on whose end
 * is earlier than its begin is two, since numbers began anew: in it the time says the order. A
 * frame without a number comes before the first one with a later time.
 *
 * <p>The result depends on nothing but the frames. How near is near is judgement, no source.
 */
final class BodyOrder {
  private static final int NEAR = 50;
  private static final Duration BACK = Duration.ofSeconds(2);

  /**
   * A frame to be put in its place.
   *
   * @param number of the camera, where the frame's name has one
   * @param time by the body's clock; {@link Instant#MAX} where none is known
   * @param name without ending
   */
  record Shot(Frame frame, OptionalInt number, Instant time, String name) {
    boolean isTimed() {
      return !time.equals(Instant.MAX);
    }
  }

  static final Comparator<Shot> BY_TIME =
      Comparator.comparing(Shot::time)
          .thenComparing(Shot::name, NaturalOrder.INSTANCE)
          .thenComparing(shot -> shot.frame().id().value());

  private final List<Shot> ordered = new ArrayList<>();
  private boolean setBack;
  private boolean beganAnew;

  private BodyOrder() {}

  /** Frames that have neither a number nor a time have no place and are left out. */
  static BodyOrder of(List<Shot> shots) {
    var order = new BodyOrder();
    var numbered =
        shots.stream().filter(shot -> shot.number().isPresent()).sorted(BY_TIME).toList();
    var others =
        shots.stream()
            .filter(shot -> shot.number().isEmpty() && shot.isTimed())
            .sorted(BY_TIME)
            .toList();
    order.merge(order.epochs(numbered), others);
    return order;
  }

  List<Shot> shots() {
    return ordered;
  }

  /** What the order had to decide that a person should know; {@code body} is its name. */
  List<Text> remarks(String body) {
    var remarks = new ArrayList<Text>();
    if (setBack) {
      remarks.add(
          Text.of(
              "the clock of {0} was set back; its frames stand in the order of their numbers",
              body));
    }
    if (beganAnew) {
      remarks.add(
          Text.of(
              "the numbers of {0} began anew; its frames stand in the order of their times", body));
    }
    return remarks;
  }

  private List<Shot> epochs(List<Shot> numbered) {
    var all = new ArrayList<Shot>(numbered.size());
    var epoch = new ArrayList<Shot>();
    var seen = new HashSet<Integer>();
    for (var shot : numbered) {
      if (!seen.add(shot.number().getAsInt())) {
        all.addAll(chains(epoch));
        epoch.clear();
        seen.clear();
        seen.add(shot.number().getAsInt());
      }
      epoch.add(shot);
    }
    all.addAll(chains(epoch));
    return all;
  }

  private List<Shot> chains(List<Shot> epoch) {
    if (epoch.isEmpty()) {
      return List.of();
    }
    var round = new ArrayList<>(epoch);
    round.sort(Comparator.comparingInt(BodyOrder::number));
    int begin = begin(round, epoch.getFirst());
    var chains = new ArrayList<List<Shot>>();
    for (int i = 0; i < round.size(); i++) {
      var shot = round.get((begin + i) % round.size());
      if (i == 0 || gap(round, (begin + i) % round.size()) > NEAR) {
        chains.add(new ArrayList<>());
      }
      chains.getLast().add(shot);
    }
    chains.sort(Comparator.comparing(List::getFirst, BY_TIME));
    var ordered = new ArrayList<Shot>(round.size());
    chains.forEach(chain -> ordered.addAll(judged(chain)));
    return ordered;
  }

  /** Where a chain begins; numbers all the way round have no gap and begin with the earliest. */
  private static int begin(List<Shot> round, Shot earliest) {
    for (int i = 0; i < round.size(); i++) {
      if (gap(round, i) > NEAR) {
        return i;
      }
    }
    return round.indexOf(earliest);
  }

  /** How far a number is from the one before it on the circle. */
  private static int gap(List<Shot> round, int place) {
    return place > 0
        ? number(round.get(place)) - number(round.get(place - 1))
        : number(round.getFirst()) + CameraNumber.LAST - number(round.getLast());
  }

  private static int number(Shot shot) {
    return shot.number().orElseThrow();
  }

  private List<Shot> judged(List<Shot> chain) {
    var timed = chain.stream().filter(Shot::isTimed).toList();
    if (timed.size() < 2) {
      return chain;
    }
    if (number(chain.getFirst()) == 1
        && chain.getFirst().isTimed()
        && timed.getLast().time().isBefore(chain.getFirst().time())) {
      beganAnew = true;
      return chain.stream().sorted(BY_TIME).toList();
    }
    for (int i = 1; i < timed.size(); i++) {
      if (timed.get(i).time().plus(BACK).isBefore(timed.get(i - 1).time())) {
        setBack = true;
      }
    }
    return chain;
  }

  private void merge(List<Shot> numbered, List<Shot> others) {
    int next = 0;
    for (var shot : numbered) {
      while (next < others.size()
          && shot.isTimed()
          && others.get(next).time().isBefore(shot.time())) {
        ordered.add(others.get(next++));
      }
      ordered.add(shot);
    }
    ordered.addAll(others.subList(next, others.size()));
  }
}
