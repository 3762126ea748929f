package org.framewright.shotlist;

import static org.framewright.AssertThat.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.framewright.base.Text;
import org.junit.jupiter.api.Test;

class ListDescriptionTest {
  private static Setup setup(String code, String title) {
    return new Setup(code, title, List.of(), OptionalInt.empty(), new TreeMap<>());
  }

  private static ShotList list(Setup... setups) {
    return new ShotList(List.of(setups));
  }

  @Test
  void everyChangeHasALineAndTheSumStandsLast() {
    var before = list(setup("1", "Coat"), setup("2", "Hat"), setup("3", "Scarf"), setup("4", ""));
    var after = list(setup("3", "Shawl"), setup("1", "Coat"), setup("9", "Veil"));
    var change = ListChange.between(before, after, setup -> setup.code().equals("2"));
    assertThat(ListDescription.changes(change, false))
        .containsExactly(
            "added    9 Veil",
            "changed  3: title \"Scarf\" -> \"Shawl\"",
            "removed  4",
            "kept     2 Hat (no longer in the list, but it was worked on)",
            "The order changes.",
            "1 added, 1 changed, 1 removed, 1 kept.");
    assertThat(ListDescription.changes(change, true).getLast())
        .isEqualTo("1 added, 1 changed, 1 removed, 1 kept. Nothing was changed yet.");
  }

  @Test
  void theSameListIsSaidToBeTheSame() {
    var change = ListChange.between(list(setup("1", "Coat")), list(setup("1", "Coat")));
    assertThat(ListDescription.changes(change, false))
        .containsExactly("The list is the one that the job has.");
  }

  @Test
  void howAListWasUnderstoodStandsWithTheFirstTwentyRemarks() {
    var remarks = new ArrayList<ListProblem>();
    for (int i = 1; i <= 21; i++) {
      remarks.add(
          ListProblem.of("list.csv", i, 0, Text.of("this is left out"), Text.of("Look at it.")));
    }
    var twenty = understood(remarks.subList(0, 20));
    assertThat(ListDescription.understood(twenty))
        .hasSize(21)
        .contains("list.csv, line 20: this is left out. Look at it.")
        .startsWith("Read as UTF-8, commas.")
        .allMatch(
            line -> line.startsWith("Read as") || line.endsWith(": this is left out. Look at it."));
    var more = understood(remarks);
    assertThat(ListDescription.understood(more)).hasSize(22).endsWith("1 more like these.");
  }

  private static ListReading.Understood understood(List<ListProblem> remarks) {
    return new ListReading.Understood(
        list(), Text.of("UTF-8, commas"), ListReading.ReadAs.NOTHING, remarks, List.of());
  }
}
