package org.framewright.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.beans.InvalidationListener;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.ObservableBooleanValue;
import javafx.css.PseudoClass;
import javafx.geometry.Bounds;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.TextArea;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.framewright.ui.command.KeyCap;
import org.framewright.ui.command.KeyFocus;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.DialogSpec;
import org.framewright.ui.page.Dialogs;

/**
 * The layer over the page: one dialog of paper at a time, which keeps the keys while it lies there.
 */
final class DialogLayer implements Dialogs {
  private Layer layer = new Layer();
  private final ReadOnlyBooleanWrapper open = new ReadOnlyBooleanWrapper(false);
  private final Texts texts;
  private final ChangeListener<Node> keepFocus = (_, _, now) -> bringBack(now);
  private final WrappedText remark = new WrappedText("dialog-remark");
  private final Runnable help;
  private DialogSpec dialog;
  private VBox paper = new VBox();
  private Node before;

  /** The question that lies below the help on it. */
  private Optional<Below> below = Optional.empty();

  private record Below(DialogSpec dialog, VBox paper, Node before, Runnable keys) {}

  DialogLayer(Texts texts) {
    this(texts, () -> {});
  }

  /**
   * @param help shows help on the question that lies there
   */
  DialogLayer(Texts texts, Runnable help) {
    this.texts = texts;
    this.help = help;
    // The paper keeps its width, and what lies on it gives way.
    remark.setPrefWidth(0);
    remark.setMinHeight(Region.USE_PREF_SIZE);
    prepare();
  }

  /**
   * Takes the dialog away, if there is one, and makes the layer anew: its layout was broken off.
   */
  void renew() {
    dismiss();
    layer = new Layer();
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
    while (dialog != null) {
      dismiss();
    }
    lay(next, false);
  }

  /** Shows help; the question that lies there stays below it, and comes back as it was. */
  void help(DialogSpec next) {
    if (below.isPresent()) {
      return;
    }
    if (dialog != null) {
      below = Optional.of(new Below(dialog, paper, before, keysBack()));
      layer.getScene().focusOwnerProperty().removeListener(keepFocus);
    }
    lay(next, true);
  }

  /** Gives the keys back to what has them now; what was typed goes on where it was. */
  private Runnable keysBack() {
    return switch (layer.getScene().getFocusOwner()) {
      case TextInputControl field -> {
        int anchor = field.getAnchor();
        int caret = field.getCaretPosition();
        yield () -> {
          field.requestFocus();
          field.selectRange(anchor, caret);
        };
      }
      case null -> () -> dialog.focus().requestFocus();
      case Node node -> node::requestFocus;
    };
  }

  /** What help on the question that lies there is about; empty where there is none of its own. */
  String topic() {
    return dialog == null ? "" : dialog.topic();
  }

  private void lay(DialogSpec next, boolean isHelp) {
    dialog = next;
    before = layer.getScene().getFocusOwner();
    paper = paper(next, isHelp);
    layer.clear();
    layer.lay(paper, next.on());
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

  /** Says something below the question that lies there, until it is answered. */
  void remark(String text) {
    if (dialog != null) {
      remark.setText(text);
      paper.getChildren().remove(remark);
      paper.getChildren().add(paper.getChildren().size() - 1, remark);
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
      if (below.isPresent()) {
        var kept = below.get();
        below = Optional.empty();
        dialog = kept.dialog();
        paper = kept.paper();
        before = kept.before();
        layer.clear();
        layer.lay(paper, dialog.on());
        layer.getScene().focusOwnerProperty().addListener(keepFocus);
        kept.keys().run();
        return gone;
      }
      layer.setVisible(false);
      layer.clear();
      paper.getChildren().remove(remark);
      open.set(false);
      if (before != null) {
        before.requestFocus();
      }
    }
    return gone;
  }

  private VBox paper(DialogSpec next, boolean isRead) {
    var title = WrappedText.of(next.title(), "dialog-title");
    var closed = isRead || next.confirm().isEmpty();
    var later = new Button(texts.get(closed ? "dialog.close" : "dialog.leave"));
    later.setOnAction(_ -> dismiss());
    var buttons = new ArrayList<Button>(List.of(later));
    if (!next.confirm().isEmpty()) {
      var confirm = new Button(next.confirm());
      confirm.setId("dialog-confirm");
      confirm.getStyleClass().add("does-it");
      // Names have underscores of their own.
      confirm.setMnemonicParsing(false);
      confirm.disableProperty().bind(Bindings.not(next.ready()));
      confirm.setOnAction(_ -> answer());
      buttons.add(confirm);
    }
    // What is left of a paper that covers more than it needs is above the buttons.
    VBox.setVgrow(next.body(), Priority.ALWAYS);
    var made = new VBox(title, next.body(), next.on().isEmpty() ? inLine(buttons) : below(buttons));
    made.getStyleClass().add("dialog");
    made.setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    made.setAccessibleRole(AccessibleRole.DIALOG);
    made.setAccessibleText(next.title());
    return made;
  }

  private static Region inLine(List<Button> buttons) {
    var line = new HBox();
    line.getChildren().addAll(buttons);
    line.getStyleClass().add("dialog-buttons");
    line.setAlignment(Pos.CENTER_RIGHT);
    return line;
  }

  /** The narrow paper: what the question is about first, each with its key on it. */
  private Region below(List<Button> buttons) {
    var column = new VBox();
    column.getStyleClass().add("dialog-buttons");
    for (var button : buttons.reversed()) {
      var key = new KeyCap();
      key.setText(
          Keys.text(
              Keys.plain(button.equals(buttons.getFirst()) ? KeyCode.ESCAPE : KeyCode.ENTER),
              texts));
      button.setGraphic(key);
      button.setContentDisplay(ContentDisplay.RIGHT);
      button.getStyleClass().add("act");
      button.setMaxWidth(Double.MAX_VALUE);
      column.getChildren().add(button);
    }
    return column;
  }

  private void key(KeyEvent event) {
    var focus = layer.getScene().getFocusOwner();
    if (Keys.help().stream().anyMatch(key -> key.match(event))) {
      help.run();
      event.consume();
    } else if (event.getCode() == KeyCode.ESCAPE) {
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

  /** Lays the paper in the middle, or at the foot of a part of the page. */
  private static final class Layer extends StackPane {
    private static final PseudoClass ON_A_PART = PseudoClass.getPseudoClass("on-a-part");

    /** What is higher than this part of the window is cut: it is a list or a picture. */
    private static final double LARGEST_BLOCK = 0.15;

    private final InvalidationListener moved = _ -> requestLayout();
    private Optional<Region> part = Optional.empty();

    void lay(Region paper, Optional<Region> on) {
      part = on.filter(one -> one.getScene() != null);
      part.ifPresent(
          one -> {
            one.layoutBoundsProperty().addListener(moved);
            one.localToSceneTransformProperty().addListener(moved);
          });
      pseudoClassStateChanged(ON_A_PART, part.isPresent());
      getChildren().setAll(paper);
    }

    void clear() {
      part.ifPresent(
          one -> {
            one.layoutBoundsProperty().removeListener(moved);
            one.localToSceneTransformProperty().removeListener(moved);
          });
      part = Optional.empty();
      getChildren().clear();
    }

    @Override
    protected void layoutChildren() {
      super.layoutChildren();
      part.ifPresent(one -> getChildren().forEach(paper -> lay(paper, one)));
    }

    private void lay(Node paper, Region on) {
      var place = sceneToLocal(on.localToScene(on.getLayoutBounds()));
      var wide = Math.min(place.getWidth(), getWidth());
      var foot = Math.min(place.getMaxY(), getHeight());
      var top = Math.max(0, above(on, foot - paper.prefHeight(wide)));
      paper.resizeRelocate(place.getMinX(), top, wide, foot - top);
    }

    /** Where the paper would cut a line or a block of what it lies on, it covers that wholly. */
    private double above(Region on, double top) {
      return Stream.concat(
              on.getChildrenUnmodifiable().stream(),
              on.getChildrenUnmodifiable().stream()
                  .filter(Parent.class::isInstance)
                  .flatMap(part -> ((Parent) part).getChildrenUnmodifiable().stream()))
          .map(part -> sceneToLocal(part.localToScene(part.getLayoutBounds())))
          .filter(part -> part.getMinY() < top && part.getMaxY() > top)
          .filter(part -> part.getHeight() < LARGEST_BLOCK * getHeight())
          .mapToDouble(Bounds::getMinY)
          .min()
          .orElse(top);
    }
  }
}
