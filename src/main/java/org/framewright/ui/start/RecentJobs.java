package org.framewright.ui.start;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.OverrunStyle;
import javafx.scene.input.KeyCode;
import org.framewright.ui.look.CellBox;
import org.framewright.ui.look.Texts;

/** The jobs opened lately; Enter or two clicks open one. */
final class RecentJobs extends ListView<Path> {
  private static final double JOB_HEIGHT = 44;

  private final Consumer<Path> open;

  RecentJobs(Texts texts, Consumer<Path> open) {
    this.open = open;
    setId("recent-jobs");
    setFixedCellSize(JOB_HEIGHT);
    setCellFactory(_ -> new JobCell());
    getStyleClass().addAll("on-table", "recent-jobs");
    setAccessibleText(texts.get("start.openTitle"));
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

  void show(List<Path> folders) {
    getItems().setAll(folders);
    if (!folders.isEmpty()) {
      getSelectionModel().selectFirst();
    }
  }

  private void openChosen() {
    var job = getSelectionModel().getSelectedItem();
    if (job != null) {
      open.accept(job);
    }
  }

  /** A job by its folder's name, and where it lies. */
  private static final class JobCell extends ListCell<Path> {
    private final Label name = new Label();
    private final Label where = new Label();
    private final CellBox box = new CellBox(name, where);

    JobCell() {
      name.getStyleClass().add("job-name");
      where.getStyleClass().add("job-where");
      where.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
    }

    @Override
    protected void updateItem(Path folder, boolean empty) {
      super.updateItem(folder, empty);
      if (empty || folder == null) {
        setGraphic(null);
        setAccessibleText("");
        return;
      }
      name.setText(String.valueOf(folder.getFileName()));
      where.setText(String.valueOf(folder.getParent()));
      setGraphic(box);
      setAccessibleText(folder.toString());
    }
  }
}
