package org.framewright.ui.task;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;
import org.framewright.live.Latest;
import org.junit.jupiter.api.Test;

class TasksTest {
  private final Queue<Runnable> background = new ArrayDeque<>();
  private final Queue<Runnable> ui = new ArrayDeque<>();
  private final Tasks tasks = new Tasks(background::add, ui::add);
  private final ArrayList<Object> said = new ArrayList<>();

  private static void drain(Queue<Runnable> queue) {
    while (!queue.isEmpty()) {
      queue.remove().run();
    }
  }

  @Test
  void handsTheResultOverOnTheInterfaceAndNotBefore() {
    var running = tasks.run("count", _ -> 42, said::add, said::add);
    drain(background);
    assertThat(said).isEmpty();
    assertThat(tasks.running()).containsExactly(running);
    drain(ui);
    assertThat(said).containsExactly(42);
    assertThat(tasks.running()).isEmpty();
    assertThat(running.finished().get()).isTrue();
  }

  @Test
  void handsAFailureOverAsItIs() {
    var failure = new IOException("the drive is gone");
    tasks.run(
        "read",
        _ -> {
          throw failure;
        },
        said::add,
        said::add);
    drain(background);
    drain(ui);
    assertThat(said).containsExactly(failure);
  }

  @Test
  void handsAnErrorOverTooAndListsTheWorkNoLonger() {
    var error = new StackOverflowError();
    var running =
        tasks.run(
            "read",
            _ -> {
              throw error;
            },
            said::add,
            said::add);
    drain(background);
    drain(ui);
    assertThat(said).containsExactly(error);
    assertThat(tasks.running()).isEmpty();
    assertThat(running.finished().get()).isTrue();
  }

  @Test
  void progressIsAFractionAndTheNewestOnly() {
    var running =
        tasks.run(
            "copy",
            steps -> {
              for (var i = 0; i <= 300; i++) {
                steps.step(i, 400);
              }
              return "done";
            },
            said::add,
            said::add);
    drain(background);
    assertThat(ui).as("one refresh of the progress and one outcome").hasSize(2);
    ui.remove().run();
    assertThat(running.progress().get()).isEqualTo(0.75);
  }

  @Test
  void workThatWaitsForSomethingIsListedAtOnceAndBegunWhenThatComes() {
    var what = new CompletableFuture<Integer>();
    var running = tasks.run("read", what, (number, _) -> number + 1, said::add, said::add);
    assertThat(tasks.running()).containsExactly(running);
    assertThat(background).isEmpty();
    what.complete(41);
    drain(background);
    drain(ui);
    assertThat(said).containsExactly(42);
    assertThat(tasks.running()).isEmpty();
  }

  @Test
  void workThatWaitsForSomethingThatFailsHasFailed() {
    var what = new CompletableFuture<Integer>();
    var running = tasks.run("read", what, (number, _) -> number + 1, said::add, said::add);
    var error = new StackOverflowError();
    what.completeExceptionally(error);
    drain(background);
    drain(ui);
    assertThat(said).containsExactly(error);
    assertThat(tasks.running()).isEmpty();
    assertThat(running.finished().get()).isTrue();
  }

  @Test
  void workThatNoThreadTakesHasFailed() {
    var error = new OutOfMemoryError("unable to create native thread");
    var full =
        new Tasks(
            _ -> {
              throw error;
            },
            ui::add);
    var running = full.run("read", _ -> "", said::add, said::add);
    full.quietly(() -> "", said::add, said::add);
    drain(ui);
    assertThat(said).containsExactly(error, error);
    assertThat(full.running()).isEmpty();
    assertThat(running.finished().get()).isTrue();
  }

  @Test
  void workOfUnknownSizeHasNoFraction() {
    var running =
        tasks.run(
            "look",
            steps -> {
              steps.step(5, 0);
              return "";
            },
            said::add,
            said::add);
    drain(background);
    drain(ui);
    assertThat(running.progress().get()).isNegative();
  }

  @Test
  void workHearsACancelBetweenItsSteps() {
    var running = tasks.run("rename", Steps::cancelled, said::add, said::add);
    running.cancel();
    drain(background);
    drain(ui);
    assertThat(said).containsExactly(true);
  }

  @Test
  void aBurstOfNewsWaitsInOneRefreshWithTheNewest() {
    var latest = new Latest<Integer>(ui::add, said::add);
    for (var i = 0; i < 1000; i++) {
      latest.offer(i);
    }
    assertThat(ui).hasSize(1);
    drain(ui);
    latest.offer(1000);
    drain(ui);
    assertThat(said).containsExactly(999, 1000);
  }
}
