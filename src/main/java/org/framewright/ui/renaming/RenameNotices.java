package org.framewright.ui.renaming;

import java.time.Instant;
import java.util.function.Function;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Button;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.renaming.Interrupted;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** Above the plan: what a crash left behind, and how the last piece of work ended. */
final class RenameNotices extends VBox {
  private final RenamesModel model;
  private final Texts texts;
  private final Function<Instant, String> time;
  private final Subscription following;

  RenameNotices(RenamesModel model, Texts texts, Function<Instant, String> time) {
    this.model = model;
    this.texts = texts;
    this.time = time;
    getStyleClass().add("notices");
    following =
        Subscription.combine(
            model.interrupted().subscribe(_ -> show()), model.result().subscribe(_ -> show()));
  }

  void dispose() {
    following.unsubscribe();
  }

  private void show() {
    getChildren().clear();
    model.interrupted().get().ifPresent(left -> getChildren().add(recovery(left)));
    model.result().get().ifPresent(result -> getChildren().add(notice(result)));
    setVisible(!getChildren().isEmpty());
    setManaged(isVisible());
  }

  private Region recovery(Interrupted left) {
    var what =
        WrappedText.of(
            texts.get("renaming.interrupted", time.apply(left.at()), left.renames()),
            "notice-what");
    var safe = WrappedText.of(texts.get("renaming.interruptedSafe"));
    var said = new VBox(what, safe);
    said.setMinWidth(0);
    HBox.setHgrow(said, Priority.ALWAYS);
    var recover = new Button(texts.get("renaming.recover"));
    recover.setId("recover");
    recover.getStyleClass().add("does-it");
    recover.setMinWidth(Region.USE_PREF_SIZE);
    recover.setOnAction(_ -> model.recover());
    recover.disableProperty().bind(model.idle().not());
    var box = new HBox(said, recover);
    box.setId("interrupted");
    box.getStyleClass().addAll("paper-sheet", "notice", "needs");
    return box;
  }

  private Region notice(RenameResult result) {
    var said = new VBox();
    said.setMinWidth(0);
    HBox.setHgrow(said, Priority.ALWAYS);
    said.getChildren().add(WrappedText.of(result.what(), "notice-what"));
    if (!result.remedy().isEmpty()) {
      said.getChildren().add(WrappedText.of(result.remedy(), "remedy"));
    }
    for (var file : result.files()) {
      said.getChildren()
          .add(
              WrappedText.of(
                  texts
                      .get(
                          "renaming.file",
                          file.path().toString(),
                          texts.sentence(file.problem()),
                          texts.remedy(file.problem()))
                      .strip(),
                  "code"));
    }
    var close = new Button(texts.get("dialog.close"));
    close.setMinWidth(Region.USE_PREF_SIZE);
    close.setOnAction(_ -> model.putAway());
    var box = new HBox(said, close);
    box.setId("rename-result");
    box.setAccessibleRole(AccessibleRole.TEXT);
    box.setAccessibleText(result.what() + " " + result.remedy());
    box.getStyleClass().addAll("paper-sheet", "notice", result.needsAPerson() ? "needs" : "fine");
    return box;
  }
}
