package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import javafx.scene.input.KeyCode;
import org.framewright.job.Job;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The pages that belong to no job work as before once a second job was opened. */
@Tag("slow")
class AppPagesTest {
  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);
  private OpenApp app;

  @BeforeEach
  void openTwoJobsOneAfterTheOther() throws Exception {
    app =
        OpenApp.open(
            folder.resolve("settings"),
            clock,
            new Answers(folder, Path.of("templates/fashion-days.yaml")));
    app.openJob(FreshJob.in(Files.createDirectory(folder.resolve("first")), clock));
    app.openJob(FreshJob.in(Files.createDirectory(folder.resolve("second")), clock));
    // The list comes to the front after the pages are there.
    app.await(() -> app.exists("#setups"));
  }

  /** Turns to a page until it stays: a list that is still coming puts itself in front of it. */
  private void turnTo(String part, KeyCode... keys) throws Exception {
    for (int stays = 0; stays < 3; ) {
      if (onInterface(() -> app.exists(part))) {
        stays++;
      } else {
        stays = 0;
        app.press(keys);
      }
      Thread.sleep(200);
    }
  }

  @AfterEach
  void closeTheApp() throws Exception {
    app.close();
  }

  @Test
  void whatIsTypedOnTheConventionPageIsWhatIsSaved() throws Exception {
    turnTo("#verdict", KeyCode.SHIFT, KeyCode.F2);
    app.await(() -> app.reads("#verdict").startsWith("Proved sound"));
    app.press(OpenApp.TO_THE_END);
    app.type("oops");
    app.await(() -> app.reads("#verdict").contains("cannot be used yet"));
    app.press(KeyCode.ALT, KeyCode.S);
    app.await(() -> app.reads("#said").endsWith(".yaml is saved."));
    assertThat(folder.resolve("convention.yaml")).content().endsWith("oops");
  }

  @Test
  void theWindowDoesNotCloseOverAConventionThatIsNotSaved() throws Exception {
    turnTo("#verdict", KeyCode.SHIFT, KeyCode.F2);
    app.await(() -> app.reads("#verdict").startsWith("Proved sound"));
    app.type("# mine");
    app.press(KeyCode.F2);
    app.press(OpenApp.SHORTCUT, KeyCode.Q);
    app.awaitReading(".dialog-title", "The convention is not saved");
    app.press(KeyCode.ESCAPE);
    app.await(() -> app.holdsTheKeys("#convention-text"));
    assertThat(onInterface(app.app().stage()::isShowing)).isTrue();
    assertThat(app.reads("#convention-text")).startsWith("# mine");
  }

  @Test
  void aThirdJobCanBeStartedOnTheStartPage() throws Exception {
    turnTo("#field-day", KeyCode.F12);
    app.await(() -> app.exists("#field-day"));
    app.pressUntil(() -> app.holdsTheKeys("#field-day"), KeyCode.TAB);
    app.press(OpenApp.SHORTCUT, KeyCode.L);
    app.awaitReading("#convention", "Fashion over several days");
    app.press(OpenApp.SHORTCUT, KeyCode.P);
    app.await(() -> app.holdsTheKeys("#field-day") && app.exists("#field-client"));
    app.press(KeyCode.TAB);
    app.type("KVO");
    app.press(KeyCode.TAB);
    app.type("third");
    var name = LocalDate.now(clock) + "_KVO_third";
    app.awaitReading("#start", "Start " + name);
    app.press(OpenApp.SHORTCUT, KeyCode.ENTER);
    app.awaitReading(".job-title", name);
    assertThat(Job.open(folder.resolve(name), clock).name()).isEqualTo(name);
  }
}
