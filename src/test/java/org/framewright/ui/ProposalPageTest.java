package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;
import static org.testfx.util.WaitForAsyncUtils.waitForFxEvents;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import javafx.scene.control.ComboBox;
import javafx.scene.control.TextArea;
import javafx.scene.input.KeyCode;
import org.framewright.job.Job;
import org.framewright.naming.Proposal.Role;
import org.framewright.ui.page.FileChoosers;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From names in use to a job by the convention that was proposed from them, on the real app. */
@Tag("slow")
class ProposalPageTest {
  private static final String NAMES =
      "20260301_KVO_001_F_0001\n20260301_KVO_001_0002\n20260301_KVO_002_B_0001";

  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);
  private OpenApp app;

  private void open(FileChoosers choosers) throws Exception {
    app = OpenApp.open(folder.resolve("settings"), clock, choosers);
    app.await(() -> app.exists("#field-day"));
  }

  @AfterEach
  void closeTheApp() throws Exception {
    app.close();
  }

  @Test
  void aJobIsStartedByKeysWithTheConventionOfItsStudio() throws Exception {
    open(new Answers(folder));
    app.press(OpenApp.SHORTCUT, KeyCode.N);
    app.await(() -> app.holdsTheKeys("#example-names"));
    app.type(NAMES);
    app.awaitReading("#proof", "3 of 3 names are read back as they are.");
    assertThat(app.reads("#piece-question")).startsWith("KVO: It is the same in all of them");
    app.pressUntil(() -> app.holdsTheKeys("#answer-client"), KeyCode.TAB);
    app.press(KeyCode.SPACE);
    app.await(() -> app.reads("#piece-question").isEmpty());
    app.press(OpenApp.SHORTCUT, KeyCode.P);
    app.await(() -> app.holdsTheKeys("#piece-1"));
    app.press(OpenApp.SHORTCUT, KeyCode.S);
    app.await(() -> app.reads("#proposal-said").contains("our-names.yaml is saved"));
    app.pressUntil(() -> app.holdsTheKeys("#use-proposal"), KeyCode.TAB);
    app.press(KeyCode.SPACE);
    app.awaitReading("#convention", "Our names");
    app.press(OpenApp.SHORTCUT, KeyCode.P);
    app.await(() -> app.exists("#field-client") && app.exists("#field-title"));
    app.pressUntil(() -> app.holdsTheKeys("#field-client"), KeyCode.TAB);
    app.type("KVO");
    app.press(KeyCode.TAB);
    app.type("spring");
    var name = LocalDate.now(clock).toString().replace("-", "") + "_KVO_spring";
    app.awaitReading("#start", "Start " + name);
    app.press(OpenApp.SHORTCUT, KeyCode.ENTER);
    app.awaitReading(".job-title", name);
    assertThat(Job.open(folder.resolve(name), clock).convention().title()).isEqualTo("Our names");
  }

  @Test
  void theMouseGivesAPieceAnotherMeaningAndAFileThatIsThereStays() throws Exception {
    open(new Answers(folder));
    var mine = Files.writeString(folder.resolve("our-names.yaml"), "mine");
    app.robot().clickOn("#from-names");
    app.await(() -> app.holdsTheKeys("#example-names"));
    paste(NAMES + "\nnotes on the day");
    app.awaitReading("#proof", "3 of 4 names are read back as they are.");
    app.robot().clickOn("#piece-2");
    app.robot().clickOn("title: what the job is called");
    waitForFxEvents();
    app.await(() -> onInterface(this::secondPiece) == Role.TITLE);
    app.robot().clickOn("#only-unread");
    app.await(() -> app.readsAll("#examples .why").stream().anyMatch(why -> !why.isEmpty()));
    app.robot().clickOn("#save-proposal");
    app.await(() -> app.reads("#proposal-said").contains("Give another name"));
    assertThat(mine).hasContent("mine");
  }

  @Test
  void aPasteOfAMegabyteIsCutAndThePageGoesOn() throws Exception {
    open(new Answers(folder));
    try (var uncaught = new Uncaught()) {
      app.robot().clickOn("#page-proposal");
      app.await(() -> app.exists("#example-names"));
      paste(
          ("\u0645\u0631\u062d\u0628\u0627_\u6f22\u5b57_0001 " + "z".repeat(80) + "\n")
              .repeat(10_000));
      app.await(() -> app.reads("#proof").endsWith("names are read back as they are."));
      assertThat(app.reads("#example-names").length()).isLessThanOrEqualTo(100_000);
      uncaught.assertNone();
    }
  }

  private void paste(String names) throws Exception {
    onInterface(
        () -> {
          if (app.app().scene().getRoot().lookup("#example-names") instanceof TextArea area) {
            area.insertText(0, names);
          }
          return names;
        });
  }

  private Role secondPiece() {
    return app.app().scene().getRoot().lookup("#piece-2") instanceof ComboBox<?> menu
            && menu.getValue() instanceof Role role
        ? role
        : null;
  }
}
