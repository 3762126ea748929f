package org.framewright.ui.client;

import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.image.ImageView;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.ui.look.FittingPane;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.StateMark;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** The client's screen: the picture, and one line below it. */
public final class ClientView {
  private static final int EDGE = 1600;
  private static final double MARK = 30;

  private final ClientModel model;
  private final Texts texts;
  private final FramePictures pictures;
  private final ImageView picture = new ImageView();
  private final Label waiting = new Label();
  private final Label code = new Label();
  private final WrappedText title = new WrappedText("client-title");
  private final Label state = new Label();
  private final Label progress = new Label();
  private final StateMark mark = new StateMark(MARK);
  private final Button agree = new Button();
  private final BorderPane root = new BorderPane();
  private final Subscription listening;

  /**
   * The controls over a model.
   *
   * @param agrees gets the setup's code when somebody presses the button
   */
  public ClientView(
      ClientModel model, Texts texts, FramePictures pictures, Consumer<String> agrees) {
    this.model = model;
    this.texts = texts;
    this.pictures = pictures;
    waiting.setText(texts.get("client.waiting"));
    waiting.getStyleClass().add("client-waiting");
    code.getStyleClass().add("client-code");
    code.setMinWidth(Region.USE_PREF_SIZE);
    title.setMinWidth(0);
    state.getStyleClass().add("client-state");
    state.setMinWidth(Region.USE_PREF_SIZE);
    progress.getStyleClass().add("client-progress");
    agree.getStyleClass().add("does-it");
    agree.setId("client-agree");
    agree.setMinWidth(Region.USE_PREF_SIZE);
    agree.setOnAction(_ -> agrees.accept(model.shown().get().code()));
    var names = new HBox(code, title);
    names.getStyleClass().add("client-names");
    names.setAlignment(Pos.BASELINE_LEFT);
    var standing = new HBox(mark, state, progress);
    standing.getStyleClass().add("client-standing");
    standing.setAlignment(Pos.CENTER_LEFT);
    var words = new VBox(names, standing);
    words.setMinWidth(0);
    HBox.setHgrow(words, Priority.ALWAYS);
    var line = new HBox(words, agree);
    line.getStyleClass().add("client-line");
    line.setAlignment(Pos.CENTER_LEFT);
    root.getStyleClass().addAll("table", "client");
    root.setCenter(new StackPane(new FittingPane(picture), waiting));
    root.setBottom(line);
    listening = model.shown().subscribe(this::show);
  }

  /** The window's inside. */
  public Parent root() {
    return root;
  }

  private void show(ClientModel.Shown now) {
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
    agree.setText(texts.get("client.agree", now.code()));
    agree.setVisible(now.canAgree());
    waiting.setVisible(now.frame().isEmpty());
    now.frame()
        .ifPresentOrElse(
            frame -> pictures.show(frame, EDGE, picture), () -> pictures.clear(picture));
    picture.setAccessibleText(texts.get("client.picture", now.code(), now.title()));
  }

  /** Stops listening. */
  public void dispose() {
    listening.unsubscribe();
    model.dispose();
  }
}
