package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;

import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;
import javafx.event.Event;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Labeled;
import javafx.scene.input.Clipboard;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The client's screen and the list beside it, on the real app. */
@Tag("slow")
@Timeout(180)
class ClientScreenTest {
  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);
  private OpenApp app;
  private Job job;

  @BeforeEach
  void openTheListWithFramesOfASetup() throws Exception {
    job = FreshJob.withFrames(folder, clock, 3);
    job.mark("002", SetupState.SIGNED_OFF, MarkDetails.by("Odette Kvist"));
    // The log has milliseconds: at the same one nobody would be the last.
    TimeUnit.MILLISECONDS.sleep(2);
    job.mark("003", SetupState.SIGNED_OFF, MarkDetails.by("Bram de Wit"));
    app = OpenApp.open(folder.resolve("settings"), clock, new Answers(folder));
    app.openJob(job);
    app.await(() -> app.reads(".set-code").equals("001"));
    app.await(() -> !lastName().isEmpty());
  }

  @AfterEach
  void closeTheApp() throws Exception {
    app.close();
  }

  private String lastName() throws Exception {
    return app.reads(".set-frame");
  }

  private void openTheClientsScreen() throws Exception {
    app.press(KeyCode.SHIFT, KeyCode.C);
    app.await(() -> app.app().clientScene() != null && client().getWindow().isShowing());
    app.await(() -> words("#client-print-0").equals("front 3"));
  }

  private Scene client() {
    return app.app().clientScene();
  }

  private void keysToTheClient() throws Exception {
    Platform.runLater(() -> client().getWindow().requestFocus());
    app.await(() -> client().getWindow().isFocused());
    app.robot().targetWindow(client().getWindow());
  }

  /** The headless toolkit gives the keys back to no window that is below another. */
  private void pressOnTheList(KeyCode key, boolean shift) throws Exception {
    onInterface(
        () -> {
          var list = app.app().scene().getRoot().lookup("#setups");
          for (var type : List.of(KeyEvent.KEY_PRESSED, KeyEvent.KEY_RELEASED)) {
            Event.fireEvent(list, new KeyEvent(type, "", "", key, shift, false, false, false));
          }
          return key;
        });
  }

  private String words(String print) {
    var node = client().getRoot().lookup(print);
    return node == null ? "" : String.valueOf(node.getAccessibleText());
  }

  /** The words under the frame that the client looks at. */
  private String looked() {
    return List.of(0, 1, 2).stream()
        .map(i -> client().getRoot().lookup("#client-print-" + i))
        .filter(
            print ->
                print.getPseudoClassStates().stream()
                    .anyMatch(state -> state.getPseudoClassName().equals("looked-at")))
        .map(Node::getAccessibleText)
        .findFirst()
        .orElse("");
  }

  private boolean shows(String selector) {
    var node = client().getRoot().lookup(selector);
    return node != null && node.isVisible();
  }

  /** The headless toolkit brings no click to a window above another. */
  private static void click(Node node) {
    node.fireEvent(
        new MouseEvent(
            MouseEvent.MOUSE_CLICKED,
            1,
            1,
            1,
            1,
            MouseButton.PRIMARY,
            1,
            false,
            false,
            false,
            false,
            false,
            false,
            false,
            true,
            false,
            true,
            null));
  }

  @Test
  void oneGoesBackToAFrameOnTheClientsScreenAndFromTheList() throws Exception {
    openTheClientsScreen();
    assertThat(onInterface(this::looked)).isEqualTo("front 3");
    assertThat(onInterface(() -> shows(".client-newest"))).isTrue();
    keysToTheClient();
    app.press(KeyCode.RIGHT);
    app.await(() -> looked().equals("front 2"));
    assertThat(onInterface(() -> shows("#client-back"))).isTrue();
    assertThat(onInterface(() -> shows(".client-newest"))).isFalse();
    app.press(KeyCode.HOME);
    app.await(() -> looked().equals("front 3"));
    onInterface(
        () -> {
          click(client().getRoot().lookup("#client-print-2"));
          return looked();
        });
    app.await(() -> looked().equals("front 1"));
    pressOnTheList(KeyCode.RIGHT, true);
    app.await(() -> looked().equals("front 2"));
    pressOnTheList(KeyCode.HOME, true);
    app.await(() -> looked().equals("front 3"));
  }

  @Test
  void thePictureAloneIsLeftFromEitherWindow() throws Exception {
    openTheClientsScreen();
    app.press(KeyCode.V);
    app.await(() -> !shows(".client-column") && !shows(".client-strip"));
    assertThat(app.exists(".rest")).as("the list stays").isTrue();
    keysToTheClient();
    app.press(KeyCode.V);
    app.await(() -> shows(".client-column") && shows(".client-strip"));
    app.press(KeyCode.SHIFT, KeyCode.C);
    app.await(() -> client() == null);
    app.robot().targetWindow(app.app().stage());
    app.press(KeyCode.V);
    app.await(() -> !app.exists(".rest"));
    app.press(KeyCode.V);
    app.await(() -> app.exists(".rest"));
  }

  @Test
  void theClientAgreesByADigitWhileTheListGoesOn() throws Exception {
    openTheClientsScreen();
    keysToTheClient();
    app.press(KeyCode.A);
    app.await(() -> shows("#agrees-1"));
    assertThat(onInterface(() -> ((Labeled) client().getRoot().lookup("#agrees-1")).getText()))
        .isEqualTo("Bram de Wit");
    pressOnTheList(KeyCode.SPACE, false);
    app.await(() -> app.reads(".set-code").equals("004"));
    assertThat(onInterface(() -> ((Labeled) client().getRoot().lookup(".client-code")).getText()))
        .as("what they are asked about stays")
        .isEqualTo("001");
    keysToTheClient();
    app.press(KeyCode.DIGIT2);
    app.press(KeyCode.ENTER);
    app.await(
        () ->
            app.app()
                .session()
                .view()
                .get()
                .state()
                .of("001")
                .signedOffBy()
                .equals(Optional.of("Odette Kvist")));
    app.await(() -> ((Labeled) client().getRoot().lookup(".client-code")).getText().equals("004"));
  }

  @Test
  void theQuestionOnTheListLiesOnItsPaperAndTakesNoComputersName() throws Exception {
    app.press(KeyCode.HOME);
    app.press(KeyCode.A);
    app.await(() -> app.app().dialogs().open().get());
    var apart =
        onInterface(
            () -> {
              var root = app.app().scene().getRoot();
              var paper = root.lookup(".dialog");
              var picture = root.lookup(".set-pictures");
              return paper.localToScene(paper.getLayoutBounds()).getMinX()
                  >= picture.localToScene(picture.getLayoutBounds()).getMaxX();
            });
    assertThat(apart).as("the paper lies beside the picture").isTrue();
    app.type(job.station());
    app.awaitReading(".question .warning", "This is the name of a computer. Who agrees?");
    app.press(KeyCode.ENTER);
    assertThat(app.app().dialogs().open().get()).isTrue();
    app.press(KeyCode.ESCAPE);
    app.await(() -> !app.app().dialogs().open().get());
  }

  @Test
  void theNextNameIsCopiedAndTheFrameShownInTheFileManager() throws Exception {
    app.await(() -> !app.app().scene().getRoot().lookup("#copy-next").isDisabled());
    app.press(KeyCode.C);
    app.await(() -> app.reads("#status").startsWith("Copied: "));
    var name = onInterface(() -> Clipboard.getSystemClipboard().getString());
    assertThat(name).matches("\\d{8}_KV[A-Z]+_001_F_0004");
    assertThat(app.reads("#status"))
        .isEqualTo("Copied: " + name + ", the name of the next frame of 001 front.");
    app.press(KeyCode.O);
    app.await(() -> app.reads("#status").startsWith("Shown in the file manager: "));
    assertThat(app.reads("#status")).endsWith(lastName());
  }
}
