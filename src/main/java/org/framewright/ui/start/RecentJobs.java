package org.framewright.ui.start;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.function.Consumer;
import javafx.collections.ListChangeListener;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.Tooltip;
import javafx.scene.image.ImageView;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import org.framewright.ui.look.CellBox;
import org.framewright.ui.look.CellRow;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.StateRuler;
import org.framewright.ui.look.Texts;
import org.framewright.ui.start.RecentJob.Found;

/**
 * The jobs opened lately, each with its last picture, its day, how far it is and where it lies;
 * Enter or two clicks open one.
 */
final class RecentJobs extends ListView<RecentJob> {
  private final RecentJobsModel model;
  private final Texts texts;
  private final ZoneId zone;
  private final Consumer<Path> open;
  private final ListChangeListener<RecentJob> changes = _ -> choose();

  RecentJobs(RecentJobsModel model, Texts texts, ZoneId zone, Consumer<Path> open) {
    this.model = model;
    this.texts = texts;
    this.zone = zone;
    this.open = open;
    setId("recent-jobs");
    setItems(model.jobs());
    setCellFactory(_ -> new JobCell());
    getStyleClass().addAll("on-table", "recent-jobs");
    setAccessibleText(texts.get("start.openTitle"));
    model.jobs().addListener(changes);
    choose();
    setOnKeyPressed(
        event -> {
          if (event.getCode() == KeyCode.ENTER) {
            openChosen();
            event.consume();
          }
        });
    setOnMouseClicked(
        event -> {
          if (event.getClickCount() == 2) {
            openChosen();
          }
        });
  }

  /** Enter opens the newest unless another is chosen. */
  private void choose() {
    if (getSelectionModel().isEmpty() && !model.jobs().isEmpty()) {
      getSelectionModel().selectFirst();
    }
  }

  private void openChosen() {
    var job = getSelectionModel().getSelectedItem();
    if (job != null) {
      open.accept(job.folder());
    }
  }

  void dispose() {
    model.jobs().removeListener(changes);
    setItems(null);
  }

  private String day(Instant at) {
    return texts.formats().day(LocalDate.ofInstant(at, zone));
  }

  private String standing(Found found) {
    return switch (found) {
      case Found.NotYet _ -> "";
      case Found.Gone _ -> texts.get("start.job.gone");
      case Found.Unreadable(var problem) -> texts.what(problem);
      case Found.Read(var progress) when progress.states().isEmpty() ->
          texts.get("start.job.noList");
      case Found.Read(var progress) ->
          texts.get("board.agreed", progress.signedOff(), progress.states().size());
    };
  }

  /** A job in three lines beside its last picture. */
  private final class JobCell extends LineCell<RecentJob> {
    private final ImageView picture = new ImageView();
    private final StackPane print = new StackPane(picture);
    private final Label name = new Label();
    private final Label day = new Label();
    private final StateRuler ruler = new StateRuler();
    private final Label standing = new Label();
    private final Label where = new Label();
    private final CellRow box;

    JobCell() {
      print.getStyleClass().add("job-print");
      picture.setPreserveRatio(true);
      picture.fitWidthProperty().bind(print.widthProperty());
      picture.fitHeightProperty().bind(print.heightProperty());
      name.getStyleClass().add("job-name");
      name.setMaxWidth(Double.MAX_VALUE);
      name.setMinWidth(0);
      HBox.setHgrow(name, Priority.ALWAYS);
      day.getStyleClass().add("job-where");
      day.setMinWidth(Region.USE_PREF_SIZE);
      var first = new HBox(name, day);
      first.getStyleClass().add("job-line");
      ruler.setMinWidth(0);
      HBox.setHgrow(ruler, Priority.SOMETIMES);
      standing.setMinWidth(0);
      var second = new HBox(ruler, standing);
      second.getStyleClass().add("job-line");
      where.getStyleClass().add("job-where");
      where.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
      var lines = new CellBox(first, second, where);
      lines.getStyleClass().add("job-lines");
      HBox.setHgrow(lines, Priority.ALWAYS);
      box = new CellRow(print, lines);
      box.getStyleClass().add("job-box");
    }

    @Override
    protected void showLine(RecentJob job) {
      picture.setImage(job.picture().map(FramePictures::image).orElse(null));
      name.setText(String.valueOf(job.folder().getFileName()));
      where.setText(String.valueOf(job.folder().getParent()));
      var said = standing(job.found());
      standing.setText(said);
      standing.getStyleClass().remove("needs");
      if (!(job.found() instanceof Found.Read || job.found() instanceof Found.NotYet)) {
        standing.getStyleClass().add("needs");
      }
      if (job.found() instanceof Found.Read(var progress)) {
        day.setText(progress.last().map(RecentJobs.this::day).orElse(""));
        ruler.show(progress.states(), said);
      } else {
        day.setText("");
        ruler.show(List.of(), said);
      }
      var hasRuler = job.found() instanceof Found.Read read && !read.progress().states().isEmpty();
      ruler.setVisible(hasRuler);
      ruler.setManaged(hasRuler);
      setGraphic(box);
      setTooltip(new Tooltip(job.folder().toString()));
      setAccessibleText(texts.apart(name.getText(), said, day.getText(), job.folder().toString()));
    }
  }
}
