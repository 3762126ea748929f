package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of settings on the real app, by keys and by mouse. */
@Tag("slow")
class SettingsPageTest {
  @TempDir private Path folder;
  private OpenApp app;

  @BeforeEach
  void openTheApp() throws Exception {
    app =
        OpenApp.open(folder.resolve("settings"), Clock.system(ZoneOffset.UTC), new Answers(folder));
    app.await(() -> app.exists("#field-day"));
    app.press(OpenApp.SHORTCUT, KeyCode.COMMA);
    app.await(() -> app.holdsTheKeys("#setting-studio-photographer"));
  }

  @AfterEach
  void closeTheApp() throws Exception {
    app.close();
  }

  @Test
  void whatIsWrittenIsAnsweredUndoneAndKept() throws Exception {
    app.type("Ines Vander");
    app.press(KeyCode.TAB);
    app.awaitReading("#status", "Photographer is now Ines Vander.");
    app.await(() -> app.holdsTheKeys("#setting-studio-position"));
    app.press(OpenApp.SHORTCUT, KeyCode.Z);
    app.awaitReading("#setting-studio-photographer", "");
    app.robot().clickOn("#offered");
    app.awaitReading("#setting-studio-photographer", "Ines Vander");
    app.press(KeyCode.ESCAPE);
    app.await(() -> app.exists("#field-day"));
    app.await(() -> Files.readString(folder.resolve("settings/preferences.json")).contains("Ines"));
  }

  @Test
  void eachSectionIsReachedByItsWordAndMarkedWhereTheKeysAre() throws Exception {
    app.robot().clickOn("#section-computer");
    app.await(() -> app.holdsTheKeys("#setting-computer-name"));
    app.robot().clickOn("#section-hours");
    app.await(() -> app.holdsTheKeys("#setting-from"));
    app.press(OpenApp.SHORTCUT, KeyCode.A);
    app.type("19:00");
    app.press(KeyCode.ENTER);
    app.awaitReading(".settings-sheet .message", "The day ends before it begins");
    assertThat(
            onInterface(
                () -> app.app().scene().getRoot().lookup("#section-hours").getPseudoClassStates()))
        .anyMatch(state -> state.getPseudoClassName().equals("selected"));
  }

  @Test
  void theLookIsChangedHereAndByItsKey() throws Exception {
    app.robot().clickOn("#section-looks");
    app.await(() -> app.holdsTheKeys("#theme-neutral"));
    app.robot().clickOn("#theme-sunlight");
    app.awaitReading("#status", "Look is now Sunlight.");
    app.press(KeyCode.F9);
    app.await(
        () ->
            app.app().scene().getRoot().lookup("#theme-neutral").getPseudoClassStates().stream()
                .anyMatch(state -> state.getPseudoClassName().equals("selected")));
    app.robot().clickOn("#larger");
    app.awaitReading("#size", "110%");
  }

  @Test
  void aSettingIsFoundFromAnywhere() throws Exception {
    app.press(KeyCode.ESCAPE);
    app.await(() -> app.exists("#field-day"));
    app.press(OpenApp.SHORTCUT, KeyCode.F);
    app.type("credit");
    app.await(() -> !app.readsAll(".found-row .label").isEmpty());
    app.press(KeyCode.ENTER);
    app.await(() -> app.holdsTheKeys("#setting-studio-credit"));
  }
}
