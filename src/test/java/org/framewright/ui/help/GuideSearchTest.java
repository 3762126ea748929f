package org.framewright.ui.help;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class GuideSearchTest {
  private final GuideSearch search =
      new GuideSearch(
          new Guide(
              Path.of(""),
              List.of(
                  GuidePage.of("index", "# Guide\n\nAll pages: cards, names."),
                  GuidePage.of("names", "# Names\n\nText.\n\n## Rename\n\nA card is not meant.\n"),
                  GuidePage.of(
                      "copies",
                      "# Copy cards\n\nSafe.\n\n## Clear it\n\nAn answer by Ren\u00e9 Stra\u00dfe.\n"))));

  private List<String> pages(String typed) {
    return search.find(typed).stream().map(GuideSearch.Hit::page).toList();
  }

  @Test
  void aWordInATitleComesBeforeOneInAText() {
    assertThat(pages("card")).containsExactly("copies", "names", "index");
    assertThat(pages("names")).containsExactly("names", "index");
  }

  @Test
  void aWholeWordComesBeforeTheBeginningOfOne() {
    var one = GuidePage.of("one", "# One\n\nHe walks.");
    var two = GuidePage.of("two", "# Two\n\nA walk.");
    var hits = new GuideSearch(new Guide(Path.of(""), List.of(one, two))).find("walk");
    assertThat(hits.stream().map(GuideSearch.Hit::page)).containsExactly("two", "one");
  }

  @Test
  void everyWordHasToBeThere() {
    assertThat(pages("card clear")).containsExactly("copies");
    assertThat(pages("card nowhere")).isEmpty();
  }

  @Test
  void caseAndAccentsDoNotCount() {
    assertThat(pages("RENE")).containsExactly("copies");
    assertThat(pages("ren\u00e9 strasse")).containsExactly("copies");
  }

  @Test
  void aWordIsFoundByItsBeginningOnly() {
    assertThat(pages("clea")).containsExactly("copies");
    assertThat(pages("lear")).isEmpty();
  }

  @Test
  void leadsToTheSectionThatHasMostOfIt() {
    var hit = search.find("clear rene").getFirst();
    assertThat(hit.anchor()).isEqualTo("clear-it");
    assertThat(hit.says()).startsWith("Clear it").contains("Ren\u00e9");
    assertThat(search.find("safe").getFirst().anchor()).isEmpty();
  }

  @Test
  void nothingTypedFindsNothing() {
    assertThat(pages("")).isEmpty();
    assertThat(pages(" ,; ")).isEmpty();
  }
}
