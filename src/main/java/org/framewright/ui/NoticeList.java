package org.framewright.ui;

import java.util.List;
import javafx.scene.control.ListView;
import org.framewright.ui.look.CellBox;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.session.Notices.Notice;

/** All there is to know of the job's folder, each with its remedy. */
final class NoticeList {
  private static final double WIDTH = 620;
  private static final double LARGEST = 380;

  private final ListView<Notice> list = new ListView<>();

  NoticeList(List<Notice> notices) {
    list.setId("notices");
    list.getItems().setAll(notices);
    list.setCellFactory(_ -> new NoticeCell());
    list.setPrefSize(WIDTH, Math.min(LARGEST, 70.0 * notices.size() + 4));
    list.getSelectionModel().selectFirst();
  }

  ListView<Notice> node() {
    return list;
  }

  private static final class NoticeCell extends LineCell<Notice> {
    private final WrappedText what = new WrappedText();
    private final WrappedText remedy = new WrappedText("remedy");
    private final CellBox box = new CellBox(what, remedy);

    NoticeCell() {
      box.getStyleClass().add("notice-cell");
    }

    @Override
    protected void showLine(Notice notice) {
      what.setText(notice.what());
      remedy.setText(notice.remedy());
      remedy.setManaged(!notice.remedy().isEmpty());
      setGraphic(box);
      setAccessibleText(notice.what() + " " + notice.remedy());
    }
  }
}
