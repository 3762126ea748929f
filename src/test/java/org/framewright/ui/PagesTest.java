package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;
import static org.testfx.util.WaitForAsyncUtils.waitForFxEvents;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.SynchronousQueue;
import java.util.function.BooleanSupplier;
import javafx.collections.ListChangeListener;
import javafx.scene.control.ListView;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.skin.VirtualFlow;
import javafx.scene.input.DataFormat;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Region;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.task.Running;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The pages around the list, on the real app. */
@Tag("slow")
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
    app.press(OpenApp.SHORTCUT, KeyCode.L);
    app.awaitReading("#convention", "Fashion over several days");
    app.press(OpenApp.SHORTCUT, KeyCode.P);
    app.await(() -> app.holdsTheKeys("#field-day") && app.exists("#field-client"));
    app.press(KeyCode.TAB);
    app.type("KVO");
    app.press(KeyCode.TAB);
    app.type("look book");
    var name = LocalDate.now(clock) + "_KVO_look-book";
    app.awaitReading("#start", "Start " + name);
    app.press(OpenApp.SHORTCUT, KeyCode.ENTER);
    app.awaitReading(".job-title", name);
    assertThat(Job.open(folder.resolve(name), clock).convention().title())
        .isEqualTo("Fashion over several days");
  }

  @Test
  void theListOpensWithTwoLinesAboveTheSetupOnSet() throws Exception {
    var job = FreshJob.in(folder, clock);
    job.mark("020", SetupState.ON_SET, MarkDetails.NONE);
    app.openJob(job);
    app.await(() -> onInterface(() -> list().getMaxHeight() == Region.USE_COMPUTED_SIZE));
    waitForFxEvents();
    var lines = (VirtualFlow<?>) list().lookup(".virtual-flow");
    var top = onInterface(lines::getFirstVisibleCell);
    var selected = list().getSelectionModel().getSelectedIndex();
    assertThat(top.getIndex()).isEqualTo(selected - 2);
    assertThat(onInterface(top::getLayoutY).doubleValue()).as("it is whole").isZero();
    assertThat(onInterface(() -> lines.getLastVisibleCell().getIndex()).intValue())
        .as("there is room for more than these")
        .isGreaterThan(top.getIndex() + 3);
  }

  private ListView<?> list() {
    return (ListView<?>) app.app().scene().lookup("#setups");
  }

  @Test
  void aJobsFolderDroppedOnTheStartPageIsOpened() throws Exception {
    var job = FreshJob.in(folder, clock);
    app.await(() -> app.exists(".start"));
    assertThat(dropOnTheStartPage(job.folder())).isTrue();
    app.awaitReading(".job-title", job.name());
  }

  @Test
  void whatIsNoJobIsRefusedWhenItIsDropped() throws Exception {
    app.await(() -> app.exists(".start"));
    dropOnTheStartPage(folder);
    app.awaitReading(".dialog-title", "That did not work");
    assertThat(app.readsAll(".trouble .label")).anyMatch(text -> text.contains("no job folder"));
  }

  @Test
  void aJobWhoseFramesCannotBeReadLeavesAPageOnWhichToOpenAnother() throws Exception {
    var job = FreshJob.in(Files.createDirectory(folder.resolve("whole")), clock);
    app.openJob(job);
    var broken = FreshJob.in(Files.createDirectory(folder.resolve("broken")), clock);
    Files.delete(broken.framesFolder());
    onInterface(
        () -> {
          app.app().openJob(broken.folder());
          return broken;
        });
    app.awaitReading(".dialog-title", "That did not work");
    assertThat(onInterface(app.app()::pageIds)).contains("start").doesNotContain("board");
    assertThat(app.reads(".job-title")).isEqualTo("Framewright");
    app.press(KeyCode.ESCAPE);
    app.openJob(job);
  }

  @Test
  void aJobWhoseReadingIsStoppedLeavesAPageOnWhichToOpenAnother() throws Exception {
    var job = FreshJob.in(Files.createDirectory(folder.resolve("first")), clock);
    app.openJob(job);
    var other = FreshJob.in(Files.createDirectory(folder.resolve("second")), clock);
    openAndStop(other, () -> app.app().session() == null);
    app.awaitReading(".job-title", "Framewright");
    assertThat(onInterface(app.app()::pageIds)).contains("start").doesNotContain("board");
    app.openJob(other);
  }

  @Test
  void aJobThatIsStoppedBeforeItIsOpenLeavesTheOneThatWas() throws Exception {
    var job = FreshJob.in(Files.createDirectory(folder.resolve("first")), clock);
    app.openJob(job);
    var other = FreshJob.in(Files.createDirectory(folder.resolve("second")), clock);
    openAndStop(other, () -> true);
    app.await(() -> onInterface(() -> app.app().tasks().running().isEmpty()));
    assertThat(app.reads(".job-title")).isEqualTo(job.name());
    assertThat(onInterface(app.app()::pageIds)).contains("board");
  }

  /** Opens a job; whatever begins under that condition is stopped at once. */
  private void openAndStop(Job job, BooleanSupplier when) throws Exception {
    var stopped = new CompletableFuture<Boolean>();
    ListChangeListener<Running> stop =
        change -> {
          if (!change.getList().isEmpty() && when.getAsBoolean()) {
            change.getList().forEach(Running::cancel);
            stopped.complete(true);
          }
        };
    onInterface(
        () -> {
          app.app().tasks().running().addListener(stop);
          app.app().openJob(job.folder());
          return job;
        });
    app.await(stopped::isDone);
    onInterface(
        () -> {
          app.app().tasks().running().removeListener(stop);
          return stop;
        });
  }

  @Test
  void theFootLineHasABarOnlyWhereHowFarIsKnown() throws Exception {
    var goOn = new SynchronousQueue<Integer>();
    onInterface(
        () ->
            app.app()
                .tasks()
                .run(
                    "Counting",
                    steps -> {
                      for (var done = goOn.take(); done < 4; done = goOn.take()) {
                        steps.step(done, 4);
                      }
                      return "";
                    },
                    _ -> {},
                    _ -> {}));
    app.awaitReading(".work .label", "Counting");
    assertThat(bar().isVisible()).isFalse();
    goOn.put(1);
    app.await(() -> onInterface(() -> bar().isVisible() && bar().getProgress() == 0.25));
    goOn.put(4);
    app.await(() -> onInterface(() -> !app.app().scene().lookup(".work").isVisible()));
  }

  private ProgressBar bar() {
    return (ProgressBar) app.app().scene().lookup(".work .progress-bar");
  }

  /** Whether the page took it. */
  private boolean dropOnTheStartPage(Path dropped) throws Exception {
    return onInterface(
        () ->
            Dropped.on(
                app.app().scene().getRoot().lookup(".start"),
                20,
                DataFormat.FILES,
                List.of(dropped.toFile())));
  }

  @Test
  void theHandOffSaysWhatGoesWhatDoesNotAndWhere() throws Exception {
    var job = FreshJob.withFrames(folder, clock, 3);
    nameOne(job);
    app.openJob(job);
    app.press(KeyCode.F3);
    app.awaitReading(".grid-title", "3 frames, 0 selects");
    app.press(OpenApp.SHORTCUT, KeyCode.A);
    app.press(KeyCode.S);
    app.awaitReading("#hand-off", "Hand off 3 selects");
    app.press(KeyCode.H);
    var target = folder.resolve(job.name() + "_hand-off_1");
    app.await(() -> app.reads("#hand-off-target").equals(target.toString()));
    assertThat(app.reads("#hand-off-going")).matches("1 select goes: 1 file, \\d+ kB");
    assertThat(app.reads("#hand-off-before")).isEqualTo("2 cannot go");
    assertThat(app.readsAll(".line-names")).anyMatch(text -> text.endsWith("→  KVO_001_F_0001"));
    assertThat(app.readsAll(".line-more"))
        .anyMatch(text -> text.endsWith("Rename the frames first. See the page Names, key F4."));
    assertThat(target).as("nobody said so").doesNotExist();
  }

  /** Renames the first frame alone, as the plan of names would. */
  private static void nameOne(Job job) throws Exception {
    var first = job.frameNames(job.scan()).requests().getFirst();
    Files.move(job.folder().resolve(first.from()), job.folder().resolve(first.to()));
  }

  @Test
  void aConventionIsCheckedAsOneTypesAndSavedWhereOneSays() throws Exception {
    app.await(() -> !app.reads("#convention").isEmpty());
    app.press(KeyCode.F3);
    app.await(() -> app.reads("#verdict").startsWith("Proved sound"));
    assertThat(app.readsAll(".example-kind")).isNotEmpty();
    app.press(OpenApp.TO_THE_END);
    app.type("oops");
    app.await(() -> app.reads("#verdict").contains("cannot be used yet"));
    app.await(() -> !app.readsAll("#findings .message").isEmpty());
    app.press(OpenApp.SHORTCUT, KeyCode.J);
    assertThat(app.holdsTheKeys("#findings")).isTrue();
    app.press(KeyCode.ENTER);
    assertThat(app.holdsTheKeys("#convention-text")).as("the finding's place").isTrue();
    app.press(OpenApp.TO_THE_END);
    for (var i = 0; i < "oops".length(); i++) {
      app.press(KeyCode.BACK_SPACE);
    }
    app.await(() -> app.reads("#verdict").startsWith("Proved sound"));
    app.press(KeyCode.ALT, KeyCode.S);
    app.await(() -> app.reads("#said").endsWith(".yaml is saved."));
    assertThat(folder.resolve("convention.yaml")).content().startsWith("#");
  }
}
