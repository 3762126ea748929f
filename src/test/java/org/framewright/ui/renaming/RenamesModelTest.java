package org.framewright.ui.renaming;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicInteger;
import org.framewright.job.FrameNames;
import org.framewright.renaming.RenameRequest;
import org.framewright.renaming.Renamer;
import org.framewright.ui.look.Texts;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RenamesModelTest {
  @TempDir private Path folder;

  private final List<Throwable> troubles = new ArrayList<>();
  private final AtomicInteger changes = new AtomicInteger();
  private final List<RenameRequest> requests = new ArrayList<>();
  private RenamesModel model;

  @BeforeEach
  void threeFramesWaitForTheirNames() throws IOException {
    for (var i = 1; i <= 3; i++) {
      wish("IMG_" + i + ".CR3", "LUMO_00" + i + ".CR3", "frame " + i);
      wish("IMG_" + i + ".JPG", "LUMO_00" + i + ".JPG", "frame " + i);
    }
    model = model(Tasks.immediate());
    open();
  }

  private RenamesModel model(Tasks tasks) {
    return new RenamesModel(
        tasks, Texts.in(Locale.ENGLISH), troubles::add, changes::incrementAndGet);
  }

  private void open() {
    model.open(() -> Renamer.in(folder), () -> new FrameNames(present(), List.of()));
    model.look();
  }

  private void wish(String from, String to, String group) throws IOException {
    Files.writeString(folder.resolve(from), "content of " + from);
    requests.add(new RenameRequest(Path.of(from), Path.of(to), group));
  }

  /** A file that has its name requests for nothing else. */
  private List<RenameRequest> present() {
    return requests.stream()
        .map(
            wish ->
                Files.exists(folder.resolve(wish.from()))
                    ? wish
                    : new RenameRequest(wish.to(), wish.to(), wish.group()))
        .toList();
  }

  private String what() {
    return model.result().get().orElseThrow().what();
  }

  @Test
  void showsThePlanWithItsTotals() {
    assertThat(troubles).isEmpty();
    assertThat(model.lines()).hasSize(3);
    assertThat(model.ready().get()).isEqualTo(6);
    assertThat(model.blocked().get()).isZero();
    assertThat(model.canRename().get()).isTrue();
  }

  @Test
  void renamesAndLooksAgain() {
    model.rename();
    assertThat(folder.resolve("LUMO_001.CR3")).hasContent("content of IMG_1.CR3");
    assertThat(folder.resolve("IMG_1.CR3")).doesNotExist();
    assertThat(what()).isEqualTo("6 files have their new names.");
    assertThat(model.ready().get()).isZero();
    assertThat(model.unchanged().get()).isEqualTo(6);
    assertThat(model.batches()).hasSize(1);
    assertThat(changes).hasValue(1);
    assertThat(model.canRename().get()).isFalse();
  }

  @Test
  void takesABatchBackAndCanDoItAgain() {
    model.rename();
    model.undo(model.batches().getFirst());
    assertThat(folder.resolve("IMG_1.CR3")).hasContent("content of IMG_1.CR3");
    assertThat(what()).isEqualTo("6 files have their old names back.");
    assertThat(model.ready().get()).isEqualTo(6);
    assertThat(model.batches()).hasSize(2);
    assertThat(model.canUndo(model.batches().getLast())).isFalse();
    model.rename();
    assertThat(folder.resolve("LUMO_001.CR3")).hasContent("content of IMG_1.CR3");
  }

  @Test
  void showsABlockedFrameFirstWithItsReasonAndRenamesTheOthers() throws IOException {
    Files.writeString(folder.resolve("LUMO_002.JPG"), "somebody else's");
    model.look();
    var first = model.lines().getFirst();
    assertThat(first.state()).isEqualTo(PlanLine.State.BLOCKED);
    assertThat(first.from()).isEqualTo("IMG_2");
    assertThat(first.why()).isNotEmpty();
    assertThat(first.remedy()).isNotEmpty();
    assertThat(model.blocked().get()).isEqualTo(2);
    model.rename();
    assertThat(folder.resolve("LUMO_002.JPG")).hasContent("somebody else's");
    assertThat(folder.resolve("IMG_2.CR3")).exists();
    assertThat(folder.resolve("LUMO_003.CR3")).exists();
  }

  @Test
  void findsLinesByWordsAndByState() throws IOException {
    Files.writeString(folder.resolve("LUMO_002.JPG"), "somebody else's");
    model.look();
    model.filter().set("img_3");
    assertThat(model.lines()).extracting(PlanLine::from).containsExactly("IMG_3");
    model.filter().set("Blocked");
    assertThat(model.lines()).extracting(PlanLine::from).containsExactly("IMG_2");
    model.filter().set("  ");
    assertThat(model.lines()).hasSize(3);
  }

  @Test
  void refusesAPlanThatTheDiskHasOvertaken() throws IOException {
    Files.writeString(folder.resolve("IMG_1.CR3"), "written anew since the plan was made");
    model.rename();
    assertThat(folder.resolve("IMG_1.CR3")).hasContent("written anew since the plan was made");
    assertThat(model.result().get()).isPresent();
    assertThat(model.ready().get()).as("planned afresh").isEqualTo(6);
  }

  @Test
  void doesOneThingAtATime() {
    var background = new ArrayDeque<Runnable>();
    model = model(new Tasks(background::add, Runnable::run));
    open();
    background.poll().run();
    background.poll().run();
    model.rename();
    assertThat(model.running().get()).isPresent();
    assertThat(model.canRename().get()).isFalse();
    model.rename();
    model.look();
    assertThat(background).hasSize(1);
    while (!background.isEmpty()) {
      background.poll().run();
    }
    assertThat(model.running().get()).isEmpty();
    assertThat(model.batches()).hasSize(1);
  }

  @Test
  void goesBackToTheOldNamesWhenStopped() {
    var background = new ArrayDeque<Runnable>();
    model = model(new Tasks(background::add, Runnable::run));
    open();
    background.poll().run();
    background.poll().run();
    model.rename();
    model.stop();
    while (!background.isEmpty()) {
      background.poll().run();
    }
    assertThat(what()).isEqualTo("Stopped. Every file has its old name.");
    assertThat(folder.resolve("IMG_1.CR3")).hasContent("content of IMG_1.CR3");
    assertThat(folder.resolve("LUMO_001.CR3")).doesNotExist();
  }

  @Test
  void saysTroubleWhenTheFolderIsGone() {
    model.open(() -> Renamer.in(folder.resolve("unplugged")), () -> null);
    assertThat(troubles).hasSize(1);
    assertThat(model.idle().get()).isTrue();
  }

  @Test
  void hasNothingToRenameInAnEmptyPlan() {
    model.open(() -> Renamer.in(folder), () -> new FrameNames(List.of(), List.of()));
    model.look();
    assertThat(model.lines()).isEmpty();
    assertThat(model.canRename().get()).isFalse();
  }

  @Test
  void findsWhatACrashLeftBehindBeforeAnybodyLooksAtThePlan() throws Exception {
    CrashedRename.leaveIn(folder, 3, requests);
    model = model(Tasks.immediate());
    model.open(
        () -> Renamer.in(folder),
        () -> {
          throw new AssertionError("nobody asked for names");
        });
    assertThat(troubles).isEmpty();
    assertThat(model.interrupted().get()).isPresent();
    assertThat(model.plan().get()).isEmpty();
  }

  @Test
  void offersRecoveryAfterACrashAndRenamesNothingUntilItIsDone() throws Exception {
    CrashedRename.leaveIn(folder, 3, requests);
    model.look();
    assertThat(model.interrupted().get())
        .hasValueSatisfying(left -> assertThat(left.renames()).isEqualTo(6));
    assertThat(model.canRename().get()).isFalse();
    assertThat(model.lines()).isEmpty();

    model.recover();

    assertThat(troubles).isEmpty();
    assertThat(model.interrupted().get()).isEmpty();
    assertThat(what()).startsWith("In order:");
    for (var wish : requests) {
      assertThat(folder.resolve(wish.from())).hasContent("content of " + wish.from());
      assertThat(folder.resolve(wish.to())).doesNotExist();
    }
    assertThat(model.ready().get()).isEqualTo(6);
    assertThat(model.canRename().get()).isTrue();
  }
}
