package org.framewright.ui.task;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class NewestTest {
  private final ArrayDeque<Runnable> background = new ArrayDeque<>();
  private final List<String> worked = new ArrayList<>();
  private final List<String> shown = new ArrayList<>();
  private final List<String> failures = new ArrayList<>();
  private final Newest<String, String> newest =
      new Newest<>(
          new Tasks(background::add, Runnable::run),
          input -> {
            worked.add(input);
            if (input.isEmpty()) {
              throw new IOException("nothing to work on");
            }
            return input.toUpperCase(Locale.ROOT);
          },
          shown::add,
          failure -> failures.add(failure.getMessage()));

  private void letGo() {
    while (!background.isEmpty()) {
      background.poll().run();
    }
  }

  @Test
  void worksOnTheFirstAtOnceAndThenOnlyOnTheLast() {
    newest.offer("a");
    newest.offer("b");
    newest.offer("c");
    newest.offer("d");
    letGo();
    assertThat(worked).containsExactly("a", "d");
    assertThat(shown).containsExactly("A", "D");
  }

  @Test
  void neverHasMoreThanOnePieceOfWorkQueued() {
    for (var i = 0; i < 100; i++) {
      newest.offer("input " + i);
    }
    assertThat(background).hasSize(1);
  }

  @Test
  void goesOnAfterAFailure() {
    newest.offer("");
    newest.offer("b");
    letGo();
    assertThat(failures).containsExactly("nothing to work on");
    assertThat(shown).containsExactly("B");
  }

  @Test
  void forgetsWhatWaitsWhenCleared() {
    newest.offer("a");
    newest.offer("b");
    newest.clear();
    letGo();
    assertThat(worked).containsExactly("a");
  }
}
