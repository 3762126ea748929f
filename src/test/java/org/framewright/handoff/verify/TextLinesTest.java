package org.framewright.handoff.verify;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.NoSuchElementException;
import org.junit.jupiter.api.Test;

class TextLinesTest {
  private static TextLines of(String text) {
    return TextLines.of(text.getBytes(StandardCharsets.ISO_8859_1), StandardCharsets.UTF_8);
  }

  private static List<String> lines(String text) {
    var lines = new ArrayList<String>();
    of(text)
        .forEach(line -> lines.add(line.number() + " " + (line.isText() ? line.text() : "none")));
    return lines;
  }

  @Test
  void endsLinesAtEveryLineEndThatIsInUse() {
    assertThat(lines("")).isEmpty();
    assertThat(lines("a")).containsExactly("1 a");
    assertThat(lines("a\nb\rc\r\nd")).containsExactly("1 a", "2 b", "3 c", "4 d");
    assertThat(lines("a\n")).containsExactly("1 a");
    assertThat(lines("a\r")).containsExactly("1 a");
    assertThat(lines("a\r\n")).containsExactly("1 a");
    assertThat(lines("\n\r\r\n")).containsExactly("1 ", "2 ", "3 ");
  }

  @Test
  void saysWhichLinesAreNoText() {
    assertThat(lines("a\n\u00E9\nb\0\n\0\nc"))
        .containsExactly("1 a", "2 none", "3 none", "4 none", "5 c");
  }

  @Test
  void hasNoLineBehindTheLast() {
    var lines = of("a").iterator();
    lines.next();
    assertThat(lines.hasNext()).isFalse();
    assertThatThrownBy(lines::next).isInstanceOf(NoSuchElementException.class);
  }

  @Test
  void saysWhetherTheLastLineHasAnEnd() {
    assertThat(of("").isEnded()).isTrue();
    assertThat(of("a\nb").isEnded()).isFalse();
    assertThat(of("a\nb\n").isEnded()).isTrue();
    assertThat(of("a\r").isEnded()).isTrue();
  }

  // RFC 3629, section 6: EF BB BF is the mark of UTF-8.
  @Test
  void aMarkThatTheEncodingDoesNotNeedIsToldAndIsNoText() {
    assertThat(of("\u00EF\u00BB\u00BFa\n").isMarked()).isTrue();
    assertThat(lines("\u00EF\u00BB\u00BFa\nb")).containsExactly("1 a", "2 b");
    assertThat(of("a\n").isMarked()).isFalse();
    var wide = TextLines.of("a\n".getBytes(StandardCharsets.UTF_16), StandardCharsets.UTF_16);
    assertThat(wide.isMarked()).isFalse();
    assertThat(wide).containsExactly(new TextLines.Line(1, "a"));
  }
}
