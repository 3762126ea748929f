package org.framewright.ui.task;

import static org.framewright.AssertThat.assertThat;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class RepeatingTest {
  private final LinkedBlockingQueue<Runnable> ui = new LinkedBlockingQueue<>();
  private final List<String> done = new ArrayList<>();
  private final Repeating repeating =
      new Repeating(Duration.ofMillis(1), ui::add, () -> done.add("shown"));

  @AfterEach
  void stop() {
    repeating.stop();
  }

  private Runnable next() throws InterruptedException {
    var next = ui.poll(20, TimeUnit.SECONDS);
    assertThat(next).isNotNull();
    return next;
  }

  @Test
  void doesItAgainAndAgain() throws Exception {
    repeating.start();
    for (int i = 0; i < 3; i++) {
      next().run();
    }
    assertThat(done).hasSize(3);
  }

  @Test
  void neverHasMoreThanOneWaiting() throws Exception {
    repeating.start();
    repeating.start();
    var first = next();
    assertThat(ui.poll(50, TimeUnit.MILLISECONDS)).isNull();
    first.run();
    next().run();
  }

  @Test
  void goesOnWhenItFailedOnce() throws Exception {
    var failing =
        new Repeating(
            Duration.ofMillis(1),
            ui::add,
            () -> {
              done.add("tried");
              throw new IllegalStateException();
            });
    failing.start();
    for (int i = 0; i < 2; i++) {
      try {
        next().run();
      } catch (IllegalStateException e) {
        done.add("failed");
      }
    }
    failing.stop();
    assertThat(done).containsExactly("tried", "failed", "tried", "failed");
  }

  @Test
  void doesNothingOnceItIsStoppedEvenWhereSomethingWaited() throws Exception {
    repeating.start();
    var waiting = next();
    repeating.stop();
    repeating.start();
    waiting.run();
    assertThat(done).isEmpty();
    next().run();
    assertThat(done).hasSize(1);
  }

  @Test
  void sleepsForAsLongAsItIsToldEachTime() throws Exception {
    var pauses = new ArrayDeque<>(List.of(Duration.ofMillis(1), Duration.ofHours(1)));
    var told = new Repeating(pauses::remove, ui::add, () -> done.add("shown"));
    told.start();
    next().run();
    assertThat(ui.poll(50, TimeUnit.MILLISECONDS)).isNull();
    pauses.add(Duration.ofMillis(1));
    pauses.add(Duration.ofHours(1));
    told.again();
    next().run();
    told.stop();
    told.again();
    assertThat(done).hasSize(2);
    assertThat(pauses).isEmpty();
  }
}
