package org.framewright.ui;

import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.ObservableBooleanValue;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.TextArea;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.framewright.ui.command.KeyFocus;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.DialogSpec;
import org.framewright.ui.page.Dialogs;

/**
 * The layer over the page: one dialog of paper at a time, which keeps the keys while it lies there.
 */
final class DialogLayer implements Dialogs {
  private StackPane layer = new StackPane();
  private final ReadOnlyBooleanWrapper open = new ReadOnlyBooleanWrapper(false);
  private final Texts texts;
  private final ChangeListener<Node> keepFocus = (_, _, now) -> bringBack(now);
  private DialogSpec dialog;
  private Node before;

  DialogLayer(Texts texts) {
    this.texts = texts;
    prepare();
  }

  /**
   * Takes the dialog away, if there is one, and makes the layer anew: its layout was broken off.
   */
  void renew() {
    dismiss();
    layer = new StackPane();
    prepare();
  }

  private void prepare() {
    layer.getStyleClass().add("dialog-layer");
    layer.setVisible(false);
    layer.addEventFilter(KeyEvent.KEY_PRESSED, this::key);
  }

  Node node() {
    return layer;
  }

  @Override
  public ObservableBooleanValue open() {
    return open.getReadOnlyProperty();
  }

  @Override
  public void show(DialogSpec next) {
    if (dialog != null) {
      dismiss();
    }
    dialog = next;
    before = layer.getScene().getFocusOwner();
    layer.getChildren().setAll(paper(next));
    layer.setVisible(true);
    open.set(true);
    layer.getScene().focusOwnerProperty().addListener(keepFocus);
    layer.applyCss();
    layer.layout();
    next.focus().requestFocus();
  }

  @Override
  public void dismiss() {
    var gone = take();
    if (gone != null) {
      gone.dismissed().run();
    }
  }

  private void answer() {
    if (dialog != null && dialog.ready().get() && !dialog.confirm().isEmpty()) {
      take().answer().run();
    }
  }

  private DialogSpec take() {
    var gone = dialog;
    if (gone != null) {
      dialog = null;
      layer.getScene().focusOwnerProperty().removeListener(keepFocus);
      layer.setVisible(false);
      layer.getChildren().clear();
      open.set(false);
      if (before != null) {
        before.requestFocus();
      }
    }
    return gone;
  }

  private Region paper(DialogSpec next) {
    var title = WrappedText.of(next.title(), "dialog-title");
    var later = new Button(texts.get(next.confirm().isEmpty() ? "dialog.close" : "dialog.leave"));
    later.setOnAction(_ -> dismiss());
    var buttons = new HBox(later);
    buttons.getStyleClass().add("dialog-buttons");
    buttons.setAlignment(Pos.CENTER_RIGHT);
    if (!next.confirm().isEmpty()) {
      var confirm = new Button(next.confirm());
      confirm.setId("dialog-confirm");
      confirm.getStyleClass().add("does-it");
      // Names have underscores of their own.
      confirm.setMnemonicParsing(false);
      confirm.disableProperty().bind(javafx.beans.binding.Bindings.not(next.ready()));
      confirm.setOnAction(_ -> answer());
      buttons.getChildren().add(confirm);
    }
    var paper = new VBox(title, next.body(), buttons);
    paper.getStyleClass().add("dialog");
    paper.setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    paper.setAccessibleRole(AccessibleRole.DIALOG);
    paper.setAccessibleText(next.title());
    return paper;
  }

  private void key(KeyEvent event) {
    var focus = layer.getScene().getFocusOwner();
    if (event.getCode() == KeyCode.ESCAPE) {
      dismiss();
      event.consume();
    } else if (event.getCode() == KeyCode.ENTER
        && !(focus instanceof Button)
        && (!(focus instanceof TextArea) || event.isShortcutDown())) {
      answer();
      event.consume();
    }
  }

  private void bringBack(Node now) {
    if (dialog != null && now != null && !KeyFocus.isWithin(layer)) {
      dialog.focus().requestFocus();
    }
  }
}
