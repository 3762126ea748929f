package org.framewright.shotlist;

import static org.framewright.AssertThat.assertThat;

import java.util.Collections;
import java.util.List;
import org.framewright.base.Text;
import org.junit.jupiter.api.Test;

class GridTest {

  @Test
  void holdsAsManyCellsAsAListMayHave() {
    var grid = new Grid.Builder("list.csv", Integer.MAX_VALUE);
    var row = List.copyOf(Collections.nCopies(Limits.COLUMNS, new Cell("x", 7, 3)));
    for (int i = 0; i < Limits.CELLS / Limits.COLUMNS; i++) {
      grid.add(row);
    }
    assertThat(grid.isFull()).isFalse();
    grid.add(List.of(new Cell("one more", 8, 1)));
    assertThat(grid.isFull()).isTrue();
    assertThat(grid.build(Text.of(""), List.of()).excess().orElseThrow())
        .hasToString("list.csv, line 8, column 1: the list has more than 2,000,000 cells");
  }

  @Test
  void looksAtAsManyRowsAsItIsAskedFor() {
    var grid = new Grid.Builder("list.csv", 2);
    for (int i = 1; i <= 3; i++) {
      assertThat(grid.isFull()).isEqualTo(i > 2);
      grid.add(List.of(new Cell("x" + i, i, 1)));
    }
    assertThat(grid.build(Text.of(""), List.of()).rows()).hasSize(2);
  }

  @Test
  void holdsAsMuchTextAsAListMayHave() {
    var grid = new Grid.Builder("list.csv", Integer.MAX_VALUE);
    var longest = new Cell("x".repeat(1 << 14), 9, 2);
    for (int i = 0; i < Limits.TEXT >> 14; i++) {
      grid.add(new java.util.ArrayList<>(), longest);
    }
    assertThat(grid.isFull()).isFalse();
    grid.add(new java.util.ArrayList<>(), new Cell("x", 10, 1));
    assertThat(grid.build(Text.of(""), List.of()).excess().orElseThrow())
        .hasToString("list.csv, line 10, column 1: the list holds more than 16 million characters");
  }
}
