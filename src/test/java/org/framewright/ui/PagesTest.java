package org.framewright.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import javafx.scene.input.KeyCode;
import org.framewright.job.Job;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The pages around the list, on the real app. */
class PagesTest {
  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);
  private OpenApp app;

  @BeforeEach
  void openTheApp() throws Exception {
    app =
        OpenApp.open(
            folder.resolve("settings"),
            clock,
            new Answers(folder, Path.of("templates/fashion-days.yaml")));
  }

  @AfterEach
  void closeTheApp() throws Exception {
    app.close();
  }

  @Test
  void aConventionTakenFromAFileLeavesTheKeysInTheForm() throws Exception {
    app.await(() -> app.exists("#field-day"));
    app.pressUntil(() -> app.holdsTheKeys("#field-day"), KeyCode.TAB);
    app.press(KeyCode.CONTROL, KeyCode.L);
    app.awaitReading("#convention", "Fashion over several days");
    app.press(KeyCode.CONTROL, KeyCode.P);
    app.await(() -> app.holdsTheKeys("#field-day") && app.exists("#field-client"));
    app.press(KeyCode.TAB);
    app.type("KVO");
    app.press(KeyCode.TAB);
    app.type("look book");
    var name = LocalDate.now(clock) + "_KVO_look-book";
    app.awaitReading("#start", "Start " + name);
    app.press(KeyCode.CONTROL, KeyCode.ENTER);
    app.awaitReading(".job-title", name);
    assertThat(Job.open(folder.resolve(name), clock).convention().title())
        .isEqualTo("Fashion over several days");
  }
}
