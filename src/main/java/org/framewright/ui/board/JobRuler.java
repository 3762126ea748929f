package org.framewright.ui.board;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.scene.control.Tooltip;
import org.framewright.ui.look.StateRuler;

/** The whole list as a ruler, which says of each tick what it is; a click chooses the setup. */
final class JobRuler extends StateRuler {
  private final Tooltip tooltip = new Tooltip();
  private List<SetupRow> rows = List.of();

  /**
   * A ruler without ticks.
   *
   * @param words what the tooltip says of a setup
   */
  JobRuler(Function<SetupRow, String> words, Consumer<SetupRow> chosen) {
    setOnMouseClicked(event -> row(event.getX()).ifPresent(chosen));
    setOnMouseMoved(event -> tooltip.setText(row(event.getX()).map(words).orElse("")));
    Tooltip.install(this, tooltip);
  }

  /** Shows a list. */
  void showRows(List<SetupRow> now, String spoken) {
    rows = now;
    show(now.stream().map(SetupRow::state).toList(), spoken);
  }

  private Optional<SetupRow> row(double x) {
    var place = at(x);
    return place.isPresent() ? Optional.of(rows.get(place.getAsInt())) : Optional.empty();
  }
}
