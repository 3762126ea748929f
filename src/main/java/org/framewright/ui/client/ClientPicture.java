package org.framewright.ui.client;

import javafx.scene.control.Label;
import javafx.scene.image.ImageView;
import javafx.scene.layout.StackPane;
import org.framewright.ui.look.FittingPane;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.LookedAt;

/**
 * The frame that the client looks at, whole and as large as the place lets it be. The picture
 * before stays until the next is read, so that nothing flickers; that of another setup goes at
 * once.
 */
final class ClientPicture extends StackPane {
  /** The longest edges that are asked for, in pixels. */
  private static final int EDGE = 1600;

  private static final int LARGE_EDGE = 2000;

  /** From across the room a picture that a camera made small is looked at as a whole. */
  private static final double MOST_ENLARGED = 2;

  private final Texts texts;
  private final FramePictures pictures;
  private final ImageView coming = new ImageView();
  private final ImageView picture = new ImageView();
  private final Label waiting = new Label();
  private String setup = "";
  private LookedAt.Look look = LookedAt.Look.NOTHING;

  ClientPicture(Texts texts, FramePictures pictures) {
    this.texts = texts;
    this.pictures = pictures;
    waiting.getStyleClass().add("client-waiting");
    coming
        .imageProperty()
        .subscribe(
            image -> {
              if (image != null) {
                picture.setImage(image);
              }
            });
    getStyleClass().add("client-picture");
    setMinSize(0, 0);
    getChildren().addAll(new FittingPane(picture, MOST_ENLARGED), waiting);
    widthProperty().subscribe(() -> ask());
    heightProperty().subscribe(() -> ask());
  }

  /** Shows the frame that is looked at of a setup; {@code spoken} says what it is. */
  void show(String code, LookedAt.Look now, String spoken) {
    if (!code.equals(setup) || now.frame().isEmpty()) {
      pictures.clear(coming);
      picture.setImage(null);
    }
    setup = code;
    look = now;
    picture.setAccessibleText(spoken);
    waiting.setText(texts.get("client.waiting"));
    waiting.setVisible(now.frame().isEmpty());
    ask();
  }

  private void ask() {
    var edge = Math.max(getWidth(), getHeight()) > EDGE ? LARGE_EDGE : EDGE;
    look.frame().ifPresent(frame -> pictures.show(frame, edge, coming, this::none));
  }

  private void none() {
    picture.setImage(null);
    waiting.setText(texts.get("client.noPicture"));
    waiting.setVisible(true);
  }
}
