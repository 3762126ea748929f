package org.framewright.ui.help;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The guide itself: it leads everywhere, and nowhere that is not there. */
class GuideTest {
  private static final Path FOLDER = Path.of("docs/guide");
  private static final Pattern TOPIC = Pattern.compile("\\.about\\(\"([^\"]+)\"\\)");

  /** The pages of the app; that these are all of them is seen where the app is opened. */
  static final List<String> PAGES =
      List.of(
          "board",
          "lists",
          "frames",
          "compare",
          "names",
          "copies",
          "handoff",
          "handoff-check",
          "handoff-back",
          "day",
          "start",
          "convention",
          "proposal",
          "sets",
          "settings");

  private final Guide guide;

  GuideTest() throws IOException {
    guide = Guide.read(FOLDER);
  }

  private static List<String> pictures(GuidePage page) {
    return page.blocks().stream()
        .flatMap(GuidePage::within)
        .filter(Block.Picture.class::isInstance)
        .map(picture -> ((Block.Picture) picture).file())
        .toList();
  }

  @Test
  void everyFileOfTheFolderIsAPageThatTheIndexLeadsTo() throws IOException {
    try (var files = Files.list(FOLDER)) {
      var names =
          files
              .map(file -> file.getFileName().toString())
              .filter(name -> name.endsWith(".md"))
              .map(Guide::name)
              .toList();
      assertThat(guide.pages().stream().map(GuidePage::name).toList())
          .containsExactlyInAnyOrderElementsOf(names);
    }
    assertThat(guide.pages()).hasSizeGreaterThan(20);
  }

  @Test
  void everyPageIsReachedByFollowingLinks() {
    var seen = new HashSet<>(Set.of(Guide.INDEX));
    var left = new ArrayDeque<>(seen);
    while (!left.isEmpty()) {
      for (var link : guide.page(left.pop()).orElseThrow().links()) {
        if (seen.add(Guide.name(link))) {
          left.add(Guide.name(link));
        }
      }
    }
    assertThat(seen).containsAll(guide.pages().stream().map(GuidePage::name).toList());
  }

  @Test
  void everyLinkLeadsToAPageAndAHeadingThatAreThere() {
    var broken = new ArrayList<String>();
    for (var page : guide.pages()) {
      for (var link : page.links()) {
        var to = Guide.name(link).isEmpty() ? page : guide.page(Guide.name(link)).orElse(null);
        var anchor = Guide.anchor(link);
        if (to == null
            || (!anchor.isEmpty()
                && to.sections().stream().noneMatch(part -> part.anchor().equals(anchor)))) {
          broken.add(page.name() + ": " + link);
        }
      }
    }
    assertThat(broken).isEmpty();
  }

  @Test
  void everyPageButTheIndexLeadsOn() {
    assertThat(guide.pages())
        .allSatisfy(page -> assertThat(page.links()).as(page.name()).isNotEmpty());
  }

  @Test
  void everyPictureIsThereAndShipsWithTheGuideAndNoOtherDoes() throws IOException {
    var shown = new TreeSet<String>();
    for (var page : guide.pages()) {
      for (var picture : pictures(page)) {
        assertThat(FOLDER.resolve(picture)).as(page.name()).exists();
        shown.add(picture.replace("../", ""));
      }
    }
    assertThat(Files.readAllLines(FOLDER.resolve("pictures.txt"))).isEqualTo(List.copyOf(shown));
  }

  @Test
  void everyPageAndEveryQuestionThatAsksForHelpHasItsPage() throws IOException {
    var topics = new TreeSet<>(PAGES);
    try (var sources = Files.walk(Path.of("src/main/java/org/framewright/ui"))) {
      for (var source : sources.filter(file -> file.toString().endsWith(".java")).toList()) {
        TOPIC
            .matcher(Files.readString(source))
            .results()
            .forEach(found -> topics.add(found.group(1)));
      }
    }
    var written = guide.pages().stream().flatMap(page -> page.topics().stream()).toList();
    assertThat(written).doesNotHaveDuplicates();
    assertThat(new TreeSet<>(written)).isEqualTo(topics);
  }

  @Test
  void everyPageSaysWhatItIsForAndNearlyAllWhatCanGoWrong() {
    for (var page : guide.pages()) {
      if (!page.name().equals(Guide.INDEX)) {
        assertThat(page.sections().getFirst().text()).as(page.name()).startsWith("What for: ");
      }
    }
    assertThat(
            guide.pages().stream()
                .filter(
                    page ->
                        page.sections().stream()
                            .noneMatch(part -> part.heading().equals("What can go wrong")))
                .map(GuidePage::name))
        .containsExactlyInAnyOrder(Guide.INDEX, "first-day", "find-and-keys", "trouble", "safety");
  }

  @Test
  void theWordsOfTheHouseAreKept() {
    for (var page : guide.pages()) {
      for (var part : page.sections()) {
        assertThat(part.text().toLowerCase(Locale.ROOT))
            .as(page.name())
            .doesNotContainPattern("\\b(?:screenshot|user|click on ok|simply|just)\\b");
      }
    }
  }
}
