package org.framewright.ui.scan;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.shotlist.Setup;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.DialogSpec;
import org.framewright.ui.page.SetupChoice;
import org.framewright.ui.page.StepWords;

/** Says what came of a scan, and asks what only a person knows. */
public final class ScanQuestions {
  private static final int LONGEST = 60;
  private static final int LINES = 3;

  private final Desk desk;
  private final Texts texts;
  private final ScanModel model;

  public ScanQuestions(Desk desk, ScanModel model) {
    this.desk = desk;
    this.texts = desk.texts();
    this.model = model;
  }

  /** A text was scanned, and no question lies over the page. */
  public void hear(String typed) {
    switch (model.hear(typed)) {
      // The list answers what is done on it.
      case ScanModel.Heard.PutOnSet _ -> {}
      case ScanModel.Heard.OnSetAlready(var setup) ->
          desk.say(texts.get("scan.already", StepWords.called(setup)));
      case ScanModel.Heard.Several(var code, var setups) -> askWhich(code, setups);
      case ScanModel.Heard.Unknown(var code) -> askWhere(texts.get("scan.unknown.title"), code);
      case ScanModel.Heard.Unclear(var text, boolean canAdd) -> {
        if (canAdd) {
          desk.answer(texts.get("scan.unclear", shortened(text)), "app.addCode");
        } else {
          desk.say(texts.get("scan.unclear", shortened(text)));
        }
      }
      case ScanModel.Heard.StraySlate(var setup, boolean ofAnotherJob) ->
          desk.say(texts.get(ofAnotherJob ? "scan.otherJob" : "scan.notListed", setup));
      case ScanModel.Heard.NotYet(var text) -> desk.say(texts.get("scan.notYet", shortened(text)));
      case ScanModel.Heard.NoJob(var text) -> desk.say(texts.get("scan.noJob", shortened(text)));
    }
  }

  /** That a scan did nothing, because a question is open. */
  public String notNow(String typed) {
    return texts.get("scan.notNow", shortened(model.called(typed)));
  }

  /** That a scan did nothing, because the list takes so long to read. */
  public String notYet(String typed) {
    return texts.get("scan.notYet", shortened(model.called(typed)));
  }

  /** Asks to which setup the code that was scanned last belongs. */
  public void addLast() {
    model.last().ifPresent(code -> askWhere(texts.get("scan.add.title"), code));
  }

  private void askWhere(String title, String code) {
    var choice = SetupChoice.byTyping(model.setups(), texts, texts.get("scan.unknown.prompt"));
    desk.dialogs()
        .show(
            DialogSpec.asking(
                    title,
                    body(code, texts.get("scan.unknown.what"), choice.node()),
                    choice.focus(),
                    texts.get("scan.unknown.do"),
                    choice.ready(),
                    () -> choice.chosen().ifPresent(setup -> model.add(setup, code)))
                .about("scan"));
  }

  private void askWhich(String code, List<Setup> setups) {
    var choice = SetupChoice.among(setups, texts, texts.get("scan.several.what"));
    desk.dialogs()
        .show(
            DialogSpec.asking(
                    texts.get("scan.several.title", setups.size()),
                    body(code, texts.get("scan.several.what"), choice.node()),
                    choice.focus(),
                    texts.get("scan.several.do"),
                    choice.ready(),
                    () -> choice.chosen().ifPresent(model::choose))
                .about("scan"));
  }

  private static Node body(String code, String what, Node choice) {
    var large = WrappedText.of(shortened(code), "scan-code");
    large.setMostLines(LINES);
    large.setId("scan-code");
    var below = WrappedText.of(what);
    // The list gives way, not what is said.
    large.setMinHeight(Region.USE_PREF_SIZE);
    below.setMinHeight(Region.USE_PREF_SIZE);
    var body = new VBox(large, below, choice);
    body.getStyleClass().add("scan-form");
    VBox.setVgrow(choice, Priority.ALWAYS);
    return body;
  }

  private static String shortened(String text) {
    return text.codePointCount(0, text.length()) <= LONGEST
        ? text
        : text.substring(0, text.offsetByCodePoints(0, LONGEST)) + "\u2026";
  }
}
