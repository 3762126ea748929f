package org.framewright.ui.help;

import static org.framewright.AssertThat.assertThat;

import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.layout.StackPane;
import org.framewright.ui.look.Theme;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.testfx.api.FxToolkit;

/** Lines are broken between words, and nothing lies on anything else. */
@Tag("slow")
class FlowTextTest {
  private static final List<Block> SENTENCE =
      Markdown.blocks(
          "Press `Ctrl+Enter`, or the button *Compare*; see [Copy cards](copies.md). Then `Esc`.");

  private final List<String> followed = new ArrayList<>();

  @BeforeAll
  static void startTheToolkit() throws Exception {
    FxToolkit.registerPrimaryStage();
  }

  private FlowText laidOut(double width) {
    var text =
        new FlowText(((Block.Paragraph) SENTENCE.getFirst()).text(), key -> key, followed::add);
    var root = new StackPane(text);
    Theme.NEUTRAL.dress(new Scene(root, width, 400), 1);
    root.applyCss();
    root.layout();
    text.resize(width, text.prefHeight(width));
    text.layout();
    return text;
  }

  private static List<Bounds> places(FlowText text) {
    return text.getChildrenUnmodifiable().stream()
        .filter(Node::isManaged)
        .map(Node::getBoundsInParent)
        .toList();
  }

  @Test
  void nothingLeavesTheLineOrLiesOnItsNeighbour() {
    for (var width : List.of(180.0, 260.0, 400.0, 900.0)) {
      var text = laidOut(width);
      var before = (Bounds) null;
      for (var place : places(text)) {
        assertThat(place.getMaxX()).isLessThanOrEqualTo(width + 1);
        assertThat(place.getMaxY()).isLessThanOrEqualTo(text.getHeight() + 1);
        if (before != null) {
          assertThat(
                  place.getMinX() >= before.getMaxX() - 1 || place.getCenterY() > before.getMaxY())
              .isTrue();
        }
        before = place;
      }
    }
  }

  @Test
  void aNarrowPageIsHigher() {
    assertThat(laidOut(180).prefHeight(180)).isGreaterThan(2 * laidOut(900).prefHeight(900));
  }

  @Test
  void aCommaStaysWithItsKey() {
    for (var width = 90; width < 400; width += 10) {
      var places = places(laidOut(width));
      // Press, the key, its comma.
      assertThat(Math.abs(places.get(1).getCenterY() - places.get(2).getCenterY())).isLessThan(12);
    }
  }

  @Test
  void aLinkLeadsWhereItSays() {
    laidOut(400).links().forEach(Button::fire);
    assertThat(followed).containsExactly("copies.md");
  }
}
