package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javafx.scene.control.TextArea;
import javafx.scene.input.KeyCode;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.command.Keys;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Help on the real app: by keys, over pages and over questions. */
@Tag("slow")
class HelpPageTest {
  private static final Pattern CODE = Pattern.compile("`([^`\n]+)`");
  private static final Pattern KEY =
      Pattern.compile(
          "(?:(?:Ctrl|Alt|Shift)\\+)*(?:[A-Z0-9/+,=-]|F\\d{1,2}|[A-Z][a-z]+(?: up| down)?)");

  /** Keys of every list, field and question, which are no commands of a page. */
  private static final Set<String> EVERYWHERE =
      Set.of("Enter", "Esc", "Tab", "Shift", "Ctrl", "Ctrl+C", "Page up", "Page down");

  @TempDir private Path folder;
  private OpenApp app;

  @BeforeEach
  void openTheApp() throws Exception {
    var clock = Clock.system(ZoneOffset.UTC);
    var job = FreshJob.withFrames(folder, clock, 2);
    job.mark("003", SetupState.ON_SET, MarkDetails.NONE);
    app = OpenApp.open(folder.resolve("settings"), clock, new Answers(folder));
    app.openJob(job);
    app.awaitReading(".set-code", "003");
  }

  @AfterEach
  void closeTheApp() throws Exception {
    app.close();
  }

  private void readsPage(String title) throws Exception {
    app.await(
        () ->
            app.app().scene().getRoot().lookupAll(".guide-h1").stream()
                .anyMatch(heading -> title.equals(heading.getAccessibleText())));
  }

  private boolean isAsked() throws Exception {
    return onInterface(() -> app.app().dialogs().open().get());
  }

  @Test
  void eachPageHasItsHelp() throws Exception {
    app.press(KeyCode.F1);
    readsPage("Run the list on set");
    app.press(KeyCode.ESCAPE);
    assertThat(isAsked()).isFalse();
    app.press(KeyCode.F5);
    app.press(KeyCode.F1);
    readsPage("Copy cards and clear them");
    app.press(KeyCode.ESCAPE);
    app.press(KeyCode.F6);
    app.press(KeyCode.DIGIT4);
    app.press(KeyCode.F1);
    readsPage("Take back what was retouched");
  }

  @Test
  void whatIsTypedIsFoundInTheGuideAndReadThere() throws Exception {
    app.press(KeyCode.F1);
    readsPage("Run the list on set");
    app.type("capacitors");
    readsPage("Safety on set");
    app.press(KeyCode.ALT, KeyCode.LEFT);
    readsPage("Run the list on set");
    app.press(KeyCode.ALT, KeyCode.RIGHT);
    readsPage("Safety on set");
  }

  @Test
  void aLinkIsFollowedByKeysAlone() throws Exception {
    app.press(KeyCode.F1);
    readsPage("Run the list on set");
    app.pressUntil(
        () -> app.app().scene().getFocusOwner().getStyleClass().contains("guide-link"),
        KeyCode.TAB);
    app.press(KeyCode.ENTER);
    readsPage("Sign-off and the client\u2019s screen");
  }

  @Test
  void helpOnAQuestionLeavesItAsItWas() throws Exception {
    app.press(KeyCode.A);
    app.await(this::isAsked);
    app.type("Ode");
    app.press(KeyCode.F1);
    readsPage("Sign-off and the client\u2019s screen");
    app.press(KeyCode.F1);
    app.press(KeyCode.ESCAPE);
    app.await(() -> app.reads(".dialog-title").startsWith("Who agrees to 003"));
    app.type("tte");
    app.press(KeyCode.ENTER);
    app.await(() -> app.reads("#status").contains("signed off by Odette"));
    assertThat(isAsked()).isFalse();
  }

  @Test
  void aboutTellsVersionAndLicences() throws Exception {
    app.press(OpenApp.SHORTCUT, KeyCode.SHIFT, KeyCode.F1);
    app.await(() -> app.exists("#about-parts"));
    assertThat(app.reads(".about-version")).startsWith("Framewright ");
    app.press(KeyCode.END);
    app.await(
        () ->
            app.app().scene().getRoot().lookup("#about-licence") instanceof TextArea licence
                && licence.getText().length() > 500
                && !licence.getText().contains("GNU"));
  }

  @Test
  void everyKeyThatTheGuideNamesIsAKeyOfTheAppAndEveryPageIsHelpedWith() throws Exception {
    var keys = new TreeSet<>(EVERYWHERE);
    var client = Stream.of(KeyCode.V, KeyCode.A, KeyCode.HOME).map(KeyCode::getName).toList();
    keys.addAll(client);
    onInterface(
        () -> {
          for (var command : app.app().everyCommand()) {
            keys.add(Keys.text(command.key(), app.app().texts()));
            command.otherKeys().forEach(key -> keys.add(Keys.text(key, app.app().texts())));
          }
          return keys;
        });
    var unknown = new ArrayList<String>();
    var text = new StringBuilder();
    for (var file : guide()) {
      var page = Files.readString(file);
      text.append(page);
      CODE.matcher(page)
          .results()
          .map(found -> found.group(1))
          .filter(code -> KEY.matcher(code).matches())
          .filter(code -> !keys.contains(written(code)))
          .forEach(code -> unknown.add(file.getFileName() + ": " + code));
    }
    assertThat(unknown).isEmpty();
    for (var page : onInterface(app.app()::pageIds)) {
      assertThat(text.toString()).as(page).containsPattern("<!-- help:[^>]*\\b" + page + "\\b");
    }
    for (var word : app.readsAll(".page-word")) {
      assertThat(text.toString()).contains("page " + word);
    }
  }

  /** As the app writes it. */
  private static String written(String key) {
    return key.replaceFirst("-$", "\u2212")
        .replaceFirst("Left$", name(KeyCode.LEFT))
        .replaceFirst("Right$", name(KeyCode.RIGHT))
        .replaceFirst("(?<!Page )Up$", name(KeyCode.UP))
        .replaceFirst("(?<!Page )Down$", name(KeyCode.DOWN));
  }

  private static String name(KeyCode code) {
    return Keys.plain(code).getDisplayText();
  }

  private static List<Path> guide() throws Exception {
    try (var files = Files.list(Path.of("docs/guide"))) {
      return files.filter(file -> file.toString().endsWith(".md")).sorted().toList();
    }
  }
}
