package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Labeled;
import javafx.scene.input.KeyCode;
import org.framewright.job.Job;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A client's list is looked at and taken on the real page, by keys and with the mouse. */
@Tag("slow")
class ListImportPageTest {
  private static final String UNKNOWN =
      "Wyróżnik;Treść;Cena\n101;Płaszcz;12\n102;Rok;13\n103;Szal;9\n";

  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);
  private Job job;
  private OpenApp app;

  @AfterEach
  void closeTheApp() throws Exception {
    app.close();
  }

  private Path list(String name, String text) throws Exception {
    return Files.writeString(folder.resolve(name), text, StandardCharsets.UTF_8);
  }

  private void open(Path... lists) throws Exception {
    job = FreshJob.in(folder, clock);
    app = OpenApp.open(folder.resolve("settings"), clock, new Answers(folder, lists));
    app.openJob(job);
    app.await(() -> !app.readsAll(".setup-row .line-code").isEmpty());
  }

  private List<String> codes() throws Exception {
    return Job.open(job.folder(), clock).shotList().codes();
  }

  private List<String> uses() throws Exception {
    return app.readsAll(".menu-button.column-use");
  }

  private void click(String selector) {
    app.robot().clickOn(selector);
  }

  @Test
  void aListOfUnknownHeadingsIsReadAndTakenByKeysAlone() throws Exception {
    open(list("list.csv", UNKNOWN));
    try (var uncaught = new Uncaught()) {
      app.press(KeyCode.L);
      app.awaitReading("#list-verdict", "It cannot be taken as it is: 1 thing is wrong.");
      app.await(() -> app.holdsTheKeys("#columns"));
      assertThat(app.readsAll(".column-row .column-word")).contains("Wyróżnik", "Treść", "Cena");
      assertThat(app.readsAll(".column-row .column-cell")).contains("Płaszcz", "Rok", "Szal");
      // The first entry of the menu is the setup, the second the title.
      app.press(KeyCode.ENTER);
      app.press(KeyCode.DOWN);
      app.press(KeyCode.ENTER);
      app.await(() -> uses().getFirst().equals("Look (setup)"));
      app.press(KeyCode.DOWN);
      app.press(KeyCode.ENTER);
      app.press(KeyCode.DOWN);
      app.press(KeyCode.DOWN);
      app.press(KeyCode.ENTER);
      app.await(() -> uses().get(1).equals("title"));
      // Escape closes the menu and not the page.
      app.press(KeyCode.SPACE);
      app.press(KeyCode.ESCAPE);
      assertThat(app.exists("#take-list")).isTrue();
      app.press(KeyCode.ALT, KeyCode.DIGIT2);
      app.await(() -> app.holdsTheKeys("#results"));
      app.await(() -> app.reads(".difference .line-code").equals("101"));
      assertThat(codes()).as("nothing is written yet").doesNotContain("101").contains("001");
      app.press(KeyCode.DOWN);
      app.press(KeyCode.SPACE);
      app.press(OpenApp.SHORTCUT, KeyCode.ENTER);
      app.await(() -> app.reads("#status").endsWith("of the new list taken in."));
      assertThat(codes()).containsExactly("101", "103");
      uncaught.assertNone();
    }
  }

  @Test
  void aSheetAColumnAndSetupsAreChosenWithTheMouse() throws Exception {
    open(Path.of("src/test/resources/lists/sheets.xlsx"));
    try (var uncaught = new Uncaught()) {
      click("#new-list");
      app.await(() -> app.reads("#choose-sheet").equals("Tops"));
      click("#choose-sheet");
      click("Bottoms");
      app.await(() -> app.reads(".difference .line-code").equals("11"));
      click("#step-columns");
      app.await(() -> !uses().isEmpty());
      var title = uses().indexOf("title");
      app.robot().clickOn(part(".menu-button.column-use", title));
      click("not used");
      app.await(() -> uses().get(title).equals("not used"));
      click("#step-results");
      click("#all");
      app.awaitReading("#take-list", "Nothing to take");
      app.robot().clickOn(part(".difference .check-box", 0));
      app.awaitReading("#take-list", "Take 1 setup");
      click("#take-list");
      app.awaitReading("#status", "1 setup of the new list taken in.");
      var setup = Job.open(job.folder(), clock).shotList().setup("11").orElseThrow();
      assertThat(setup.title()).isEmpty();
      assertThat(codes()).as("what was not ticked stays").contains("001", "040");
      uncaught.assertNone();
    }
  }

  /** The parts of the lines that are shown, from top to bottom. */
  private Node part(String selector, int place) throws Exception {
    return OnInterface.onInterface(
        () ->
            app.app().scene().getRoot().lookupAll(selector).stream()
                .filter(node -> isShown(node) && node instanceof Labeled)
                .sorted(Comparator.comparingDouble((Node node) -> node.localToScene(0, 0).getY()))
                .skip(place)
                .findFirst()
                .orElseThrow());
  }

  private static boolean isShown(Node node) {
    for (var at = node; at != null; at = at.getParent()) {
      if (!at.isVisible()) {
        return false;
      }
    }
    return true;
  }

  @Test
  void aListThatIsLeftChangesNothingAndIsThereAgainUntilThen() throws Exception {
    open(Path.of("samples/shot-list-noon.csv"), Path.of("src/test/resources/lists/sizes.csv"));
    var before = codes();
    app.press(KeyCode.L);
    app.awaitReading("#take-list", "Take 6 setups");
    app.press(KeyCode.F3);
    app.await(() -> !app.exists("#take-list"));
    app.press(KeyCode.F2);
    app.await(() -> app.exists(".setup-row"));
    app.press(KeyCode.L);
    app.awaitReading("#take-list", "Take 6 setups");
    app.press(OpenApp.SHORTCUT, KeyCode.O);
    app.await(() -> app.reads("#list-verdict").startsWith("It cannot be taken as it is"));
    assertThat(app.readsAll(".way")).anyMatch(text -> text.contains("one setup for each"));
    app.press(KeyCode.ESCAPE);
    app.awaitReading("#status", "The list was not taken; the job is as it was.");
    app.await(() -> app.exists(".setup-row"));
    assertThat(codes()).isEqualTo(before);
  }

  @Test
  void manyColumnsInManyScriptsAreShownInEveryWidth() throws Exception {
    var lines = new ArrayList<String>();
    for (var line = 0; line <= 40; line++) {
      var row = new ArrayList<String>();
      for (var column = 0; column < 30; column++) {
        var title = List.of("اسم القطعة (مقاس) ", "品名・色番 ", "שם הפריט ", "สี ").get(column % 4);
        row.add(column == 0 ? (line == 0 ? "Look" : "" + (100 + line)) : title + column);
      }
      lines.add(String.join(";", row));
    }
    open(list("قائمة.csv", String.join("\n", lines)));
    try (var uncaught = new Uncaught()) {
      app.press(KeyCode.L);
      app.await(() -> app.reads("#take-list").startsWith("Take"));
      app.press(KeyCode.ALT, KeyCode.DIGIT1);
      for (var width = 730; width <= 990; width += 130) {
        var wide = width;
        OnInterface.onInterface(
            () -> {
              app.app().stage().setWidth(wide);
              return wide;
            });
        app.press(KeyCode.PAGE_DOWN);
        assertThat(app.readsAll(".column-row .column-cell").size()).isGreaterThanOrEqualTo(5 * 5);
      }
      for (var i = 0; i < 3; i++) {
        app.press(OpenApp.SHORTCUT, KeyCode.EQUALS);
      }
      app.press(KeyCode.ALT, KeyCode.DIGIT2);
      app.press(KeyCode.PAGE_DOWN);
      uncaught.assertNone();
    }
  }
}
