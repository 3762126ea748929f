package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import javafx.scene.Node;
import javafx.scene.control.Labeled;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import org.framewright.frames.Frame;
import org.framewright.job.Job;
import org.framewright.renaming.RenameRequest;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.renaming.CrashedRename;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * One day from the empty form to the closed job, by keys alone, on the real app over real files.
 * What happened is read from the screen, and from the job folder as another program would open it.
 */
@Tag("slow")
class WholeDayTest {
  private static final int SETUPS = 10;

  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);
  private final SampleCamera camera =
      new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
  private final AtomicInteger mouse = new AtomicInteger();
  private OpenApp app;
  private Path jobFolder;

  @BeforeEach
  void openTheAppForTheFirstTime() throws Exception {
    app =
        OpenApp.again(
            folder.resolve("settings"),
            clock,
            new Answers(
                folder, Path.of("samples/shot-list.csv"), Path.of("samples/shot-list-noon.csv")));
    // The toolkit itself tells nodes that appear below a resting pointer that it entered them.
    app.app().stage().addEventFilter(MouseEvent.MOUSE_PRESSED, _ -> mouse.incrementAndGet());
    app.app().stage().addEventFilter(ScrollEvent.ANY, _ -> mouse.incrementAndGet());
    jobFolder = folder.resolve(LocalDate.now(clock) + "_KVO_look-book");
  }

  @AfterEach
  void closeTheApp() throws Exception {
    app.close();
  }

  @Test
  void aWholeDayWithoutAMouse() throws Exception {
    startsTheJobByTyping();
    takesTheClientsListIn();
    runsTenSetupsWhileFramesArrive();
    goesBackOneStepThenPickupAndDrop();
    takesTheListOfNoonLineByLine();
    findsASetupByTyping();
    seesTheFramesAndMovesSome();
    marksSelects();
    renamesTakesBackAndRenames();
    handsTheSelectsOff();
    closesTheJob();
    recoversFromACrash();
    closesTheJob();
    quits();
    assertThat(mouse).as("presses and turns of a mouse").hasValue(0);
  }

  private void startsTheJobByTyping() throws Exception {
    app.await(() -> !app.reads("#convention").isEmpty());
    app.pressUntil(() -> app.holdsTheKeys("#convention"), KeyCode.SHIFT, KeyCode.TAB);
    app.pressUntil(
        () -> app.reads("#convention").equals("Fashion over several days"), KeyCode.DOWN);
    app.pressUntil(() -> app.holdsTheKeys("#field-client"), KeyCode.TAB);
    app.type("KVÖ");
    app.press(KeyCode.TAB);
    app.type("look book");
    app.press(OpenApp.SHORTCUT, KeyCode.P);
    app.awaitReading("#place", folder.toString());
    app.awaitReading("#start", "Start " + jobFolder.getFileName());
    app.press(OpenApp.SHORTCUT, KeyCode.ENTER);

    app.awaitReading(".dialog-title", "Before the first frame");
    assertThat(app.reads(".job-title")).isEqualTo(jobFolder.getFileName().toString());
    app.press(KeyCode.ENTER);
    app.await(() -> app.reads(".dialog-title").isEmpty());
    app.await(() -> app.holdsTheKeys("#setups"));
    assertThat(jobFolder.resolve("01_frames")).isDirectory();
    assertThat(job().convention().title()).isEqualTo("Fashion over several days");
  }

  private void takesTheClientsListIn() throws Exception {
    app.press(KeyCode.L);
    app.awaitReading("#take-list", "Take 40 setups");
    app.press(OpenApp.SHORTCUT, KeyCode.ENTER);
    app.awaitReading(".sheet-agreed", "0 of 40 signed off");
    assertThat(job().shotList().setups()).hasSize(40);
  }

  private void runsTenSetupsWhileFramesArrive() throws Exception {
    app.press(KeyCode.SPACE);
    for (var i = 1; i <= SETUPS; i++) {
      var code = code(i);
      app.awaitReading(".set-code", code);
      app.awaitReading(".view-now", "before the camera");
      frameArrives(code);
      app.awaitReading(".view-count", "1");
      app.press(KeyCode.A);
      app.await(() -> app.reads(".dialog-title").startsWith("Who agrees to " + code));
      app.type("Ines Varga");
      app.press(KeyCode.ENTER);
      app.await(() -> line(code).endsWith("signed off"));
      app.press(KeyCode.SPACE);
    }
    app.awaitReading(".set-code", code(SETUPS + 1));

    var job = job();
    for (var i = 1; i <= SETUPS; i++) {
      assertThat(job.state().of(code(i)).signedOffBy()).contains("Ines Varga");
    }
    assertThat(job.tally().frames()).isEqualTo(SETUPS);
    assertThat(job.tally().unassigned()).isEmpty();
  }

  private void goesBackOneStepThenPickupAndDrop() throws Exception {
    app.press(KeyCode.SPACE);
    app.awaitReading(".set-code", "012");
    app.press(KeyCode.BACK_SPACE);
    app.awaitReading(".set-code", "011");
    assertThat(job().state().of("012").state()).isEqualTo(SetupState.TO_SHOOT);

    app.press(KeyCode.R);
    app.await(() -> app.reads(".dialog-title").startsWith("Shoot 011 again"));
    app.type("sleeve creased");
    app.press(KeyCode.ENTER);
    app.await(() -> line("011").endsWith("pickup"));

    app.press(KeyCode.DOWN);
    app.press(KeyCode.DELETE);
    app.await(() -> app.reads(".dialog-title").startsWith("Drop 012"));
    app.press(KeyCode.ENTER);
    assertThat(app.reads(".dialog-title")).as("a drop needs its reason").startsWith("Drop 012");
    app.type("garment missing");
    app.press(KeyCode.ENTER);
    app.await(() -> line("012").endsWith("dropped"));

    assertThat(job().state().of("011").reason()).contains("sleeve creased");
    assertThat(job().state().of("012").reason()).contains("garment missing");
  }

  private void takesTheListOfNoonLineByLine() throws Exception {
    app.press(KeyCode.L);
    app.awaitReading("#take-list", "Take 6 setups");
    app.await(() -> app.holdsTheKeys("#results"));
    assertThat(app.reads(".difference .line-code")).isEqualTo("041");
    app.press(KeyCode.SPACE);
    app.awaitReading("#take-list", "Take 5 setups");
    app.press(OpenApp.SHORTCUT, KeyCode.ENTER);
    app.awaitReading("#status", "5 setups of the new list taken in.");

    var codes = job().shotList().codes();
    assertThat(codes).contains("042").doesNotContain("041", "019");
    assertThat(job().state().of("001").state()).isEqualTo(SetupState.SIGNED_OFF);
  }

  private void findsASetupByTyping() throws Exception {
    app.press(KeyCode.SLASH);
    app.type("felt hat");
    app.await(() -> app.readsAll(".setup-row .line-code").equals(List.of("042")));
    app.press(KeyCode.ESCAPE);
    app.await(() -> app.readsAll(".setup-row .line-code").size() > 5);

    app.type("017");
    assertThat(app.reads("#filter")).isEqualTo("017");
    app.press(KeyCode.ENTER);
    app.press(KeyCode.ENTER);
    app.awaitReading(".set-code", "017");
    app.awaitReading(".view-now", "before the camera");
    frameArrives("017");
    frameArrives("017");
    app.await(() -> line("017").contains("F 2"));
    app.press(KeyCode.SLASH);
    app.press(KeyCode.ESCAPE);
    app.press(KeyCode.SHIFT, KeyCode.SPACE);
    app.await(() -> line("017").endsWith("shot"));
  }

  private void seesTheFramesAndMovesSome() throws Exception {
    app.press(KeyCode.F3);
    app.awaitReading(".grid-title", "12 frames, 0 selects");
    app.await(() -> app.readsAll(".tile-name").size() == 12);
    turnTo("017");
    app.press(OpenApp.SHORTCUT, KeyCode.A);
    app.press(KeyCode.M);
    app.awaitReading(".dialog-title", "Move 2 frames to another setup");
    app.type("018");
    app.press(KeyCode.ENTER);
    turnTo("018");
    assertThat(app.reads(".grid-title")).contains("2 frames");
    assertThat(job().tally().bySetup().get("018").frames()).isEqualTo(2);
    assertThat(job().tally().bySetup()).doesNotContainKey("017");
  }

  private void marksSelects() throws Exception {
    for (var code : List.of("003", "002")) {
      turnTo(code);
      app.press(KeyCode.S);
      app.await(() -> app.reads(".grid-title").endsWith("1 frame, 1 select"));
    }
    app.awaitReading("#hand-off", "Hand off 2 selects");
    assertThat(job().selects(job().scan())).hasSize(2);

    app.press(KeyCode.H);
    app.await(
        () ->
            app.readsAll(".line-more").stream()
                .anyMatch(
                    text -> text.endsWith("Rename the frames first. See the page Names, key F4.")));
  }

  private void renamesTakesBackAndRenames() throws Exception {
    var before = names();
    app.press(KeyCode.F4);
    app.awaitReading("#rename", "Rename 12 files");
    app.press(OpenApp.SHORTCUT, KeyCode.ENTER);
    app.await(() -> app.readsAll(".notice-what").contains("12 files have their new names."));
    assertThat(names()).hasSize(12).allMatch(name -> name.matches("\\d{8}_KVO_\\d{3}(_F)?_\\d{4}"));
    app.awaitReading("#undo", "Give 12 files their names before back");
    app.press(KeyCode.BACK_SPACE);
    app.await(() -> app.readsAll(".notice-what").contains("12 files have their old names back."));
    assertThat(names()).isEqualTo(before);

    app.awaitReading("#rename", "Rename 12 files");
    app.press(OpenApp.SHORTCUT, KeyCode.ENTER);
    app.awaitReading("#total-unchanged", "12 files named");
  }

  private void handsTheSelectsOff() throws Exception {
    app.press(KeyCode.F3);
    app.awaitReading("#hand-off", "Hand off 2 selects");
    app.press(KeyCode.H);
    app.await(() -> app.reads("#hand-off-going").startsWith("2 selects go: 2 files"));
    app.awaitReading("#hand-off", "Hand off 2 selects");
    app.press(OpenApp.SHORTCUT, KeyCode.ENTER);
    app.awaitReading("#handed-word", "handed off");
    var handedOff = folder.resolve(jobFolder.getFileName() + "_hand-off_1");
    assertThat(app.reads("#handed-sentence")).contains("Hand-off 1 of ", handedOff.toString());
    try (var files = Files.walk(handedOff)) {
      assertThat(files.map(file -> file.getFileName().toString()))
          .contains("KVO_002_F_0001.JPG", "KVO_003_F_0001.JPG");
    }
  }

  private void closesTheJob() throws Exception {
    app.press(OpenApp.SHORTCUT, KeyCode.W);
    app.awaitReading(".sheet-title", "Start a job");
    assertThat(app.reads(".job-title")).isEqualTo("Framewright");
  }

  private void recoversFromACrash() throws Exception {
    var before = names();
    CrashedRename.leaveIn(
        jobFolder,
        2,
        job().scan().frames().stream()
            .map(frame -> jobFolder.relativize(frame.primary().path()))
            .map(file -> new RenameRequest(file, file.resolveSibling("late-" + file.getFileName())))
            .toList());
    assertThat(names()).as("something was renamed before the crash").isNotEqualTo(before);
    app.press(OpenApp.SHORTCUT, KeyCode.J);
    app.press(KeyCode.ENTER);
    app.awaitReading("#recover", "Put these names in order");
    app.press(KeyCode.ALT, KeyCode.R);
    app.await(
        () ->
            app.reads("#recover").isEmpty()
                && app.reads("#total-unchanged").equals("12 files named"));
    assertThat(names()).isEqualTo(before);
  }

  private void quits() throws Exception {
    app.press(OpenApp.SHORTCUT, KeyCode.Q);
    app.await(() -> !app.app().stage().isShowing());
  }

  private void frameArrives(String code) throws Exception {
    camera.take(Exposure.of(clock.instant(), code, "F")).writeTo(jobFolder.resolve("01_frames"));
  }

  /** Turns to a setup's heading on the page of frames: back to the first one, then down. */
  private void turnTo(String code) throws Exception {
    app.pressUntil(
        () -> app.reads(".grid-title").matches("\\d+ frames?, .*"), KeyCode.ALT, KeyCode.UP);
    app.pressUntil(
        () -> app.reads(".grid-title").startsWith(code + " "), KeyCode.ALT, KeyCode.DOWN);
  }

  /** What a line of the list says, its state at the end. */
  private String line(String code) {
    return app.app().scene().getRoot().lookupAll(".setup-row").stream()
        .map(
            row ->
                row.lookupAll(".label").stream()
                    .filter(Node::isManaged)
                    .sorted(
                        Comparator.comparing(label -> label.getStyleClass().contains("line-state")))
                    .map(label -> ((Labeled) label).getText())
                    .toList())
        .filter(words -> words.contains(code))
        .map(words -> String.join("  ", words))
        .findFirst()
        .orElse("");
  }

  private Job job() throws Exception {
    return Job.open(jobFolder, clock);
  }

  private List<String> names() throws Exception {
    return job().scan().frames().stream().map(Frame::stem).sorted().toList();
  }

  private static String code(int number) {
    return "%03d".formatted(number);
  }
}
