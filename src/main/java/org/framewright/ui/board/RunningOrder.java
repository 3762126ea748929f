package org.framewright.ui.board;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.framewright.ui.session.Step;
import org.framewright.ui.session.Steps;

/**
 * The running order as people change it. An order that was asked for counts at once: the next move
 * may come before it is written.
 */
final class RunningOrder {
  private final Steps steps;
  private final Consumer<Step> taken;
  private final Consumer<Throwable> failed;

  /** Asked for and not on the disk yet; empty for none. */
  private List<String> asked = List.of();

  /**
   * @param taken hears of moves that are kept
   * @param failed hears of moves that could not be kept
   */
  RunningOrder(Steps steps, Consumer<Step> taken, Consumer<Throwable> failed) {
    this.steps = steps;
    this.taken = taken;
    this.failed = failed;
  }

  private List<String> of(List<SetupRow> rows) {
    return asked.isEmpty() ? rows.stream().map(SetupRow::code).toList() : asked;
  }

  /** Some codes in the order of now. */
  List<String> among(List<SetupRow> rows, List<String> codes) {
    return of(rows).stream().filter(new HashSet<>(codes)::contains).toList();
  }

  /** What stands so many places from a code among others. */
  Optional<String> neighbour(String code, int by, List<String> among) {
    var at = among.indexOf(code);
    var to = at + by;
    return at >= 0 && to >= 0 && to < among.size() ? Optional.of(among.get(to)) : Optional.empty();
  }

  /** Puts a code right before another, or right behind it; says whether both are there. */
  boolean moveBeside(List<SetupRow> rows, String code, String beside, boolean behind) {
    var before = of(rows);
    var codes = new ArrayList<>(before);
    if (code.equals(beside) || !codes.contains(beside) || !codes.remove(code)) {
      return false;
    }
    codes.add(codes.indexOf(beside) + (behind ? 1 : 0), code);
    if (!codes.equals(before)) {
      ask(codes, code);
    }
    return true;
  }

  /** Puts a code right behind another, or first. */
  void bringBehind(List<SetupRow> rows, String code, Optional<String> other) {
    var codes = new ArrayList<>(of(rows));
    if (codes.remove(code)) {
      codes.add(other.map(set -> codes.indexOf(set) + 1).orElse(0), code);
      ask(codes, code);
    }
  }

  private void ask(List<String> codes, String moved) {
    var order = List.copyOf(codes);
    var step = new Step.Moved(order, moved);
    Runnable settled = () -> asked = asked.equals(order) ? List.of() : asked;
    asked = order;
    steps.take(
        step,
        () -> {
          settled.run();
          taken.accept(step);
        },
        failure -> {
          settled.run();
          failed.accept(failure);
        });
  }
}
