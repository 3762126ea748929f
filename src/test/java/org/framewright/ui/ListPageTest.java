package org.framewright.ui;

import static org.assertj.core.api.Assertions.assertThat;
import static org.testfx.util.WaitForAsyncUtils.waitForFxEvents;

import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.concurrent.Callable;
import javafx.application.Platform;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import org.framewright.job.Job;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

/**
 * What the whole day does not come by: the client, the keys that are typing, and what goes wrong.
 */
class ListPageTest {
  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);
  private FxRobot robot;
  private OpenApp opened;
  private Job job;
  private Composition app;

  @BeforeEach
  void openTheAppOnAFreshJob() throws Exception {
    job = FreshJob.in(folder, clock);
    opened = OpenApp.open(folder.resolve("settings"), clock, new Answers(folder));
    app = opened.app();
    robot = opened.robot();
    robot.interact(() -> app.openJob(job.folder()));
    await(() -> app.pageIds().contains("board"));
    waitForFxEvents();
  }

  @AfterEach
  void closeTheApp() throws Exception {
    opened.close();
  }

  private void press(KeyCode... keys) {
    opened.press(keys);
  }

  private void await(Callable<Boolean> condition) throws Exception {
    opened.await(condition);
  }

  private void onSet(String code) throws Exception {
    await(() -> onSetCode().equals(code));
  }

  private String onSetCode() {
    return app.session().view().get().state().onSet().map(set -> set.setup()).orElse("");
  }

  private void stands(String code, SetupState state) throws Exception {
    await(() -> app.session().view().get().state().of(code).state() == state);
  }

  private void types(String text) {
    robot.write(text, 0);
    waitForFxEvents();
  }

  private void slipIsOpen() throws Exception {
    await(() -> app.slips().open().get());
  }

  @Test
  void lettersTypedInTheFilterTickNothing() throws Exception {
    press(KeyCode.SLASH);
    types("paddx");
    assertThat(app.slips().open().get()).isFalse();
    assertThat(robot.lookup("#filter").queryAs(TextField.class).getText()).isEqualTo("paddx");
    assertThat(Job.open(job.folder(), clock).lastTick()).isEmpty();
    press(KeyCode.ESCAPE);
    assertThat(robot.lookup("#filter").queryAs(TextField.class).getText()).isEmpty();
  }

  @Test
  void theKeySheetFindsACommandAndDoesIt() throws Exception {
    assertThat(app.scene().getRoot().getStyleClass()).contains("neutral");
    press(KeyCode.F1);
    slipIsOpen();
    types("sunlight");
    press(KeyCode.ENTER);
    await(() -> app.scene().getRoot().getStyleClass().contains("sunlight"));
    assertThat(app.preferences().get("look")).contains("sunlight");
  }

  @Test
  void theClientsScreenOpensWithAKeyAndTakesASignOff() throws Exception {
    press(KeyCode.SPACE);
    onSet("001");
    press(KeyCode.C);
    await(() -> app.clientScene().getWindow().isShowing());
    Platform.runLater(() -> app.clientScene().getWindow().requestFocus());
    await(() -> app.clientScene().getWindow().isFocused());
    press(KeyCode.A);
    await(() -> app.clientScene().getFocusOwner() instanceof TextField);
    robot.targetWindow(app.clientScene().getWindow());
    types("Odette");
    press(KeyCode.ENTER);
    stands("001", SetupState.SIGNED_OFF);
    assertThat(Job.open(job.folder(), clock).state().of("001").signedOffBy()).contains("Odette");
  }

  @Test
  void whatNobodyForesawIsToldWithoutATraceAndKeptInTheLog() throws Exception {
    app.trouble(new IllegalStateException("a nut is loose"));
    slipIsOpen();
    var told =
        robot.lookup(".trouble .label").queryAllAs(Labeled.class).stream()
            .map(Labeled::getText)
            .toList();
    var log = folder.resolve("settings/framewright.log");
    assertThat(told).anyMatch(text -> text.contains(log.toString()));
    assertThat(told).noneMatch(text -> text.contains("\tat ") || text.contains("Exception"));
    assertThat(log).content().contains("a nut is loose");
    press(KeyCode.ESCAPE);
    assertThat(app.slips().open().get()).isFalse();
  }
}
