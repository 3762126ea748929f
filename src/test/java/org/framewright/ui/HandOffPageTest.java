package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import javafx.scene.control.Button;
import javafx.scene.input.Clipboard;
import javafx.scene.input.DataFormat;
import javafx.scene.input.KeyCode;
import org.framewright.base.Progress;
import org.framewright.frames.Frame;
import org.framewright.handoff.HandOff;
import org.framewright.handoff.metadata.MetadataOptions;
import org.framewright.job.Job;
import org.framewright.renaming.Renamer;
import org.framewright.ui.page.FileChoosers;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of the hand-off on the real app, by keys alone: to the retoucher and back. */
@Tag("slow")
class HandOffPageTest {
  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);
  private Path next;

  private FileChoosers choosers() {
    return new FileChoosers() {
      @Override
      public Optional<Path> folder(String title, Optional<Path> startIn) {
        return Optional.of(next);
      }

      @Override
      public Optional<Path> file(String title, Optional<Path> startIn, List<String> endings) {
        return Optional.empty();
      }

      @Override
      public Optional<Path> save(String title, Optional<Path> startIn, String name) {
        return Optional.empty();
      }
    };
  }

  private Job namedJob() throws Exception {
    var job = FreshJob.withFrames(folder, clock, 3);
    var renamer = Renamer.in(job.folder(), clock);
    renamer.apply(renamer.plan(job.frameNames(job.scan()).requests()), Progress.NONE);
    job.select(job.scan().frames().stream().map(Frame::id).toList(), true, "Ines");
    return job;
  }

  @Test
  void selectsGoAreCheckedComeBackGetTheirNamesAndLoseThemAgain() throws Exception {
    var job = namedJob();
    var app = OpenApp.open(folder.resolve("settings"), clock, choosers());
    try (var uncaught = new Uncaught()) {
      app.openJob(job);
      app.press(KeyCode.F6);
      app.await(() -> app.reads("#hand-off-going").startsWith("3 selects go: 3 files"));
      next = Files.createDirectory(folder.resolve("out"));
      app.press(KeyCode.P);
      var target = next.resolve(job.name() + "_hand-off_1");
      app.awaitReading("#hand-off-target", target.toString());
      app.press(OpenApp.SHORTCUT, KeyCode.ENTER);
      app.awaitReading("#handed-word", "handed off");
      app.press(KeyCode.S);
      assertThat(onInterface(() -> Clipboard.getSystemClipboard().getString()))
          .startsWith("Hand-off 1 of " + job.name())
          .contains(target.toString());

      app.press(KeyCode.DIGIT2);
      app.awaitReading("#earlier-number", "Hand-off 1");
      app.press(OpenApp.SHORTCUT, KeyCode.ENTER);
      app.awaitReading("#check-word", "whole");
      Files.delete(target.resolve("data/KVO_001_F_0001.JPG"));
      app.press(OpenApp.SHORTCUT, KeyCode.ENTER);
      app.awaitReading("#check-word", "not whole");
      app.press(KeyCode.A);
      app.await(() -> app.holdsTheKeys("#check-lines"));

      next = back(target);
      app.press(KeyCode.DIGIT4);
      app.press(KeyCode.P);
      app.awaitReading("#returns-title", "1 of 3 came back");
      assertThat(app.readsAll(".compared-where")).contains("the select", "what came back");
      app.press(KeyCode.RIGHT);
      app.press(KeyCode.F);
      app.press(KeyCode.ALT, KeyCode.RIGHT);
      app.press(KeyCode.F);
      app.press(KeyCode.R);
      app.awaitReading(".dialog-title", "Give 1 file its right name");
      app.press(KeyCode.ENTER);
      app.awaitReading("#returns-title", "2 of 3 came back");
      assertThat(next.resolve("KVO_001_F_0003_v02.JPG")).exists();
      app.press(KeyCode.BACK_SPACE);
      app.awaitReading("#returns-title", "1 of 3 came back");
      assertThat(next.resolve("KVO_001_F_0003 final v2.JPG")).exists();
      uncaught.assertNone();
    } finally {
      app.close();
    }
  }

  /** One under its right name and one under another, both other than what was handed off. */
  private Path back(Path handedOff) throws IOException {
    var back = Files.createDirectory(folder.resolve("back"));
    for (var names :
        List.of(
            List.of("KVO_001_F_0002", "KVO_001_F_0002_v01"),
            List.of("KVO_001_F_0003", "KVO_001_F_0003 final v2"))) {
      Files.copy(
          handedOff.resolve("data").resolve(names.getFirst() + ".JPG"),
          back.resolve(names.getLast() + ".JPG"));
    }
    return back;
  }

  /** Asked twice: the first time a person thinks better of it. */
  @Test
  void whatCameBackGoesToTheClientOnlyOnceAPersonSaysSo() throws Exception {
    var job = namedJob();
    var handOff = HandOff.of(job, job.scan(), job.standing(job.scan()).tally());
    var out = folder.resolve("out");
    handOff.deliver(handOff.selects(), out, MetadataOptions.NONE, Progress.NONE);
    var app = OpenApp.open(folder.resolve("settings"), clock, choosers());
    try (var uncaught = new Uncaught()) {
      app.openJob(job);
      app.press(KeyCode.F6);
      next = back(out);
      app.press(KeyCode.DIGIT4);
      app.press(KeyCode.P);
      app.awaitReading("#returns-title", "1 of 3 came back");
      var target = folder.resolve(job.name() + "_delivery_2");
      app.press(KeyCode.D);
      app.awaitReading(".dialog-title", "Deliver to the client");
      app.await(() -> app.reads("#client-going").startsWith("1 picture goes"));
      next = folder;
      onInterface(
          () -> {
            ((Button) app.app().scene().getRoot().lookup("#client-place")).fire();
            return true;
          });
      app.awaitReading("#client-target", target.toString());
      app.press(KeyCode.ESCAPE);
      app.await(() -> app.readsAll(".dialog-title").isEmpty());
      assertThat(target).doesNotExist();
      app.press(KeyCode.D);
      app.await(() -> app.reads("#client-going").startsWith("1 picture goes"));
      onInterface(
          () -> {
            ((Button) app.app().scene().getRoot().lookup("#client-place")).fire();
            return true;
          });
      app.awaitReading("#client-target", target.toString());
      app.press(KeyCode.ENTER);
      app.awaitReading("#earlier-number", "Hand-off 2");
      assertThat(target.resolve("data")).isDirectory();
      uncaught.assertNone();
    } finally {
      app.close();
    }
  }

  @Test
  void aFolderIsDroppedAndOneThatIsGoneIsASentence() throws Exception {
    var job = namedJob();
    var app = OpenApp.open(folder.resolve("settings"), clock, choosers());
    try (var uncaught = new Uncaught()) {
      app.openJob(job);
      app.press(KeyCode.F6);
      app.press(KeyCode.DIGIT3);
      var empty = Files.createDirectory(folder.resolve("empty"));
      assertThat(
              onInterface(
                  () ->
                      Dropped.on(
                          app.app().scene().getRoot().lookup(".hand-part"),
                          20,
                          DataFormat.FILES,
                          List.of(empty.toFile()))))
          .isTrue();
      app.awaitReading("#check-word", "no package");
      Files.delete(empty);
      app.press(OpenApp.SHORTCUT, KeyCode.ENTER);
      app.awaitReading("#check-word", "not known");
      next = empty;
      app.press(KeyCode.DIGIT4);
      app.press(KeyCode.P);
      app.await(() -> !app.reads("#returns-problem .notice-what").isEmpty());
      uncaught.assertNone();
    } finally {
      app.close();
    }
  }
}
