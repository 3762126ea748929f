package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;

import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.concurrent.Callable;
import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Region;
import org.framewright.job.Job;
import org.framewright.share.PlayedDevice;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Phones and tablets in the app, with a phone that the test plays. */
@Tag("slow")
class ShareDialogTest {
  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);
  private OpenApp opened;
  private Job job;

  @BeforeEach
  void openTheAppOnAFreshJob() throws Exception {
    job = FreshJob.in(folder, clock);
    opened = OpenApp.open(folder.resolve("settings"), clock, new Answers(folder));
    opened.openJob(job);
  }

  @AfterEach
  void closeTheApp() throws Exception {
    opened.close();
  }

  private void await(Callable<Boolean> condition) throws Exception {
    opened.await(condition);
  }

  private Node node(String selector) {
    return opened.app().scene().getRoot().lookup(selector);
  }

  private boolean isShown(String selector) {
    return node(selector) != null && node(selector).isVisible();
  }

  private URI code() throws Exception {
    await(() -> isShown("#share-show") && node("#share-show").isFocused());
    opened.press(KeyCode.SPACE);
    await(() -> isShown("#share-code"));
    return URI.create(opened.reads("#share-link"));
  }

  private void letIn() throws Exception {
    opened.press(OpenApp.SHORTCUT, KeyCode.T);
    await(() -> isShown("#share-turn") && node("#share-turn").isFocused());
    opened.press(KeyCode.SPACE);
  }

  @Test
  void aPhoneIsPairedSeenAndSentAwayByKeysAlone() throws Exception {
    letIn();
    var link = code();
    var picture = (Region) node("#share-code");
    assertThat(picture.getWidth()).isGreaterThan(239);
    try (var phone = PlayedDevice.paired(link, "Ines' phone")) {
      await(() -> opened.readsAll(".device-name").contains("Ines' phone"));
      await(() -> !isShown("#share-code"));
      phone.follow();
      opened.awaitReading("#devices", "1 device connected");

      opened.press(KeyCode.ESCAPE);
      phone.tick("002", "shot");
      await(() -> opened.app().session().view().get().state().of("002").state() == SetupState.SHOT);
      opened.awaitReading("#status", "Ines' phone: 002 is shot");

      opened.press(OpenApp.SHORTCUT, KeyCode.T);
      await(() -> isShown("#share-devices"));
      for (int i = 0; i < 8 && !opened.holdsTheKeys("#share-devices"); i++) {
        opened.press(KeyCode.TAB);
      }
      opened.pressUntil(() -> opened.reads("#share-unpair").contains("Ines' phone"), KeyCode.DOWN);
      opened.press(KeyCode.DELETE);
      await(() -> opened.readsAll(".device-name").isEmpty());
      opened.press(KeyCode.ESCAPE);
      opened.awaitReading("#devices", "no device connected");
    }
  }

  @Test
  void whatTheClientSaysStandsBesideTheSetupUntilSomebodyHasSeenIt() throws Exception {
    opened.press(KeyCode.ENTER);
    await(() -> opened.app().session().view().get().state().onSet().isPresent());
    letIn();
    try (var phone = PlayedDevice.paired(code(), "Ada's tablet")) {
      opened.press(KeyCode.ESCAPE);
      phone.comment("001", "collar lower", "Ada");
      opened.awaitReading(".comment-text", "collar lower");
      assertThat(opened.reads(".comment-who")).startsWith("new, Ada, ");
      opened.awaitReading("#status", "Ada says of 001: collar lower");

      opened.press(KeyCode.S);
      await(() -> opened.reads(".comment-who").startsWith("Ada, "));
      assertThat(opened.readsAll(".comment-text")).containsExactly("collar lower");
    }
  }

  @Test
  void aCommentOfOnesOwnIsWrittenAndUndone() throws Exception {
    opened.press(KeyCode.M);
    await(() -> isShown("#comment-text"));
    opened.type("the zip is stiff");
    opened.press(KeyCode.ENTER);
    await(() -> !opened.app().session().view().get().comments().isEmpty());
    opened.awaitReading(".comment-text", "the zip is stiff");
    opened.press(KeyCode.BACK_SPACE);
    await(() -> opened.app().session().view().get().comments().isEmpty());
    await(() -> opened.readsAll(".comment-text").isEmpty());
  }
}
