package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import javafx.scene.input.KeyCode;
import org.framewright.job.OtherJob;
import org.framewright.studio.Moves;
import org.framewright.studio.OverviewFollower.Heard;
import org.framewright.studio.SetupMove;
import org.framewright.ui.sets.InventedSets;
import org.framewright.ui.sets.SetsSource;
import org.framewright.ui.sets.SetupMoving;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of all sets on the real app, by keys and by mouse. */
@Tag("slow")
class SetsPageTest {
  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);
  private OpenApp app;

  private void openWhereTheStudioSays(Heard heard) throws Exception {
    openWhereTheStudioSays(heard, Optional.empty());
  }

  private void openWhereTheStudioSays(Heard heard, Optional<SetupMoving> moving) throws Exception {
    var source =
        new SetsSource() {
          @Override
          public Following follow(Consumer<Heard> listener) {
            listener.accept(heard);
            return () -> {};
          }

          @Override
          public Optional<SetupMoving> moving() {
            return moving;
          }
        };
    var settings = Files.createDirectories(folder.resolve("settings"));
    Files.writeString(
        settings.resolve("preferences.json"),
        "{\"safety.reminded\": \"" + LocalDate.now(clock) + "\"}");
    app = OpenApp.withSets(settings, clock, new Answers(folder), source);
    app.await(() -> app.exists("#field-day"));
  }

  @AfterEach
  void closeTheApp() throws Exception {
    app.close();
  }

  @Test
  void aSetIsFoundAndItsJobOpenedByKeysAloneAndByTwoClicks() throws Exception {
    var job = FreshJob.in(folder, clock);
    openWhereTheStudioSays(
        new Heard.Sets(
            InventedSets.of(clock.instant()),
            Map.of(InventedSets.id("2026-11-22_KVO_shoes"), job.folder())));
    try (var uncaught = new Uncaught()) {
      app.press(KeyCode.F5);
      app.awaitReading("#sets-summary", "9 sets, 7 need a person");
      app.await(() -> app.holdsTheKeys("#sets"));
      app.await(() -> app.readsAll(".sets-need").getFirst().equals("work stops or is lost"));
      app.press(KeyCode.SLASH);
      app.await(() -> app.holdsTheKeys("#sets-find"));
      app.type("coats");
      app.await(() -> app.readsAll(".sets-name").equals(List.of("2026-11-23_KVO_winter-coats")));
      app.press(KeyCode.ENTER);
      app.await(() -> app.reads("#status").startsWith("This computer has no folder of"));
      app.press(KeyCode.ESCAPE);
      app.await(() -> app.holdsTheKeys("#sets") && app.readsAll(".sets-name").size() > 3);
      app.press(KeyCode.SLASH);
      app.type("shoes");
      app.await(() -> app.readsAll(".sets-name").size() == 1);
      app.press(KeyCode.ENTER);
      app.await(() -> app.exists("#setups"));
      app.awaitReading(".job-title", job.name());

      app.press(KeyCode.SHIFT, KeyCode.F4);
      app.await(() -> app.exists("#sets"));
      app.robot().doubleClickOn(".sets-name");
      app.await(() -> app.exists("#setups"));
      uncaught.assertNone();
    }
  }

  /** Keeps what was asked for; each setup is answered at once. */
  private static final class Moved implements SetupMoving {
    private final List<String> said = new CopyOnWriteArrayList<>();

    @Override
    public List<Moves.ToShoot> toShoot(UUID set) {
      return IntStream.rangeClosed(1, 4000)
          .mapToObj(i -> new Moves.ToShoot("%04d".formatted(i), "Garment " + i))
          .toList();
    }

    @Override
    public List<SetupMove> move(OtherJob from, OtherJob to, List<String> codes) {
      said.add(from.name() + " to " + to.name() + ": " + String.join(" ", codes));
      return codes.stream()
          .map(
              code ->
                  new SetupMove(UUID.randomUUID(), from, to, code, "", Instant.EPOCH, List.of()))
          .toList();
    }
  }

  @Test
  void setupsAreMovedToAnotherSetByKeysAloneAndByMouse() throws Exception {
    var moved = new Moved();
    openWhereTheStudioSays(
        new Heard.Sets(InventedSets.of(clock.instant()), Map.of()), Optional.of(moved));
    try (var uncaught = new Uncaught()) {
      app.press(KeyCode.F5);
      app.await(() -> app.holdsTheKeys("#sets"));
      app.press(KeyCode.M);
      app.await(() -> app.holdsTheKeys("#move-setups"));
      app.press(KeyCode.DOWN);
      app.press(KeyCode.SHIFT, KeyCode.DOWN);
      app.press(KeyCode.ENTER); // No set is named yet.
      app.press(KeyCode.TAB);
      app.await(() -> app.holdsTheKeys("#move-to"));
      app.press(KeyCode.DOWN);
      app.press(KeyCode.ENTER);
      app.await(() -> moved.said.size() == 1);
      assertThat(moved.said.getFirst())
          .isEqualTo("2026-11-23_NOVA_evening to 2026-11-21_NOVA_lookbook: 0002 0003");
      app.await(() -> app.reads("#status").contains("has answered yet"));
      app.robot().rightClickOn(".sets-name");
      app.robot().clickOn("Have setups shot by another set");
      app.await(() -> app.exists("#move-setups"));
      app.robot().clickOn("#move-to");
      app.robot().clickOn(".combo-box-popup .list-cell");
      app.robot().clickOn("#dialog-confirm");
      app.await(() -> moved.said.size() == 2);
      assertThat(moved.said.getLast()).endsWith(" to 2026-11-21_NOVA_lookbook: 0001");
      uncaught.assertNone();
    }
  }

  @Test
  void aComputerWithoutAStoreReadsHowToJoin() throws Exception {
    openWhereTheStudioSays(new Heard.NoStore());
    app.robot().clickOn("#page-sets");
    app.await(
        () ->
            app.readsAll(".sets-command").stream()
                .anyMatch(line -> line.startsWith("framewright studio --store ")));
    assertThat(onInterface(() -> app.app().scene().lookup("#sets").isVisible())).isFalse();
  }
}
