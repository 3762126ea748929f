package org.framewright.ui.help;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class GuideModelTest {
  private final Guide guide =
      new Guide(
          Path.of(""),
          List.of(
              GuidePage.of("index", "# Guide\n"),
              GuidePage.of("copies", "<!-- help: copies, card -->\n# Copies\n\n## Decide\n"),
              GuidePage.of("names", "<!-- help: names -->\n# Names\n\nCards have names.")));
  private final GuideModel model = new GuideModel(guide, "names");

  private String place() {
    return model
        .place()
        .get()
        .map(place -> place.page().name() + "#" + place.anchor())
        .orElse("none");
  }

  @Test
  void opensAtThePageThatHelpsWithWhereOneIs() {
    assertThat(place()).isEqualTo("names#");
    assertThat(new GuideModel(guide, "card").place().get().orElseThrow().page().name())
        .isEqualTo("copies");
    assertThat(new GuideModel(guide, "").place().get().orElseThrow().page().name())
        .isEqualTo("index");
  }

  @Test
  void goesBackAndForwardAlongWhatWasRead() {
    assertThat(model.canGoBack().get()).isFalse();
    model.follow("copies.md#decide");
    model.contents();
    assertThat(place()).isEqualTo("index#");
    model.back();
    assertThat(place()).isEqualTo("copies#decide");
    model.back();
    assertThat(place()).isEqualTo("names#");
    assertThat(model.canGoBack().get()).isFalse();
    model.forward();
    assertThat(place()).isEqualTo("copies#decide");
    model.follow("names.md");
    assertThat(model.canGoForward().get()).as("a new way begins").isFalse();
  }

  @Test
  void aLinkWithinAPageStaysThere() {
    model.follow("copies.md");
    model.follow("#decide");
    assertThat(place()).isEqualTo("copies#decide");
  }

  @Test
  void aLinkOutOfTheGuideLeadsNowhere() {
    model.follow("https://example.org");
    assertThat(place()).isEqualTo("names#");
  }

  @Test
  void whatIsGlancedAtWhileTypingIsOneStepBack() {
    model.type("card");
    model.glanceAt(model.hits().get().getLast());
    model.glanceAt(model.hits().get().getFirst());
    model.back();
    assertThat(place()).isEqualTo("names#");
    assertThat(model.canGoBack().get()).isFalse();
  }

  @Test
  void listsEveryPageWhereNothingIsTyped() {
    assertThat(model.hits().get()).hasSize(3);
    assertThat(model.hits().get().stream().filter(model::isAboutHere).map(GuideSearch.Hit::page))
        .containsExactly("names");
  }

  @Test
  void whereThereIsNoGuideNothingIsShown() {
    var none = new GuideModel(new Guide(Path.of("nowhere"), List.of()), "names");
    assertThat(none.place().get()).isEmpty();
    assertThat(none.hits().get()).isEmpty();
  }
}
