package org.framewright.ui.handoff;

import java.util.Optional;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** A hand-off that is done: which packages lie where, and what one tells the retoucher. */
final class HandedPane extends VBox {
  private final Texts texts;
  private final VerdictPlate plate = new VerdictPlate("handed-word");
  private final RemarkBox why = new RemarkBox();
  private final VBox packages = new VBox();
  private final WrappedText sentence = new WrappedText("sentence");
  private final VBox remarks = new VBox();

  HandedPane(Texts texts, Command say, Command show, Command next) {
    this.texts = texts;
    packages.getStyleClass().add("handed-packages");
    remarks.getStyleClass().add("handed-packages");
    var inside = new VBox(packages, remarks);
    inside.getStyleClass().add("handed-inside");
    var scroll = new ScrollPane(inside);
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    sentence.setId("handed-sentence");
    sentence.setMinWidth(0);
    HBox.setHgrow(sentence, Priority.ALWAYS);
    var copy = CommandControls.button(say, texts.get("handoff.act.say"), texts);
    copy.setId("handed-say");
    copy.getStyleClass().addAll("act", "does-it");
    var shows = CommandControls.button(show, texts.get("handoff.act.show"), texts);
    shows.getStyleClass().add("act");
    var goesOn = CommandControls.button(next, texts.get("handoff.act.next"), texts);
    goesOn.setId("handed-next");
    goesOn.getStyleClass().add("act");
    var row = new FlowPane(copy, shows, goesOn);
    row.getStyleClass().addAll("in-lines", "handed-actions");
    row.setMinHeight(Region.USE_PREF_SIZE);
    var saying = new VBox(sentence);
    saying.getStyleClass().add("say-line");
    saying.setMinHeight(Region.USE_PREF_SIZE);
    getChildren().addAll(plate, why, scroll, saying, row);
    getStyleClass().addAll("paper-sheet", "handed-sheet");
  }

  void show(Ended ended) {
    if (ended.isWhole()) {
      plate.show(Verdict.WHOLE, texts.get("handoff.handed.word", ended.packages().size()));
    } else {
      plate.show(Verdict.NOT_WHOLE, texts.get("handoff.handed.some"));
    }
    why.show(Optional.of(ended.why()));
    packages.getChildren().setAll(ended.packages().stream().map(this::lines).toList());
    remarks
        .getChildren()
        .setAll(ended.remarks().stream().map(one -> WrappedText.of(one, "quiet")).toList());
    sentence.setText(ended.sentence());
  }

  private Region lines(Ended.Handed one) {
    var box =
        new VBox(
            WrappedText.of(
                texts.get(
                    "handoff.handed.what",
                    String.valueOf(one.number()),
                    one.selects(),
                    one.files(),
                    texts.formats().size(one.bytes())),
                "handed-what"));
    box.getStyleClass().add("handed-package");
    return box;
  }
}
