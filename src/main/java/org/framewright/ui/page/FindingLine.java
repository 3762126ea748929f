package org.framewright.ui.page;

import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.naming.Finding;
import org.framewright.naming.Severity;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/**
 * A finding on the screen: its severity as a word and as a stroke beside it (heavy, broken, or
 * thin), what is so, and its remedy.
 */
public final class FindingLine extends HBox {
  private final Texts texts;
  private final Region stroke = new Region();
  private final Label word = new Label();
  private final WrappedText message = new WrappedText("message");
  private final WrappedText remedy = new WrappedText("remedy");
  private boolean brief;

  /** A line without a finding. */
  public FindingLine(Texts texts) {
    this.texts = texts;
    getStyleClass().add("finding");
    stroke.getStyleClass().add("stroke");
    word.getStyleClass().add("word");
    word.setMinWidth(USE_PREF_SIZE);
    var said = new VBox(message, remedy);
    said.setMinWidth(0);
    HBox.setHgrow(said, Priority.ALWAYS);
    getChildren().addAll(stroke, word, said);
  }

  /** A line beside what it is about, so that its place in a file need not be said. */
  public static FindingLine beside(Texts texts, Finding finding) {
    var line = new FindingLine(texts);
    line.show(finding, texts.say(finding.said()));
    return line;
  }

  /** For a list of many: what is so, in two lines at most; its remedy stands elsewhere. */
  public static FindingLine brief(Texts texts) {
    var line = new FindingLine(texts);
    line.brief = true;
    line.message.setMostLines(2);
    return line;
  }

  /** For a list of many: what is so in so many lines at most, its remedy in one. */
  public static FindingLine low(Texts texts, int lines) {
    var line = new FindingLine(texts);
    line.message.setMostLines(lines);
    line.remedy.setMostLines(1);
    return line;
  }

  /** Shows a finding with its line in the file. */
  public void show(Finding finding) {
    var said = texts.say(finding.said());
    show(finding, finding.line() > 0 ? texts.get("naming.at", finding.line(), said) : said);
  }

  private void show(Finding finding, String said) {
    show(finding.severity(), said, finding.fix().map(texts::say).orElse(""));
  }

  /** Shows what is so, and its remedy. */
  public void show(Severity severity, String said, String what) {
    getStyleClass().setAll("finding", severity.word());
    word.setText(word(texts, severity));
    message.setText(said);
    remedy.setText(brief ? "" : what);
    remedy.setVisible(!remedy.getText().isEmpty());
    remedy.setManaged(!remedy.getText().isEmpty());
    setAccessibleText(
        texts.get("spoken.finding", word.getText(), message.getText(), remedy.getText()).strip());
  }

  private static String word(Texts texts, Severity severity) {
    return texts.get("naming.severity." + severity.word());
  }
}
