package org.framewright.ui;

import static org.assertj.core.api.Assertions.assertThat;
import static org.testfx.util.WaitForAsyncUtils.waitForFxEvents;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import javafx.application.Platform;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import org.framewright.job.Job;
import org.framewright.job.Started;
import org.framewright.naming.Convention;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.ListReader;
import org.framewright.shotlist.ListReading;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

/** The day on the real app, over a real job folder, without a mouse. */
class ShootDayTest {
  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);
  private FxRobot robot;
  private OpenApp opened;
  private final SampleCamera camera =
      new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
  private Job job;
  private Composition app;

  /** Gives prepared answers instead of the platform's windows. */
  private final class Prepared implements FileChoosers {
    @Override
    public Optional<Path> folder(String title, Optional<Path> startIn) {
      return Optional.empty();
    }

    @Override
    public Optional<Path> file(String title, Optional<Path> startIn, List<String> endings) {
      return Optional.of(folder.resolve("noon.csv"));
    }

    @Override
    public Optional<Path> save(String title, Optional<Path> startIn, String suggestedName) {
      return Optional.empty();
    }
  }

  @BeforeEach
  void openTheAppOnAFreshJob() throws Exception {
    var sound = (Convention.Parsed.Sound) Convention.read(Path.of("templates/fashion-days.yaml"));
    var started =
        (Started.Opened)
            Job.start(
                sound.convention(),
                folder,
                Map.of("day", "2026-11-23", "client", "KVÖ", "title", "look book"),
                clock);
    job = started.job();
    var list = (ListReading.Understood) ListReader.read(Path.of("samples/shot-list.csv"));
    job.importList(list.list());
    opened = OpenApp.open(folder.resolve("settings"), clock, new Prepared());
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
  void runsTenSetupsWhileFramesArriveAndSignsThemOff() throws Exception {
    press(KeyCode.SPACE);
    for (var i = 1; i <= 10; i++) {
      var code = "%03d".formatted(i);
      onSet(code);
      press(KeyCode.RIGHT);
      await(() -> app.session().view().get().state().onSet().get().view().equals(Optional.of("F")));
      camera.take(Exposure.of(clock.instant(), code, "F")).writeTo(job.framesFolder());
      await(
          () ->
              app.session().view().get().tally().bySetup().containsKey(code)
                  && app.session().view().get().tally().bySetup().get(code).byView().get("F") == 1);
      press(KeyCode.A);
      slipIsOpen();
      types("Ines Varga");
      press(KeyCode.ENTER);
      stands(code, SetupState.SIGNED_OFF);
      press(KeyCode.SPACE);
    }
    onSet("011");

    var reopened = Job.open(job.folder(), clock);
    for (var i = 1; i <= 10; i++) {
      var status = reopened.state().of("%03d".formatted(i));
      assertThat(status.state()).isEqualTo(SetupState.SIGNED_OFF);
      assertThat(status.signedOffBy()).contains("Ines Varga");
    }
    assertThat(reopened.tally().frames()).isEqualTo(10);
    assertThat(reopened.tally().unassigned()).isEmpty();
  }

  @Test
  void pickupAndDropAskWhyAndOneKeyTakesBack() throws Exception {
    press(KeyCode.SPACE);
    onSet("001");
    press(KeyCode.SPACE);
    onSet("002");
    press(KeyCode.BACK_SPACE);
    onSet("001");
    assertThat(app.session().view().get().state().of("002").state()).isEqualTo(SetupState.TO_SHOOT);

    press(KeyCode.P);
    slipIsOpen();
    types("sleeve creased");
    press(KeyCode.ENTER);
    stands("001", SetupState.PICKUP);
    press(KeyCode.DOWN);
    press(KeyCode.D);
    slipIsOpen();
    press(KeyCode.ENTER);
    assertThat(app.slips().open().get()).as("a drop needs its reason").isTrue();
    types("garment missing");
    press(KeyCode.ENTER);
    stands("002", SetupState.DROPPED);
    var kept = Job.open(job.folder(), clock).state();
    assertThat(kept.of("001").reason()).contains("sleeve creased");
    assertThat(kept.of("002").reason()).contains("garment missing");
  }

  @Test
  void aNumberTypedOnTheListFindsItsSetup() throws Exception {
    types("017");
    var filter = robot.lookup("#filter").queryAs(TextField.class);
    assertThat(filter.getText()).isEqualTo("017");
    press(KeyCode.ENTER);
    press(KeyCode.ENTER);
    onSet("017");
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
  void theListOfNoonIsTakenLineByLine() throws Exception {
    Files.copy(Path.of("samples/shot-list-noon.csv"), folder.resolve("noon.csv"));
    var before = app.session().view().get().list();
    press(KeyCode.L);
    slipIsOpen();
    press(KeyCode.SPACE);
    press(KeyCode.ENTER);
    await(() -> !app.session().view().get().list().equals(before));
    var noon = ((ListReading.Understood) ListReader.read(folder.resolve("noon.csv"))).list();
    assertThat(Job.open(job.folder(), clock).shotList()).isNotEqualTo(noon).isNotEqualTo(before);
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
