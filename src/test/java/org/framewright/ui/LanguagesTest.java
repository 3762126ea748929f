package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;
import static org.testfx.util.WaitForAsyncUtils.waitForFxEvents;

import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Labeled;
import javafx.scene.input.KeyCode;
import javafx.scene.text.Text;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.settings.Language;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The real app in German and in French: a piece of a day, by keys, as it reads on the screen. */
@Tag("slow")
class LanguagesTest {
  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);
  private OpenApp app;

  @AfterEach
  void closeTheApp() throws Exception {
    app.close();
  }

  private void openIn(Locale system) throws Exception {
    openIn(system, 1);
  }

  private void openIn(Locale system, double scale) throws Exception {
    var job = FreshJob.withFrames(folder, clock, 3);
    job.mark("003", SetupState.ON_SET, MarkDetails.NONE);
    app = OpenApp.open(folder.resolve("settings"), clock, new Answers(folder), system, scale);
    app.openJob(job);
  }

  @Test
  void aGermanDayIsToldInGerman() throws Exception {
    openIn(Locale.GERMANY);
    try (var uncaught = new Uncaught()) {
      app.awaitReading(".set-code", "003");
      app.press(KeyCode.SPACE);
      app.awaitReading(".set-code", "004");
      app.await(() -> app.reads("#status").contains(" ist am Set"));
      app.press(KeyCode.A);
      app.awaitReading(".dialog-title", "Wer gibt 004 frei?");
      app.type("Ines Vander");
      app.press(KeyCode.ENTER);
      app.await(() -> app.reads("#status").endsWith("ist freigegeben von Ines Vander."));
      app.press(OpenApp.SHORTCUT, KeyCode.Z);
      app.await(() -> app.reads("#status").startsWith("Zurückgenommen: "));
      app.press(KeyCode.F1);
      app.awaitReading(".help-heading", "Was hier möglich ist, mit seiner Taste");
      assertThat(app.readsAll(".key")).anyMatch(key -> key.contains("Leertaste"));
      app.press(KeyCode.ESCAPE);
      app.press(KeyCode.F3);
      app.awaitReading(".grid-title", "3 Aufnahmen, 0 in der Auswahl");
      app.press(KeyCode.F4);
      app.awaitReading("#rename", "3 Dateien umbenennen");
      app.press(KeyCode.F5);
      app.awaitReading("#copies-compare", "Vergleichen");
      app.press(KeyCode.F6);
      app.await(() -> app.reads("#hand-off-going").equals("Keine Aufnahme geht"));
      app.press(KeyCode.F7);
      app.await(() -> app.reads("#look-counts").contains("zu beurteilen"));
      app.press(KeyCode.F12);
      app.awaitReading("#start", "Der Name ist noch nicht vollständig");
      app.press(KeyCode.SHIFT, KeyCode.F2);
      app.await(() -> app.reads("#verdict").startsWith("Als schlüssig bewiesen"));
      uncaught.assertNone();
    }
  }

  @Test
  void aFrenchDayIsToldInFrench() throws Exception {
    openIn(Locale.FRANCE);
    try (var uncaught = new Uncaught()) {
      app.awaitReading(".set-code", "003");
      app.press(KeyCode.SPACE);
      app.awaitReading(".set-code", "004");
      app.press(KeyCode.A);
      app.awaitReading(".dialog-title", "Qui valide 004\u202f?");
      app.type("Ines Vander");
      app.press(KeyCode.ENTER);
      app.await(() -> app.reads("#status").endsWith("est validée par Ines Vander."));
      app.press(KeyCode.F3);
      app.awaitReading(".grid-title", "3 images, 0 retenue");
      app.press(KeyCode.F4);
      app.awaitReading("#rename", "Renommer 3 fichiers");
      uncaught.assertNone();
    }
  }

  @Test
  void theChosenLanguageIsSpokenFromTheNextStartOn() throws Exception {
    openIn(Locale.UK);
    app.press(OpenApp.SHORTCUT, KeyCode.COMMA);
    app.await(() -> app.exists("#language"));
    onInterface(
        () -> {
          if (app.app().scene().lookup("#language") instanceof ComboBox<?> languages) {
            languages
                .getSelectionModel()
                .select(List.of(Language.values()).indexOf(Language.FRENCH));
          }
          return app;
        });
    app.awaitReading("#status", "Language is now Français.");
    assertThat(app.readsAll(".settings-title")).contains("Appearance");
    app.close();
    app = OpenApp.again(folder.resolve("settings"), clock, new Answers(folder));
    app.press(OpenApp.SHORTCUT, KeyCode.COMMA);
    app.await(() -> app.readsAll(".settings-title").contains("Apparence"));
  }

  /** Keys and words on buttons, and the words beside fields; what people wrote may be cut. */
  private static final List<String> OURS =
      List.of(".field-word", ".setting-word", ".settings-title", ".key-cap", ".grid-title");

  @ParameterizedTest
  @CsvSource({"de-DE, 1", "de-DE, 1.3", "fr-FR, 1.3"})
  void noWordIsCutOnAnyPage(String language, double scale) throws Exception {
    openIn(Locale.forLanguageTag(language), scale);
    onInterface(
        () -> {
          app.app().stage().setWidth(1000);
          app.app().stage().setHeight(700);
          return app;
        });
    var cut = new TreeSet<String>();
    for (var page :
        List.of(
            KeyCode.F2, KeyCode.F3, KeyCode.F4, KeyCode.F5, KeyCode.F6, KeyCode.F7, KeyCode.F12)) {
      app.press(page);
      settle();
      cut.addAll(cutWords());
      if (page == KeyCode.F6) {
        for (var part : List.of(KeyCode.DIGIT2, KeyCode.DIGIT3, KeyCode.DIGIT4, KeyCode.DIGIT1)) {
          app.press(part);
          settle();
          cut.addAll(cutWords());
        }
      }
    }
    for (var page : List.of(KeyCode.F2, KeyCode.F3, KeyCode.F4)) {
      app.press(KeyCode.SHIFT, page);
      settle();
      cut.addAll(cutWords());
    }
    app.press(OpenApp.SHORTCUT, KeyCode.COMMA);
    settle();
    cut.addAll(cutWords());
    assertThat(cut).isEmpty();
  }

  private static void settle() throws Exception {
    Thread.sleep(400);
    waitForFxEvents();
  }

  private Set<String> cutWords() throws Exception {
    return onInterface(
        () -> {
          var root = app.app().scene().getRoot();
          root.applyCss();
          root.layout();
          var words = new ArrayList<Node>(root.lookupAll(".button"));
          words.addAll(root.lookupAll(".toggle-button"));
          OURS.forEach(ours -> words.addAll(root.lookupAll(ours)));
          var cut = new TreeSet<String>();
          for (var word : words) {
            if (word instanceof Labeled labeled
                && !"act-next".equals(labeled.getId())
                && isSeen(labeled)
                && isCut(labeled)) {
              cut.add(labeled.getText() + " (" + labeled.getId() + ")");
            }
          }
          return cut;
        });
  }

  private static boolean isSeen(Node node) {
    for (var at = node; at != null; at = at.getParent()) {
      if (!at.isVisible()) {
        return false;
      }
    }
    return true;
  }

  private static boolean isCut(Labeled labeled) {
    var right = labeled.localToScene(labeled.getLayoutBounds()).getMaxX();
    return right > labeled.getScene().getWidth() + 1
        || labeled.lookupAll(".text").stream()
            .filter(Text.class::isInstance)
            .map(Text.class::cast)
            .anyMatch(
                text ->
                    text.getText().endsWith("...")
                        || (text.getText().endsWith("\u2026")
                            && !labeled.getText().endsWith("\u2026")));
  }
}
