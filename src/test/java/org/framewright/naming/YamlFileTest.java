package org.framewright.naming;

import static org.framewright.AssertThat.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class YamlFileTest {
  private static YamlNode tree(String yaml) {
    var faults = new Faults();
    var tree = YamlFile.read(yaml, "my.yaml", faults);
    assertThat(faults.inOrder()).isEmpty();
    return tree.orElseThrow();
  }

  private static Finding fault(String yaml) {
    var faults = new Faults();
    assertThat(YamlFile.read(yaml, "my.yaml", faults)).isEmpty();
    assertThat(faults.inOrder()).hasSize(1);
    return faults.inOrder().getFirst();
  }

  private static YamlNode.Text value(String yaml) {
    var mapping = (YamlNode.Mapping) tree(yaml);
    return (YamlNode.Text) mapping.entries().getFirst().value();
  }

  @Test
  void knowsTheLineAndColumnOfEveryKeyAndValue() {
    var top = (YamlNode.Mapping) tree("# a comment\nk: [a, 'b']\n\nm:\n  x: {y: z}\n");
    assertThat(top).extracting(YamlNode::line, YamlNode::column).containsExactly(2, 1);
    var list = (YamlNode.Sequence) top.entries().getFirst().value();
    assertThat(list).extracting(YamlNode::line, YamlNode::column).containsExactly(2, 4);
    assertThat(list.items())
        .containsExactly(new YamlNode.Text("a", 2, 5, 0), new YamlNode.Text("b", 2, 8, 1));
    var inner = (YamlNode.Mapping) top.entries().getLast().value();
    assertThat(inner.entries().getFirst().key()).isEqualTo(new YamlNode.Text("x", 5, 3, 0));
    var innermost = (YamlNode.Mapping) inner.entries().getFirst().value();
    assertThat(innermost.entries().getFirst().value()).isEqualTo(new YamlNode.Text("z", 5, 10, 0));
  }

  @Test
  void keepsAKeyThatComesTwice() {
    assertThat(((YamlNode.Mapping) tree("a: 1\na: 2\n")).entries()).hasSize(2);
  }

  /** YAML 1.2.2, 10.3: what other readers take for numbers, truth and nothing. */
  @ParameterizedTest
  @ValueSource(
      strings = {"012", "0x1F", "1_000", "1e5", "yes", "true", "~", "null", ".inf", "12:30"})
  void readsEveryScalarAsItsText(String text) {
    assertThat(value("a: " + text).text()).isEqualTo(text);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "a: bcd          | 4  | 6",
        "a: 'bcd'        | 5  | 7",
        "a: \"b\\x63d\"  | 4  | 6",
        "'a' :   bcd     | 9  | 11",
      })
  void knowsTheColumnOfACharacterOfAText(String yaml, int first, int third) {
    assertThat(value(yaml).columnOf(0)).isEqualTo(first);
    assertThat(value(yaml).columnOf(2)).isEqualTo(third);
  }

  @Test
  void givesTheBeginningAsThePlaceInATextOfSeveralLines() {
    assertThat(value("a: |\n  one\n  two\n").columnOf(5)).isEqualTo(4);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "a: &x 1                  | 1 | 4 | anchors (&name)",
        "a: &x {b: c}             | 1 | 4 | anchors (&name)",
        "&x a: b                  | 1 | 1 | anchors (&name)",
        "b: *x                    | 1 | 4 | aliases (*name)",
        "*x : b                   | 1 | 1 | aliases (*name)",
        "a: !!str b               | 1 | 4 | tags (!name)",
        "a: !b [c]                | 1 | 4 | tags (!name)",
        "? [a]                    | 1 | 3 | a key must be plain text",
        "a: b: c                  | 1 | 5 | a colon and a space end a key",
        "{a: b                    | 1 | 6 | a comma or a } is missing here",
        "[[[[[[[[[[[[a]]]]]]]]]]]] | 1 | 11 | deeper than 10",
      })
  void refusesWhatAConventionHasNoUseFor(String yaml, int line, int column, String what) {
    assertThat(fault(yaml).message()).startsWith("convention: ").contains(what);
    assertThat(fault(yaml).line()).isEqualTo(line);
    assertThat(fault(yaml).column()).isEqualTo(column);
    assertThat(fault(yaml).remedy()).isPresent();
  }

  @Test
  void takesTextsThatOnlyLookLikeAnchorsAliasesOrTags() {
    assertThat(value("a: 'b & c'").text()).isEqualTo("b & c");
    assertThat(value("a: \"*b\"").text()).isEqualTo("*b");
    assertThat(value("a: b!").text()).isEqualTo("b!");
    assertThat(value("a:\nb: c").text()).isEmpty();
  }

  @Test
  void saysWhereASecondDocumentBegins() {
    var fault = fault("a: 1\n---\nb: 2\n");
    assertThat(fault.message()).contains("a second document");
    assertThat(fault.line()).isEqualTo(3);
    assertThat(tree("---\na: 1\n...\n")).isInstanceOf(YamlNode.Mapping.class);
  }

  @ParameterizedTest
  @ValueSource(ints = {0x00, 0x07, 0x1B, 0x7F, 0x80, 0x9F, 0xFFFE, 0xFFFF})
  void saysWhichCharacterCannotBeInAFileAndWhere(int character) {
    var fault = fault("a: 1\r\nb: \uD83C\uDFA8" + (char) character + "\n");
    assertThat(fault.message()).contains("U+%04X".formatted(character));
    assertThat(fault.line()).isEqualTo(2);
    assertThat(fault.column()).isEqualTo(5);
  }

  /** YAML 1.2.2, 5.1: c-printable, the ends of its ranges. */
  @ParameterizedTest
  @ValueSource(ints = {0x20, 0x7E, 0xA0, 0xD7FF, 0xE000, 0xFFFD, 0x10000, 0x10FFFF})
  void takesEveryPrintableCharacter(int character) {
    assertThat(value("a: 'x" + Character.toString(character) + "'").text())
        .isEqualTo("x" + Character.toString(character));
  }

  @Test
  void refusesHalfACharacter() {
    assertThat(fault("a: \uD83C").message()).contains("U+D83C");
  }

  @Test
  void takesWhatIsAsLargeAsItMayBeAndNoMore() {
    var largest = "#" + "x".repeat(Limits.FILE - 6) + "\na: b";
    assertThat(largest).hasSize(Limits.FILE);
    assertThat(tree(largest)).isInstanceOf(YamlNode.Mapping.class);
    assertThat(fault(largest + " ").message()).contains("larger than 256 kB");
    assertThat(tree("[[[[[[[[[[a]]]]]]]]]]")).isInstanceOf(YamlNode.Sequence.class);
  }

  @Test
  void findsNothingInAnEmptyFile() {
    var faults = new Faults();
    assertThat(YamlFile.read("# nothing\n", "x", faults)).isEmpty();
    assertThat(faults.none()).isTrue();
  }
}
