package org.framewright.ui.board;

import java.util.EnumMap;
import java.util.List;
import org.framewright.shotlist.SetupState;

/**
 * The list in numbers.
 *
 * @param setups all that are not dropped
 * @param toShoot nobody has begun them
 * @param shot shot, not agreed
 * @param signedOff agreed
 * @param pickups to be shot again
 * @param dropped no longer wanted
 */
public record Totals(int setups, int toShoot, int shot, int signedOff, int pickups, int dropped) {
  static Totals of(List<SetupRow> rows) {
    var counts = new EnumMap<SetupState, Integer>(SetupState.class);
    rows.forEach(row -> counts.merge(row.state(), 1, Integer::sum));
    var dropped = counts.getOrDefault(SetupState.DROPPED, 0);
    return new Totals(
        rows.size() - dropped,
        counts.getOrDefault(SetupState.TO_SHOOT, 0),
        counts.getOrDefault(SetupState.SHOT, 0),
        counts.getOrDefault(SetupState.SIGNED_OFF, 0),
        counts.getOrDefault(SetupState.PICKUP, 0),
        dropped);
  }
}
