package org.framewright.ui.client;

import java.util.Optional;
import java.util.function.UnaryOperator;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.text.Font;
import javafx.util.Subscription;
import org.framewright.frames.Frame;
import org.framewright.live.JobView;
import org.framewright.live.ShownToClient;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.StateMark;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.session.LookedAt;

/**
 * The client's screen: the picture with the setup's last frames under it, and a column that says
 * what it is, how far it is, and asks for their agreement.
 */
public final class ClientView {
  /** The size of the mark beside letters of that size, in pixels. */
  private static final double MARK = 22;

  private static final double LETTERS = 15;
  private static final int TITLE_LINES = 4;

  private final ClientModel model;
  private final Texts texts;
  private final UnaryOperator<String> viewWord;
  private final ClientPicture picture;
  private final ClientStrip strip;
  private final Label code = label("client-code");
  private final WrappedText title = new WrappedText("client-title");
  private final WrappedText state = new WrappedText("client-state");
  private final Label progress = label("client-progress");
  private final StateMark mark = new StateMark(MARK);
  private final ClientViews views;
  private final Button agree;
  private final Label newest = label("client-newest");
  private final Button back;
  private final Region asking = new VBox();
  private final BorderPane root = new BorderPane();
  private final Subscription listening;

  /**
   * What can be done on the screen.
   *
   * @param agree asks whose agreement it is
   * @param pictureOnly leaves the picture only, or brings the rest back
   * @param newest turns back to the newest frame
   */
  public record Commands(Command agree, Command pictureOnly, Command newest) {}

  /**
   * The controls over a model.
   *
   * @param viewWord what a view's code means
   */
  public ClientView(
      ClientModel model,
      Texts texts,
      FramePictures pictures,
      UnaryOperator<String> viewWord,
      Commands commands) {
    this.model = model;
    this.texts = texts;
    this.viewWord = viewWord;
    this.picture = new ClientPicture(texts, pictures);
    this.strip =
        new ClientStrip(JobView.LATEST, pictures, this::words, at -> model.looked().turnTo(at));
    this.views = new ClientViews(texts, viewWord);
    this.agree = button("client-agree", commands.agree());
    this.back = button("client-back", commands.newest());
    var only = button("client-only", commands.pictureOnly());
    agree.getStyleClass().addAll("does-it", "act");
    agree.setMaxWidth(Double.MAX_VALUE);
    back.setText(texts.get("client.toNewest"));
    back.getStyleClass().add("act");
    back.setMaxWidth(Double.MAX_VALUE);
    newest.setText(texts.get("client.newest"));
    only.setText(texts.get("client.pictureOnly"));
    only.getStyleClass().add("slight");
    root.getStyleClass().add("client-page");
    root.setCenter(pictures());
    root.setRight(column(only));
    var beside = root.getRight();
    beside.visibleProperty().bind(Bindings.not(model.pictureOnly()));
    beside.managedProperty().bind(beside.visibleProperty());
    listening =
        Subscription.combine(
            model.shown().subscribe(this::show),
            model.looked().look().subscribe(this::show),
            model.pictureOnly().subscribe(_ -> showStrip()));
  }

  private Region pictures() {
    VBox.setVgrow(picture, Priority.ALWAYS);
    var side = new VBox(picture, strip);
    side.getStyleClass().add("client-pictures");
    side.setMinSize(0, 0);
    return side;
  }

  private Region column(Button only) {
    title.setMostLines(TITLE_LINES);
    title.setMinWidth(0);
    state.setMinWidth(0);
    progress.fontProperty().subscribe(this::sizeMark);
    HBox.setHgrow(state, Priority.ALWAYS);
    var standing = new HBox(mark, state);
    standing.getStyleClass().add("client-standing");
    standing.setAlignment(Pos.CENTER_LEFT);
    var gap = new Region();
    VBox.setVgrow(gap, Priority.ALWAYS);
    var told = (VBox) asking;
    told.getChildren().addAll(progress, standing, views, gap, agree);
    told.getStyleClass().add("client-asking");
    told.setMinHeight(0);
    VBox.setVgrow(told, Priority.ALWAYS);
    var between = new Region();
    HBox.setHgrow(between, Priority.ALWAYS);
    var foot = new HBox(only, between, newest);
    foot.getStyleClass().add("client-foot");
    foot.setAlignment(Pos.CENTER_LEFT);
    var column = new VBox(code, title, told, back, foot);
    column.getStyleClass().add("client-column");
    return column;
  }

  /** The mark is drawn at a size; it grows with the letters. */
  private void sizeMark(Font font) {
    mark.setScaleX(font.getSize() / LETTERS);
    mark.setScaleY(font.getSize() / LETTERS);
  }

  private static Label label(String styleClass) {
    var label = new Label();
    label.getStyleClass().add(styleClass);
    label.setMinWidth(Region.USE_PREF_SIZE);
    return label;
  }

  private Button button(String id, Command command) {
    var button = CommandControls.button(command, command.text(), texts);
    button.setId(id);
    return button;
  }

  /** The window's inside. */
  public Parent root() {
    return root;
  }

  /** The part of the column that a question may lie on. */
  public Region asking() {
    return asking;
  }

  private String words(Frame frame) {
    var caption = model.caption(frame);
    return texts.get(
        "client.print",
        caption.view().map(viewWord).orElse(texts.get("client.frame")),
        caption.number());
  }

  private void show(ShownToClient now) {
    var begun = !now.code().isEmpty();
    code.setText(now.code());
    title.setText(begun ? now.title() : texts.get("client.notBegun"));
    mark.setVisible(begun);
    mark.show(now.state());
    state.setText(
        !begun
            ? ""
            : now.agreedBy()
                .map(who -> texts.get("client.agreedBy", who))
                .orElseGet(() -> texts.get("state." + now.state().word())));
    progress.setText(texts.get("client.progress", now.agreed(), now.setups()));
    views.show(now.views());
    agree.setText(texts.get("client.agree", now.code()));
    agree.setVisible(now.canAgree());
  }

  private void show(LookedAt.Look look) {
    var now = model.shown().get();
    var frame = look.frame().map(this::words);
    picture.show(
        now.code(), look, texts.get("client.picture", now.code(), now.title(), spoken(frame)));
    strip.show(look);
    newest.setVisible(look.frame().isPresent() && look.isNewest());
    newest.setManaged(newest.isVisible());
    back.setVisible(!look.isNewest());
    back.setManaged(back.isVisible());
    showStrip();
  }

  private static String spoken(Optional<String> frame) {
    return frame.orElse("");
  }

  private void showStrip() {
    strip.setVisible(!model.pictureOnly().get() && !model.looked().look().get().frames().isEmpty());
    strip.setManaged(!model.pictureOnly().get());
  }

  /** Stops listening. */
  public void dispose() {
    listening.unsubscribe();
    model.dispose();
  }
}
