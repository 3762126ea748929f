package org.framewright.ui.start;

import static org.framewright.AssertThat.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.AlphaChars;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;

class SegmentTest {
  private static Segment of(String text, String field) {
    return new Segment(text, Optional.of(field), false);
  }

  private static Segment between(String text) {
    return new Segment(text, Optional.empty(), false);
  }

  @Test
  void cutsANameAtTheFieldsOfItsPattern() {
    assertThat(Segment.cut("2026-11-25_LUMO_spring", "{day}_{client}_{title}", Set.of()))
        .containsExactly(
            of("2026-11-25", "day"),
            between("_"),
            of("LUMO", "client"),
            between("_"),
            of("spring", "title"));
  }

  @Test
  void namesAFieldWithoutItsShape() {
    assertThat(Segment.cut("20261125-LUMO", "{day.compact}-{client}", Set.of()))
        .containsExactly(of("20261125", "day"), between("-"), of("LUMO", "client"));
  }

  @Test
  void passesAnOptionalRunThatIsLeftOut() {
    assertThat(Segment.cut("LUMO_0001", "{client}[_{view}]_{take}", Set.of()))
        .extracting(Segment::text)
        .containsExactly("LUMO", "_", "0001");
    assertThat(Segment.cut("LUMO_F_0001", "{client}[_{view}]_{take}", Set.of()))
        .extracting(Segment::text)
        .containsExactly("LUMO", "_", "F", "_", "0001");
  }

  @Test
  void saysWhichPiecesAreExamples() {
    assertThat(Segment.cut("2026_LUMO", "{day}_{client}", Set.of("client")))
        .filteredOn(Segment::example)
        .extracting(Segment::text)
        .containsExactly("LUMO");
  }

  @Test
  void showsANameWholeThatDoesNotFitThePattern() {
    assertThat(Segment.cut("something else", "{day}_{client}", Set.of()))
        .isEqualTo(List.of(between("something else")));
  }

  @Test
  void takesPunctuationOfThePatternLiterally() {
    assertThat(Segment.cut("a.b+c", "{one}.b+{two}", Set.of()))
        .extracting(Segment::text)
        .containsExactly("a", ".b+", "c");
  }

  @Property
  void thePiecesTogetherAreAlwaysTheName(
      @ForAll @AlphaChars @StringLength(min = 1, max = 8) String client,
      @ForAll @AlphaChars @StringLength(min = 1, max = 8) String title) {
    var name = "2026_" + client + "-" + title;
    var text = new StringBuilder();
    Segment.cut(name, "{day}_{client}-{title}", Set.of()).forEach(s -> text.append(s.text()));
    assertThat(text).hasToString(name);
  }
}
