package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import javafx.scene.input.KeyCode;
import org.framewright.studio.OverviewFollower.Heard;
import org.framewright.ui.sets.InventedSets;
import org.framewright.ui.sets.SetsSource;
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
    SetsSource source =
        listener -> {
          listener.accept(heard);
          return () -> {};
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
