package org.framewright.ui.board;

import static org.framewright.AssertThat.assertThat;

import java.util.List;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.junit.jupiter.api.Test;

class ComingPartsTest {
  private final Region word = new Region();
  private final HBox line = new HBox(word);
  private final Region last = new Region();
  private final VBox page = new VBox(line, last);
  private final ComingParts parts = new ComingParts();

  private List<Node> there() {
    return below(page).toList();
  }

  private static Stream<Node> below(Pane pane) {
    return pane.getChildren().stream()
        .flatMap(
            node ->
                Stream.concat(Stream.of(node), node instanceof Pane at ? below(at) : Stream.of()));
  }

  @Test
  void whatWasTakenOutComesBackOneByOneInItsPlace() {
    assertThat(parts.areAllThere()).isTrue();
    parts.takeFrom(page);
    parts.takeFrom(line);
    assertThat(there()).isEmpty();
    parts.bringNext();
    assertThat(there()).containsExactly(line);
    parts.bringNext();
    assertThat(there()).containsExactly(line, last);
    assertThat(parts.areAllThere()).isFalse();
    parts.bringNext();
    assertThat(there()).containsExactly(line, word, last);
    assertThat(parts.areAllThere()).isTrue();
    parts.bringNext();
    assertThat(there()).containsExactly(line, word, last);
  }

  @Test
  void whatIsKeptStaysAndTheRestComesBackAroundIt() {
    var kept = new Region();
    page.getChildren().add(1, kept);
    parts.takeFrom(page, kept);
    assertThat(page.getChildren()).containsExactly(kept);
    parts.bringNext();
    assertThat(page.getChildren()).containsExactly(line, kept);
    parts.bringNext();
    assertThat(page.getChildren()).containsExactly(line, kept, last);
  }
}
