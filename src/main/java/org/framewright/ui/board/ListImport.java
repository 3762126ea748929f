package org.framewright.ui.board;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import javafx.beans.binding.Bindings;
import javafx.collections.FXCollections;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.job.JobException;
import org.framewright.shotlist.ListChange;
import org.framewright.shotlist.ListOptions;
import org.framewright.shotlist.ListProblem;
import org.framewright.shotlist.ListReading;
import org.framewright.ui.look.Texts;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.DialogSpec;
import org.framewright.ui.session.JobSession;

/** Takes in a client's list: reads it, shows what differs, takes what is accepted. */
final class ListImport {
  private static final String FOLDER = "board.listFolder";
  private static final int PROBLEMS_SHOWN = 6;

  private record Read(ListReading reading, Optional<ListChange> change) {}

  private final Desk desk;
  private final Texts texts;
  private final JobSession session;

  ListImport(Desk desk, JobSession session) {
    this.desk = desk;
    this.texts = desk.texts();
    this.session = session;
  }

  void ask() {
    var start = desk.preferences().path(FOLDER);
    desk.files()
        .file(texts.get("import.choose"), start, List.of("csv", "tsv", "txt", "xlsx"))
        .ifPresent(this::read);
  }

  private void read(Path file) {
    desk.preferences().put(FOLDER, file.toAbsolutePath().getParent().toString());
    session.change(
        texts.get("import.reading"),
        job -> {
          var reading = job.readList(file, ListOptions.NONE);
          return new Read(
              reading,
              reading instanceof ListReading.Understood understood
                  ? Optional.of(job.previewImport(understood.list()))
                  : Optional.empty());
        },
        read -> {
          switch (read.reading()) {
            case ListReading.Refused refused -> desk.trouble(refusal(refused));
            case ListReading.Understood understood ->
                show(new ImportModel(understood, read.change().orElseThrow()));
          }
        },
        desk::trouble);
  }

  private static JobException refusal(ListReading.Refused refused) {
    var problems = refused.problems().stream().map(ListProblem::problem).toList();
    var sentences =
        problems.stream()
            .limit(PROBLEMS_SHOWN)
            .map(problem -> PlainText.line(problem.sentence()))
            .collect(Collectors.joining("\n"));
    var remedies =
        problems.stream()
            .map(Problem::remedy)
            .filter(remedy -> !remedy.isBlank())
            .distinct()
            .limit(PROBLEMS_SHOWN)
            .collect(Collectors.joining("\n"));
    return new JobException(sentences, "", remedies);
  }

  private void show(ImportModel model) {
    if (model.isEmpty()) {
      desk.say(texts.get("import.same"));
      return;
    }
    var list = new ListView<>(FXCollections.observableList(model.differences()));
    list.setId("differences");
    list.setCellFactory(_ -> new Row());
    list.getSelectionModel().selectFirst();
    list.setAccessibleText(texts.get("import.title"));
    list.addEventFilter(
        KeyEvent.KEY_PRESSED,
        event -> {
          var line = list.getSelectionModel().getSelectedItem();
          if (event.getCode() == KeyCode.SPACE && line != null) {
            if (line.kind() != ImportModel.Kind.KEPT) {
              line.accepted().set(!line.accepted().get());
            }
            event.consume();
          }
        });
    var count = new Label();
    count
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () ->
                    texts.get(
                        "import.accepted", model.accepted().get(), model.differences().size()),
                model.accepted()));
    var box = new VBox(new Label(texts.get("import.how")), list, count);
    if (model.reordered()) {
      box.getChildren().add(new Label(texts.get("import.reordered")));
    }
    model.remarks().stream().limit(PROBLEMS_SHOWN).map(Label::new).forEach(box.getChildren()::add);
    box.getStyleClass().add("import");
    VBox.setVgrow(list, Priority.ALWAYS);
    desk.dialogs()
        .show(
            DialogSpec.asking(
                texts.get("import.title"), box, list, texts.get("import.do"), () -> take(model)));
  }

  private void take(ImportModel model) {
    var codes = model.acceptedCodes();
    session.change(
        texts.get("import.taking"),
        job -> job.importList(model.list(), codes),
        _ -> desk.say(texts.get("import.done", codes.size())),
        desk::trouble);
  }

  private final class Row extends ListCell<ImportModel.Difference> {
    private final CheckBox accepted = new CheckBox();
    private final Label kind = new Label();
    private final Label code = new Label();
    private final Label description = new Label();
    private final Node row = new HBox(accepted, kind, code, description);
    private ImportModel.Difference shown;

    Row() {
      row.getStyleClass().add("difference");
      kind.getStyleClass().add("difference-kind");
      code.getStyleClass().add("line-code");
      accepted.setFocusTraversable(false);
    }

    @Override
    protected void updateItem(ImportModel.Difference line, boolean empty) {
      super.updateItem(line, empty);
      if (shown != null) {
        accepted.selectedProperty().unbindBidirectional(shown.accepted());
      }
      shown = empty ? null : line;
      if (shown == null) {
        setGraphic(null);
        return;
      }
      accepted.selectedProperty().bindBidirectional(line.accepted());
      accepted.setDisable(line.kind() == ImportModel.Kind.KEPT);
      kind.setText(texts.get("import." + line.kind().name().toLowerCase(Locale.ROOT)));
      code.setText(line.code());
      description.setText(PlainText.line(line.description()));
      setAccessibleText(
          kind.getText() + " " + line.code() + " " + PlainText.line(line.description()));
      setGraphic(row);
    }
  }
}
