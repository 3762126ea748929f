package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;

import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page on which a job is started, by keys. */
@Tag("slow")
class StartPageTest {
  @TempDir private Path folder;
  private OpenApp app;

  @BeforeEach
  void openTheApp() throws Exception {
    app =
        OpenApp.open(
            folder.resolve("settings"),
            Clock.system(ZoneOffset.UTC),
            new Answers(folder, Path.of("templates/portraits.yaml")));
    app.await(() -> app.exists("#field-day"));
    app.pressUntil(() -> app.holdsTheKeys("#convention"), KeyCode.SHIFT, KeyCode.TAB);
  }

  @AfterEach
  void closeTheApp() throws Exception {
    app.close();
  }

  @Test
  void theKeysStayWithTheConventionsWhileTheFormOfEachIsMade() throws Exception {
    var passed = new ArrayList<String>();
    while (!passed.contains(app.reads("#convention"))) {
      passed.add(app.reads("#convention"));
      var row = dayField();
      app.press(KeyCode.DOWN);
      if (!passed.contains(app.reads("#convention"))) {
        app.await(() -> !row.equals(dayField()));
      }
      assertThat(app.holdsTheKeys("#convention")).as("after %s", passed).isTrue();
    }
    assertThat(passed).hasSizeGreaterThan(5);
  }

  /** Made anew with each form. */
  private Node dayField() throws Exception {
    return onInterface(() -> app.app().scene().getRoot().lookup("#field-day"));
  }

  @Test
  void theKeysStayWithAFieldThatTheNextConventionHasToo() throws Exception {
    app.pressUntil(() -> app.holdsTheKeys("#field-client"), KeyCode.TAB);
    app.type("KV");
    app.press(OpenApp.SHORTCUT, KeyCode.L);
    app.awaitReading("#convention", "Portraits");
    app.await(() -> app.holdsTheKeys("#field-client"));
    app.type("O");
    assertThat(app.reads("#field-client")).isEqualTo("KVO");
  }
}
