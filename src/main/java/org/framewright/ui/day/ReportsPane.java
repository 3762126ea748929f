package org.framewright.ui.day;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.report.ReportFiles;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.task.Running;

/** The reports that can be written, how far one is, and what became of it. */
final class ReportsPane extends VBox {
  private final Texts texts;
  private final FlowPane single = new FlowPane();
  private final Region evening;
  private final VBox work = new VBox();
  private final Label what = new Label();
  private final ProgressBar bar = new ProgressBar();
  private final VBox result = new VBox();
  private final WrappedText said = new WrappedText("report-said");
  private final WrappedText remedy = new WrappedText("quiet");
  private Subscription progress = Subscription.EMPTY;

  /**
   * @param kinds a command for each kind of report
   */
  ReportsPane(Texts texts, Command evening, List<Command> kinds, Command stop, Command show) {
    this.texts = texts;
    for (var kind : kinds) {
      var button = CommandControls.button(kind, texts.get("day.act." + kind.word()), texts);
      button.setId("day-" + kind.word());
      button.getStyleClass().add("act");
      button.disableProperty().bind(kind.enabled().map(can -> !can));
      single.getChildren().add(button);
    }
    single.getStyleClass().add("report-kinds");
    single.setMinHeight(Region.USE_PREF_SIZE);
    var main = CommandControls.button(evening, texts.get("day.act.evening"), texts);
    main.setId("day-evening");
    main.getStyleClass().addAll("act", "does-it");
    main.setMaxWidth(Double.MAX_VALUE);
    main.disableProperty().bind(evening.enabled().map(can -> !can));
    this.evening = main;
    what.getStyleClass().add("field-word");
    what.setMinWidth(0);
    what.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(what, Priority.ALWAYS);
    bar.setMaxWidth(Double.MAX_VALUE);
    var stopping = CommandControls.button(stop, texts.get("day.act.stop"), texts);
    stopping.setId("day-stop");
    stopping.getStyleClass().add("act");
    var line = new HBox(what, stopping);
    line.getStyleClass().add("in-line");
    work.getStyleClass().add("report-work");
    work.getChildren().addAll(line, bar);
    said.setId("report-said");
    said.setMinWidth(0);
    HBox.setHgrow(said, Priority.ALWAYS);
    var shows = CommandControls.button(show, texts.get("day.act.showReport"), texts);
    shows.setId("day-showReport");
    shows.getStyleClass().add("slight");
    shows.visibleProperty().bind(show.enabled());
    shows.managedProperty().bind(show.enabled());
    var became = new HBox(said, shows);
    became.getStyleClass().add("in-line");
    result.getChildren().addAll(became, remedy);
    result.getStyleClass().add("report-result");
    getStyleClass().add("reports-part");
    getChildren().addAll(result, work, single, this.evening);
    setMinHeight(Region.USE_PREF_SIZE);
    show(Optional.empty());
    showEnd(Optional.empty());
  }

  /** Shows a piece of work in the place of what begins one. */
  void show(Optional<Running> running) {
    progress.unsubscribe();
    shown(work, running.isPresent());
    shown(single, running.isEmpty());
    shown(evening, running.isEmpty());
    what.setText(running.map(Running::title).orElse(""));
    bar.setAccessibleText(what.getText());
    // No bar that runs to and fro: nothing moves by itself.
    progress =
        running
            .map(
                task ->
                    task.progress()
                        .subscribe(part -> bar.setProgress(Math.max(0, part.doubleValue()))))
            .orElse(Subscription.EMPTY);
  }

  /** Shows what became of it. */
  void showEnd(Optional<ReportFiles.Outcome> ended) {
    shown(result, ended.isPresent());
    ended.ifPresent(
        end -> {
          said.setText(said(end, texts));
          said.setStyleClasses("report-said", end.problem().isPresent() ? "needs" : "fine");
          remedy.setText(end.problem().map(texts::remedy).orElse(""));
          shown(remedy, !remedy.getText().isEmpty());
        });
  }

  /** What became of it, in a sentence. */
  static String said(ReportFiles.Outcome end, Texts texts) {
    if (end.isStopped()) {
      return texts.get("day.stopped");
    }
    var written =
        end.files().isEmpty()
            ? ""
            : texts.get("day.written", end.files().size(), place(end).toString());
    return end.problem()
        .map(texts::sentence)
        .map(problem -> written.isEmpty() ? problem : written + "\n" + problem)
        .orElse(written);
  }

  /** The file, or the folder of several. */
  static Path place(ReportFiles.Outcome end) {
    var first = end.files().getFirst();
    return end.files().size() > 1 && first.getParent() != null ? first.getParent() : first;
  }

  private static void shown(Region part, boolean now) {
    part.setVisible(now);
    part.setManaged(now);
  }

  void dispose() {
    progress.unsubscribe();
  }
}
