package org.framewright.day;

import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/**
 * How long setups of one kind took.
 *
 * @param kind as the list says it, in small letters
 * @param shot how many were shot
 * @param mean the mean working time of one; none where none was shot
 * @param left how many are left
 */
public record KindPace(String kind, int shot, Optional<Duration> mean, int left) {
  private static final class Sum {
    private int shot;
    private Duration time = Duration.ZERO;
    private int left;
  }

  static List<KindPace> of(List<Workload.Shot> shot, List<Workload.Item> left) {
    var sums = new TreeMap<String, Sum>();
    for (var one : shot) {
      one.item()
          .kind()
          .map(kind -> sums.computeIfAbsent(kind, _ -> new Sum()))
          .ifPresent(
              sum -> {
                sum.shot++;
                sum.time = sum.time.plus(one.time());
              });
    }
    for (var one : left) {
      one.kind()
          .map(kind -> sums.computeIfAbsent(kind, _ -> new Sum()))
          .ifPresent(sum -> sum.left++);
    }
    return sums.entrySet().stream()
        .map(entry -> of(entry.getKey(), entry.getValue()))
        .sorted(Comparator.comparingInt(KindPace::left).reversed())
        .toList();
  }

  private static KindPace of(String kind, Sum sum) {
    return new KindPace(
        kind,
        sum.shot,
        sum.shot == 0 ? Optional.empty() : Optional.of(sum.time.dividedBy(sum.shot)),
        sum.left);
  }
}
