package org.framewright.ui.day;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Optional;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.day.LookLine.Group;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DayModelTest {
  @TempDir private Path folder;

  private static Figure figure(DayModel model, String id) {
    return model.shown().get().orElseThrow().figures().stream()
        .filter(one -> one.id().equals(id))
        .findFirst()
        .orElseThrow();
  }

  private static LookLine line(DayModel model, String what) {
    return model.lines().stream()
        .filter(one -> one.what().contains(what))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void theFiguresAreThoseOfTheDay() throws Exception {
    try (var scene = DayScene.inTheMiddle(folder)) {
      var model = scene.model();
      assertThat(model.shown().get()).isEmpty();
      model.follow();
      assertThat(scene.now()).hasToString("2026-11-23T11:50:00Z");
      assertThat(figure(model, "shot").number()).isEqualTo("3 of 5");
      assertThat(figure(model, "shot").below()).isEqualTo("1 signed off");
      // 30, 40 and 50 minutes: 40 on average.
      assertThat(figure(model, "pace").below()).isEqualTo("40 min on average");
      assertThat(figure(model, "finish").below())
          .isEqualTo("too few setups were shot to tell how far that may be off");
      // From ten to twelve until six, without the hour at one: 5 h 10 min.
      assertThat(figure(model, "time").number()).isEqualTo("5 h 10 min");
      assertThat(figure(model, "time").below()).isEqualTo("until 18:00, 2 h 35 min for each of 2");
      assertThat(figure(model, "space").below()).startsWith("room for about ");
      var shown = model.shown().get().orElseThrow();
      assertThat(shown.hours().orElseThrow().finished()).hasSize(3);
      assertThat(shown.onSet().orElseThrow().bars())
          .extracting(bar -> bar.time().toMinutes())
          .containsExactly(30L, 40L, 50L);
      assertThat(shown.said())
          .contains("The computer runs on its battery: 64 %, about 2 h 10 min at the present draw");
      assertThat(scene.troubles).isEmpty();
    }
  }

  @Test
  void beforeTheFirstFrameAndWithoutAListItSaysSoAndInventsNothing() throws Exception {
    try (var scene = DayScene.fresh(folder, "Wool coat", "Silk blouse")) {
      var model = scene.model();
      model.follow();
      assertThat(figure(model, "shot").number()).isEqualTo("0 of 2");
      assertThat(figure(model, "pace").below()).isEqualTo("too early to tell");
      assertThat(figure(model, "finish").below()).isEqualTo("too early to tell");
      assertThat(figure(model, "space").below()).isEqualTo("no frame yet to judge by");
      assertThat(model.shown().get().orElseThrow().onSet()).isEmpty();
      assertThat(model.lines()).isEmpty();
    }
    try (var scene = DayScene.fresh(Files.createDirectory(folder.resolve("second")))) {
      var model = scene.model();
      model.follow();
      assertThat(model.shown().get().orElseThrow().noList()).isTrue();
      assertThat(model.shown().get().orElseThrow().hours()).isEmpty();
      assertThat(model.shown().get().orElseThrow().figures()).hasSize(1);
    }
  }

  @Test
  void whatSomebodyHasToDoComesFirstEachWithItsWay() throws Exception {
    try (var scene = DayScene.inTheMiddle(folder)) {
      scene.mark("002", SetupState.PICKUP, Optional.of("creased"));
      scene.mark("005", SetupState.DROPPED, Optional.of("sold out"));
      var model = scene.model();
      model.follow();
      assertThat(model.lines().getFirst())
          .isEqualTo(
              new LookLine(
                  "needs 002 is to be shot again: creased",
                  Group.NEEDS,
                  "002 is to be shot again: creased",
                  "معطف صوفي طويل",
                  Optional.of(new Way.OnTheList("002")),
                  false));
      assertThat(line(model, "005 was dropped").group()).isEqualTo(Group.JUDGE);
      assertThat(line(model, "never compared").way()).contains(new Way.Copies());
      assertThat(line(model, "Each of the 6 frames belongs").way()).isEmpty();
      assertThat(model.lines()).extracting(LookLine::group).isSorted();
      assertThat(figure(model, "shot").number()).isEqualTo("2 of 4");
      assertThat(figure(model, "shot").below()).isEqualTo("1 signed off, 1 pickup");
    }
  }

  @Test
  void aTickIsForWhatWasSeenAndGoesOnToTheNext() throws Exception {
    try (var scene = DayScene.inTheMiddle(folder)) {
      scene.mark("002", SetupState.PICKUP, Optional.of("creased"));
      scene.mark("005", SetupState.DROPPED, Optional.of("sold out"));
      var model = scene.model();
      model.follow();
      model.turnLooked();
      assertThat(model.lookedAt()).as("nothing is chosen").isZero();
      model.chosen().set(Optional.of(model.lines().getFirst()));
      model.turnLooked();
      assertThat(model.lookedAt()).isEqualTo(1);
      assertThat(model.left(Group.NEEDS)).isZero();
      assertThat(model.chosen().get()).contains(model.lines().get(1));
      // What is read anew keeps its tick, and the keys their line.
      scene.session.look();
      model.follow();
      assertThat(line(model, "002").looked()).isTrue();
      assertThat(model.chosen().get()).contains(model.lines().get(1));
      scene.mark("002", SetupState.PICKUP, Optional.of("creased and torn"));
      assertThat(line(model, "002").looked()).as("another reason is another matter").isFalse();
      model.turnLooked(line(model, "005"));
      model.turnLooked(line(model, "005"));
      assertThat(model.lookedAt()).isZero();
    }
  }

  @Test
  void aPageThatNobodyLooksAtReadsNothing() throws Exception {
    try (var scene = DayScene.inTheMiddle(folder)) {
      var model = scene.model();
      model.follow();
      model.pause();
      scene.mark("004", SetupState.SHOT, Optional.empty());
      scene.clock.pass(Duration.ofMinutes(5));
      model.look();
      assertThat(figure(model, "shot").number()).isEqualTo("3 of 5");
      model.follow();
      assertThat(figure(model, "shot").number()).isEqualTo("4 of 5");
      model.look();
      scene.clock.pass(Duration.ofMinutes(10));
      model.look();
      assertThat(figure(model, "time").number()).isEqualTo("4 h 55 min");
    }
  }

  @Test
  void itIsReadAgainOnceAMinuteHasPassedOrTheClockWasSetBack() throws Exception {
    try (var scene = DayScene.inTheMiddle(folder)) {
      var queue = new ArrayDeque<Runnable>();
      var model = scene.model(new Tasks(queue::add, Runnable::run));
      model.follow();
      queue.remove().run();
      scene.clock.pass(Duration.ofSeconds(59));
      model.look();
      assertThat(queue).isEmpty();
      scene.clock.pass(Duration.ofSeconds(1));
      model.look();
      assertThat(queue).hasSize(1);
      queue.remove().run();
      scene.clock.pass(Duration.ofHours(-1));
      model.look();
      assertThat(queue).hasSize(1);
    }
  }

  @Test
  void ofManyChangesOnlyTheLastIsRead() throws Exception {
    try (var scene = DayScene.inTheMiddle(folder)) {
      var queue = new ArrayDeque<Runnable>();
      var model = scene.model(new Tasks(queue::add, Runnable::run));
      model.follow();
      for (var state : SetupState.values()) {
        scene.mark("004", state, Optional.empty());
      }
      assertThat(queue).hasSize(1);
      queue.remove().run();
      assertThat(queue).hasSize(1);
      queue.remove().run();
      assertThat(queue).isEmpty();
      assertThat(figure(model, "shot").number()).isEqualTo("3 of 4");
    }
  }

  @Test
  void aFolderThatIsGoneLeavesWhatWasReadAndSaysThatItIsOld() throws Exception {
    try (var scene = DayScene.inTheMiddle(folder)) {
      var model = scene.model();
      model.follow();
      var away = folder.resolve("away");
      Files.move(scene.job().folder(), away);
      model.follow();
      assertThat(model.past().get()).isTrue();
      assertThat(figure(model, "shot").number()).isEqualTo("3 of 5");
      Files.move(away, scene.job().folder());
      model.follow();
      assertThat(model.past().get()).isFalse();
      assertThat(scene.troubles).isEmpty();
    }
  }
}
