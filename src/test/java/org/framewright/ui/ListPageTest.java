package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;
import static org.testfx.util.WaitForAsyncUtils.waitForFxEvents;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import javafx.application.Platform;
import javafx.scene.AccessibleAttribute;
import javafx.scene.Node;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.MenuItem;
import javafx.scene.control.TextField;
import javafx.scene.input.DataFormat;
import javafx.scene.input.KeyCode;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Station;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

/**
 * What the whole day does not come by: the client, the keys that are typing, and what goes wrong.
 */
@Tag("slow")
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
    opened.openJob(job);
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
    opened.type(text);
  }

  private void dialogIsOpen() throws Exception {
    await(() -> app.dialogs().open().get());
  }

  @Test
  void lettersTypedInTheFilterTickNothing() throws Exception {
    press(KeyCode.SLASH);
    types("paddx");
    assertThat(app.dialogs().open().get()).isFalse();
    assertThat(robot.lookup("#filter").queryAs(TextField.class).getText()).isEqualTo("paddx");
    assertThat(Job.open(job.folder(), clock).lastTick()).isEmpty();
    press(KeyCode.ESCAPE);
    assertThat(robot.lookup("#filter").queryAs(TextField.class).getText()).isEmpty();
  }

  /** The list of {@link FreshJob} with its setups worn by two people by turns. */
  @Test
  void anotherOrderOfTheRestIsShownGivenAndUndone() throws Exception {
    var list = app.session().job().shotList();
    var worn = new ArrayList<Setup>();
    for (var setup : list.setups()) {
      var columns = new LinkedHashMap<String, String>();
      columns.put("Model", worn.size() % 2 == 0 ? "Mira" : "Jonna");
      worn.add(new Setup(setup.code(), setup.title(), List.of(), OptionalInt.empty(), columns));
    }
    job.importList(new ShotList(worn));
    await(() -> app.session().view().get().list().setups().getFirst().model().isPresent());
    var before = app.session().view().get().list().codes();
    press(KeyCode.W);
    dialogIsOpen();
    ListView<?> then = robot.lookup("#order-then").queryListView();
    assertThat(then.getItems()).hasSize(before.size());
    press(KeyCode.ENTER);
    await(() -> !app.session().view().get().list().codes().equals(before));
    var order = app.session().view().get().list().codes();
    assertThat(order).containsExactlyInAnyOrderElementsOf(before);
    press(KeyCode.BACK_SPACE);
    await(() -> app.session().view().get().list().codes().equals(before));
    press(KeyCode.W);
    dialogIsOpen();
    press(KeyCode.ESCAPE);
    assertThat(app.session().view().get().list().codes()).isEqualTo(before);
  }

  @Test
  void theKeySheetFindsACommandAndDoesIt() throws Exception {
    assertThat(app.scene().getRoot().getStyleClass()).contains("neutral");
    press(KeyCode.F1);
    dialogIsOpen();
    types("sunlight");
    press(KeyCode.ENTER);
    await(() -> app.scene().getRoot().getStyleClass().contains("sunlight"));
    assertThat(app.preferences().get("look")).contains("sunlight");
  }

  @Test
  void theClientsScreenOpensWithAKeyAndTakesASignOff() throws Exception {
    press(KeyCode.SPACE);
    onSet("001");
    press(KeyCode.SHIFT, KeyCode.C);
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
  void movesALineInTheRunningOrderByKeys() throws Exception {
    press(KeyCode.DOWN);
    press(KeyCode.ALT, KeyCode.DOWN);
    await(() -> codes().subList(0, 3).equals(List.of("001", "003", "002")));
    press(KeyCode.ALT, KeyCode.UP);
    press(KeyCode.ALT, KeyCode.UP);
    await(() -> codes().subList(0, 3).equals(List.of("002", "001", "003")));
    assertThat(Job.open(job.folder(), clock).shotList().codes()).startsWith("002", "001", "003");
  }

  @Test
  void movesALineInTheRunningOrderByDraggingIt() throws Exception {
    await(() -> codes().contains("004"));
    assertThat(drop("001", "004", 0.8)).isTrue();
    await(() -> codes().subList(0, 4).equals(List.of("002", "003", "004", "001")));
    assertThat(drop("004", "002", 0.2)).isTrue();
    await(() -> codes().subList(0, 4).equals(List.of("004", "002", "003", "001")));
    assertThat(drop("002", "002", 0.8)).as("a line dropped on itself").isFalse();
    assertThat(Job.open(job.folder(), clock).shotList().codes())
        .startsWith("004", "002", "003", "001");
  }

  private List<String> codes() throws Exception {
    return opened.readsAll(".setup-row .line-code");
  }

  /** Drags a line onto another, at a share of its height. */
  private boolean drop(String code, String onto, double share) throws Exception {
    return onInterface(
        () -> {
          var cell =
              app.scene().getRoot().lookupAll(".list-cell").stream()
                  .filter(ListCell.class::isInstance)
                  .map(ListCell.class::cast)
                  .filter(
                      line ->
                          line.queryAccessibleAttribute(AccessibleAttribute.TEXT)
                                  instanceof String spoken
                              && spoken.startsWith(onto + ","))
                  .findFirst()
                  .orElseThrow();
          return Dropped.on(
              cell,
              cell.getHeight() * share,
              DataFormat.lookupMimeType("application/x-framewright-setup"),
              code);
        });
  }

  @Test
  void aSetupIsRunByMouseAlone() throws Exception {
    robot.clickOn("#act-next");
    onSet("001");
    robot.clickOn("back");
    await(
        () ->
            app.session()
                .view()
                .get()
                .state()
                .onSet()
                .flatMap(set -> set.view())
                .equals(Optional.of("B")));
    robot.clickOn("#act-next");
    onSet("002");
    stands("001", SetupState.SHOT);
    robot.doubleClickOn(line("004"));
    onSet("004");
    robot.clickOn("#act-pickup");
    opened.await(() -> opened.reads(".dialog-title").startsWith("Shoot 004 again"));
    press(KeyCode.ESCAPE);
    robot.rightClickOn(line("006"));
    var menu = ((ListView<?>) app.scene().getRoot().lookup("#setups")).getContextMenu();
    await(menu::isShowing);
    // The headless toolkit brings no click to a window above another.
    robot.interact(
        () ->
            menu.getItems().stream()
                .filter(item -> item.getText().equals("Shoot the chosen setup next"))
                .forEach(MenuItem::fire));
    await(() -> app.session().view().get().list().setups().get(4).code().equals("006"));
    opened.await(() -> opened.reads("#act-next").startsWith("Shot, next: 006"));
  }

  private Node line(String code) {
    return app.scene().getRoot().lookupAll(".line-code").stream()
        .filter(node -> node instanceof Labeled label && label.getText().equals(code))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void whatAnotherStationTicksIsShownAndTold() throws Exception {
    var other = Job.open(job.folder(), clock, new Station("laptop-b"));
    other.mark("002", SetupState.ON_SET, MarkDetails.NONE);
    opened.awaitReading(".set-code", "002");
    opened.awaitReading("#status", "Another computer: 002 is on set");
    other.callThisStation("Stylist");
    other.mark("002", SetupState.SIGNED_OFF, MarkDetails.by("Odette"));
    opened.awaitReading("#status", "Stylist: 002 is signed off");
    assertThat(app.session().view().get().state().of("002").signedOffBy()).contains("Odette");
  }

  @Test
  void aTornLogIsReportedInALineUntilItIsPutAway() throws Exception {
    var log = job.folder().resolve(".framewright/log/laptop-b.jsonl");
    Files.writeString(log, "{\"n\":1,\"torn");
    opened.await(() -> opened.reads("#notice").contains("laptop-b.jsonl, line 1"));
    assertThat(app.dialogs().open().get()).as("a notice asks for nothing").isFalse();
    press(KeyCode.F8);
    opened.awaitReading(".dialog-title", "What to know of this job’s folder");
    press(KeyCode.ENTER);
    opened.await(() -> opened.reads("#notice").isEmpty());
  }

  @Test
  void aJobFolderThatIsGoneFillsTheWidthUntilItIsBackAndNothingIsTicked() throws Exception {
    press(KeyCode.SPACE);
    onSet("001");
    var away = job.folder().resolveSibling("unplugged");
    Files.move(job.folder(), away);
    press(KeyCode.SPACE);
    opened.await(() -> opened.reads("#alarm").startsWith("The job\u2019s folder is not there"));
    opened.awaitReading("#status", "That was not done: the job\u2019s folder is not there.");
    assertThat(app.dialogs().open().get()).isFalse();
    assertThat(onSetCode()).isEqualTo("001");
    assertThat(opened.reads(".set-code")).isEqualTo("001");
    assertThat(job.folder()).as("no folder is made in its place").doesNotExist();
    Files.move(away, job.folder());
    robot.clickOn("#look-again");
    opened.await(() -> opened.reads("#alarm").isEmpty());
    press(KeyCode.SPACE);
    onSet("002");
    stands("001", SetupState.SHOT);
  }

  @Test
  void aTickIsAnsweredUndoneAndDoneAgainByKeysAndByMouse() throws Exception {
    press(KeyCode.SPACE);
    opened.await(() -> opened.reads("#status").startsWith("001 "));
    press(KeyCode.SPACE);
    opened.await(
        () ->
            opened
                .reads("#status")
                .matches("001 .* is shot\\. 002 .* is on set, front before the camera\\."));
    press(OpenApp.SHORTCUT, KeyCode.Z);
    onSet("001");
    opened.await(() -> opened.reads("#status").startsWith("Undone: 001 "));
    press(OpenApp.SHORTCUT, KeyCode.SHIFT, KeyCode.Z);
    onSet("002");
    robot.clickOn("#offered");
    onSet("001");
    opened.awaitReading("#offered", "Redo");
    robot.clickOn("#offered");
    onSet("002");
    stands("001", SetupState.SHOT);
    press(KeyCode.F3);
    opened.await(() -> opened.reads("#offered").isEmpty());
  }

  @Test
  void aSetupIsAddedEditedAndDoubledByKeys() throws Exception {
    press(KeyCode.INSERT);
    opened.await(() -> opened.reads(".dialog-title").equals("Add a setup"));
    assertThat(opened.reads("#setup-code")).isEqualTo("041");
    press(KeyCode.TAB);
    types("Felt belt");
    opened.await(() -> opened.reads("#setup-outcome").startsWith("Its frames will be called"));
    press(KeyCode.ENTER);
    opened.awaitReading("#status", "041 Felt belt is in the list.");
    assertThat(codes().subList(0, 3)).containsExactly("001", "041", "002");
    press(KeyCode.E);
    opened.await(() -> opened.reads(".dialog-title").equals("Edit 041"));
    press(OpenApp.SHORTCUT, KeyCode.A);
    types("Felt hat");
    opened.await(() -> opened.reads("#setup-outcome").startsWith("Its frames will be called"));
    press(KeyCode.ENTER);
    opened.awaitReading("#status", "041 Felt hat is changed.");
    press(OpenApp.SHORTCUT, KeyCode.D);
    opened.await(() -> opened.reads(".dialog-title").equals("Add a setup like 041"));
    opened.await(() -> opened.reads("#setup-outcome").startsWith("Its frames will be called"));
    press(KeyCode.ENTER);
    opened.awaitReading("#status", "042 Felt hat is in the list.");
    press(KeyCode.BACK_SPACE);
    opened.await(() -> !codes().contains("042"));
    assertThat(Job.open(job.folder(), clock).setup("041").title()).isEqualTo("Felt hat");
  }

  @Test
  void framesOfNoSetupStandUnderTheListAndAreShownByAKey() throws Exception {
    assertThat(opened.reads("#loose")).isEmpty();
    var camera =
        new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
    camera
        .take(Exposure.of(clock.instant().minusSeconds(86_400 * 9), "777", "F"))
        .writeTo(job.framesFolder());
    opened.awaitReading("#loose", "1 frame of no setup");
    press(KeyCode.U);
    opened.await(() -> opened.reads(".grid-title").contains("1 frame"));
    assertThat(opened.readsAll(".tile-name")).hasSize(1);
  }

  @Test
  void anythingIsFoundByPartOfItAndGoneTo() throws Exception {
    press(OpenApp.SHORTCUT, KeyCode.F);
    opened.awaitReading(".dialog-title", "Find anything");
    types("017");
    opened.await(
        () -> opened.readsAll(".found-row .label").stream().anyMatch(t -> t.startsWith("017")));
    press(KeyCode.ENTER);
    opened.await(() -> !app.dialogs().open().get());
    press(KeyCode.ENTER);
    onSet("017");
    press(OpenApp.SHORTCUT, KeyCode.F);
    types("sunlight");
    opened.await(
        () -> opened.readsAll(".found-row .label").stream().anyMatch(t -> t.contains("sunlight")));
    press(KeyCode.ENTER);
    await(() -> app.scene().getRoot().getStyleClass().contains("sunlight"));
  }

  @Test
  void aFolderThatIsGoneIsReportedUntilItIsBack() throws Exception {
    var frames = job.framesFolder();
    var away = frames.resolveSibling("away");
    Files.move(frames, away);
    opened.await(() -> opened.reads("#notice").contains("the folder is gone"));
    assertThat(opened.reads("#notice")).startsWith("01_frames: ");
    Files.move(away, frames);
    opened.await(() -> opened.reads("#notice").isEmpty());
  }
}
