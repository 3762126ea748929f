package org.framewright.job;

import static org.framewright.AssertThat.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.shotlist.ListOptions;
import org.junit.jupiter.api.Test;

/** What the log makes of how lists were read. */
class KeptOptionsTest {
  private static final ListOptions LOOK =
      new ListOptions(
          new LinkedHashMap<>(Map.of("setup", "Look")),
          Optional.empty(),
          Optional.empty(),
          Optional.empty());
  private static final ListOptions STYLE = LOOK.withOneSetupPer("Style");

  private static Entry entry(int number, Event event) {
    return new Entry(number, new Stamp(number, 0, "desk"), Instant.ofEpochMilli(number), event);
  }

  @Test
  void theLastWordForTheSameHeadingsHolds() {
    var fold =
        Fold.of(
            List.of(
                entry(3, new Event.ListRead(List.of("LOOK ", "Style"), STYLE, "list.csv")),
                entry(1, new Event.ListRead(List.of("Look", "Style"), LOOK, "list.csv")),
                entry(2, new Event.ListRead(List.of("Style", "Look"), LOOK, "list.csv"))));
    assertThat(fold.listsRead().get(ListForm.of(List.of("look", "style"))))
        .isEqualTo(new KeptOptions(STYLE, "list.csv"));
    assertThat(fold.listsRead().get(ListForm.of(List.of("style", "look"))))
        .isEqualTo(new KeptOptions(LOOK, "list.csv"));
    assertThat(fold.listsRead().get(ListForm.of(List.of("look")))).isNull();
  }

  @Test
  void itIsTheSameInWhateverOrderTheLogsArrive() {
    var entries =
        new ArrayList<>(
            List.of(
                entry(1, new Event.ListRead(List.of("a"), LOOK, "list.csv")),
                entry(2, new Event.ListRead(List.of("a"), STYLE, "list.csv")),
                entry(3, new Event.TakenBack(new Stamp(2, 0, "desk")))));
    var whole = Fold.of(entries).listsRead();
    var folding = new Folding();
    entries.reversed().forEach(entry -> folding.add(List.of(entry)));
    assertThat(folding.fold().listsRead()).isEqualTo(whole);
    assertThat(whole)
        .containsExactly(Map.entry(ListForm.of(List.of("a")), new KeptOptions(LOOK, "list.csv")));
  }

  @Test
  void whatIsSaidNowGoesBeforeWhatWasKept() {
    var now =
        new ListOptions(
            new LinkedHashMap<>(Map.of("title", "Look")),
            Optional.of("Tops"),
            Optional.empty(),
            Optional.of(""));
    var both = now.over(STYLE);
    assertThat(both.columns()).isEqualTo(Map.of("title", "Look"));
    assertThat(both.sheet()).contains("Tops");
    assertThat(both.oneSetupPer()).contains("");
    assertThat(both.words()).isEqualTo("--column title=Look --sheet Tops");
  }
}
