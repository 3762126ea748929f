package org.framewright.share;

import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class PageFilesTest {
  private static final Path FOLDER = Path.of("src/main/resources/org/framewright/share");

  /** One that is not in the list is never served; one that is only in the list is missing. */
  @Test
  void theListHasEveryFileOfThePage() throws Exception {
    try (var files = Files.list(FOLDER)) {
      assertThat(files.map(file -> file.getFileName().toString()).toList())
          .containsExactlyInAnyOrderElementsOf(PageFiles.NAMES);
    }
  }

  @Test
  void eachHasItsPathItsTypeAndItsTag() throws Exception {
    var files = PageFiles.ofAJob();
    assertThat(files.at("/").orElseThrow().type()).isEqualTo("text/html; charset=utf-8");
    assertThat(files.at("/index.html")).isEmpty();
    assertThat(files.at("/app.js").orElseThrow().type())
        .isEqualTo("text/javascript; charset=utf-8");
    assertThat(files.at("/app.js").orElseThrow().tag()).matches("\"[0-9a-f]{32}\"");
    assertThat(files.at("/../share/app.js")).isEmpty();
  }

  /** The program in the browser goes by it. */
  @Test
  void theFirstFileSaysWhichPageItIs() throws Exception {
    assertThat(PageFiles.ofAJob().at("/").orElseThrow().bytes())
        .asString(StandardCharsets.UTF_8)
        .contains(" data-page=\"job\">");
    assertThat(PageFiles.ofAllSets().at("/").orElseThrow().bytes())
        .asString(StandardCharsets.UTF_8)
        .contains(" data-page=\"sets\">");
  }
}
