package org.framewright.ui.copies;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.framewright.copies.MountedCards;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CardWatchTest {
  @TempDir Path temp;
  private CardScene scene;
  private CardWatch watch;

  @BeforeEach
  void makeScene() throws Exception {
    scene = new CardScene(temp);
    watch = CardWatch.of(scene.job, scene.disks(), Runnable::run);
    watch.look();
  }

  private Optional<String> offered() {
    return watch.offered().get().map(MountedCards.Card::name);
  }

  @Test
  void aCardIsOfferedFromWhenItIsPutInUntilItIsPulledOut() {
    assertThat(offered()).isEmpty();
    scene.mounted.add(scene.card);
    watch.look();
    assertThat(offered()).contains("A1");
    watch.look();
    assertThat(offered()).contains("A1");
    scene.mounted.clear();
    watch.look();
    assertThat(offered()).isEmpty();
    assertThat(scene.volumes.read()).as("nothing is read before somebody asks").isEmpty();
  }

  @Test
  void oneThatWasPutAwayIsOfferedAgainWhenItIsPutInAgain() throws Exception {
    scene.mounted.add(scene.card);
    watch.look();
    watch.putAway();
    assertThat(offered()).isEmpty();
    watch.look();
    assertThat(offered()).isEmpty();
    scene.volumes.again(scene.card);
    watch.look();
    assertThat(offered()).contains("A1");
  }

  @Test
  void ofTwoCardsTheSecondIsOfferedOnceTheFirstIsPutAway() throws Exception {
    var second = temp.toRealPath().resolve("B1");
    scene.shoot(second, 1);
    scene.mounted.add(scene.card);
    scene.mounted.add(second);
    watch.look();
    assertThat(offered()).contains("A1");
    watch.putAway();
    assertThat(offered()).contains("B1");
  }

  @Test
  void aSystemThatDoesNotSayOffersNothing() {
    var silent =
        new CardWatch(
            () -> {
              throw new IOException("no such file");
            },
            new AtomicBoolean(),
            Runnable::run);
    silent.look();
    assertThat(silent.offered().get()).isEmpty();
  }

  @Test
  void afterTheJobIsClosedNothingIsOffered() {
    scene.mounted.add(scene.card);
    watch.close();
    watch.look();
    assertThat(offered()).isEmpty();
  }

  @Test
  void theInterfaceIsWokenUpOnlyWhereThereIsAnotherCard() {
    var woken = new AtomicInteger();
    Executor ui =
        task -> {
          woken.incrementAndGet();
          task.run();
        };
    var watching = CardWatch.of(scene.job, scene.disks(), ui);
    watching.look();
    watching.look();
    assertThat(woken.get()).isZero();
    scene.mounted.add(scene.card);
    watching.look();
    watching.look();
    assertThat(woken.get()).isEqualTo(1);
  }
}
