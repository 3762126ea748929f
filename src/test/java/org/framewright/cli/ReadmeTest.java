package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** What the README shows as output is what the program prints. */
@Tag("slow")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReadmeTest {
  private static final String PROMPT = "$ framewright ";
  private static final String CUT = "...";
  private static final Pattern WORD = Pattern.compile("'([^']*)'|\"([^\"]*)\"|(\\S+)");

  private List<List<String>> convention;
  private List<List<String>> day;
  private List<String> story;

  @BeforeAll
  void playTheDemo(@TempDir Path folder) throws IOException {
    var text = Files.readString(Path.of("README.md"));
    int morning = text.indexOf("### Morning");
    convention = blocks(text.substring(text.indexOf("### Before the day"), morning));
    day = blocks(text.substring(morning, text.indexOf("## The app")));
    var demo = Ran.run("demo", "--tiny", "--into", folder);
    assertThat(demo.status()).as(demo.err()).isZero();
    story =
        demo.out()
            .lines()
            .map(line -> line.startsWith("   ") ? line.substring(3) : line)
            .map(line -> line.replace(folder.toString(), "/shoots"))
            .map(ReadmeTest::steady)
            .toList();
  }

  /** Indented paragraphs; an empty line ends one. */
  private static List<List<String>> blocks(String text) {
    var blocks = new ArrayList<List<String>>();
    var block = new ArrayList<String>();
    for (var line : (text + "\n\n").lines().toList()) {
      if (line.startsWith("    ")) {
        block.add(line.substring(4));
      } else if (!block.isEmpty()) {
        blocks.add(List.copyOf(block));
        block.clear();
      }
    }
    return blocks;
  }

  /** A line without what differs from run to run and with the size of the pictures. */
  private static String steady(String line) {
    return line.replaceAll("(batch \\d{4})-\\p{XDigit}{8}", "$1")
        .replaceAll("[\\d.]+ [MG]B", "some");
  }

  private static boolean isRunAlone(List<String> block) {
    return block.getFirst().startsWith(PROMPT + "check ")
        || block.getFirst().startsWith(PROMPT + "name ")
        || block.getFirst().startsWith(PROMPT + "new-convention ");
  }

  @Test
  void theStoryIsThatOfTheDemo() {
    var shown = day.stream().filter(block -> !isRunAlone(block)).toList();
    assertThat(shown).hasSizeGreaterThan(8);
    assertThat(shown)
        .allSatisfy(block -> assertThat(story).containsSubsequence(withoutCuts(block)));
  }

  private static List<String> withoutCuts(List<String> block) {
    return block.stream()
        .filter(line -> !line.strip().equals(CUT))
        .map(ReadmeTest::steady)
        .toList();
  }

  @Test
  void theCommandsPrintWhatIsShown() {
    var run = Stream.concat(convention.stream(), day.stream()).filter(ReadmeTest::isRunAlone);
    assertThat(run)
        .hasSize(3)
        .allSatisfy(
            block -> {
              var ran = Ran.run(words(block.getFirst().substring(PROMPT.length())));
              var printed = new ArrayList<>(ran.err().lines().toList());
              printed.addAll(ran.out().lines().toList());
              var shown = withoutCuts(block.subList(1, block.size()));
              assertThat(printed).containsSubsequence(shown);
              if (!block.contains(CUT)) {
                assertThat(printed).hasSameSizeAs(shown);
              }
            });
  }

  @Test
  void theConventionShownIsATemplate() throws IOException {
    var template = Files.readAllLines(Path.of("templates/fashion-days.yaml"));
    var shown =
        convention.stream().filter(block -> !isRunAlone(block)).flatMap(List::stream).toList();
    assertThat(shown).hasSizeGreaterThan(20);
    assertThat(template).containsSubsequence(shown);
  }

  private static Object[] words(String command) {
    return WORD.matcher(command)
        .results()
        .map(
            found ->
                found.group(1) != null
                    ? found.group(1)
                    : found.group(2) != null ? found.group(2) : found.group(3))
        .toArray();
  }
}
