package org.framewright.ui.help;

import static org.framewright.AssertThat.assertThat;

import java.util.List;
import org.framewright.ui.help.Run.Face;
import org.junit.jupiter.api.Test;

class MarkdownTest {
  private static Run plain(String text) {
    return new Run(text, Face.PLAIN, "");
  }

  @Test
  void readsHeadingsWithTheirAnchors() {
    assertThat(Markdown.blocks("## What can go wrong?"))
        .containsExactly(
            new Block.Heading(2, "what-can-go-wrong", List.of(plain("What can go wrong?"))));
  }

  @Test
  void readsKeysCodeAndLinksInASentence() {
    assertThat(Markdown.blocks("Press `Ctrl+Enter` in `data`, see [Copies](copies.md#decide)."))
        .containsExactly(
            new Block.Paragraph(
                List.of(
                    plain("Press "),
                    new Run("Ctrl+Enter", Face.KEY, ""),
                    plain(" in "),
                    new Run("data", Face.CODE, ""),
                    plain(", see "),
                    new Run("Copies", Face.PLAIN, "copies.md#decide"),
                    plain("."))));
  }

  @Test
  void aKeyIsToldFromCode() {
    for (var key :
        List.of("A", "/", "-", "Ctrl+=", "Ctrl+Shift+Z", "F12", "Page down", "Shift+F1", "1")) {
      assertThat(Markdown.isKey(key)).as(key).isTrue();
    }
    for (var code :
        List.of("DCIM", "01_frames", "framewright", "Ctrl+", "KVO_001", "--tls", "_v02")) {
      assertThat(Markdown.isKey(code)).as(code).isFalse();
    }
  }

  @Test
  void readsAnIndentedBlockWithinAListAsTyped() {
    assertThat(Markdown.blocks("3. Type:\n\n       framewright demo\n       framewright day JOB\n"))
        .containsExactly(
            new Block.Items(
                3,
                List.of(
                    List.of(
                        new Block.Paragraph(List.of(plain("Type:"))),
                        new Block.Code("framewright demo\nframewright day JOB")))));
  }

  @Test
  void readsTables() {
    assertThat(Markdown.blocks("| you see | do |\n|---|---|\n| a | `S` |\n"))
        .containsExactly(
            new Block.Table(
                List.of(List.of(plain("you see")), List.of(plain("do"))),
                List.of(List.of(List.of(plain("a")), List.of(new Run("S", Face.KEY, ""))))));
  }

  @Test
  void readsPicturesAndCautionsAndLeavesCommentsOut() {
    assertThat(
            Markdown.blocks(
                "<!-- help: day -->\n\n![The day](../pictures/day.png)\n\n> **Caution.** Hot."))
        .containsExactly(
            new Block.Picture("../pictures/day.png", "The day"),
            new Block.Quote(
                List.of(
                    new Block.Paragraph(
                        List.of(new Run("Caution.", Face.STRONG, ""), plain(" Hot."))))));
  }
}
