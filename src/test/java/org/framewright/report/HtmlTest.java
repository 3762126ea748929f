package org.framewright.report;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.framewright.AssertThat.assertThat;

import java.io.ByteArrayInputStream;
import javax.xml.parsers.DocumentBuilderFactory;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;

/** Whatever people type stays text. */
class HtmlTest {
  private static Document parsed(String markup) throws Exception {
    var factory = DocumentBuilderFactory.newInstance();
    factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
    return factory.newDocumentBuilder().parse(new ByteArrayInputStream(markup.getBytes(UTF_8)));
  }

  @Provide
  Arbitrary<String> hostile() {
    return Arbitraries.oneOf(
        Arbitraries.strings().ofMaxLength(60),
        Arbitraries.strings()
            .withChars("<>&\"'/=-![]{};: \n\r\t\0\u202e\u2028\ufffe\ud800\udc00aא")
            .ofMaxLength(60),
        Arbitraries.of(
            "</p><script>", "]]>", "<!--", "-->", "&lt;", "&#0;", "\" onload=\"x", "javascript:"));
  }

  @Property
  void noTextBecomesMarkup(@ForAll("hostile") String typed) throws Exception {
    var page = new StringBuilder();
    new Html(page).open("p", "title", Html.line(typed)).words(typed).close();
    var root = parsed(page.toString()).getDocumentElement();
    assertThat(root.getElementsByTagName("*").getLength())
        .isEqualTo(root.getElementsByTagName("bdi").getLength());
    assertThat(root.getAttributes().getLength()).isEqualTo(1);
    assertThat(root.getTextContent()).isEqualTo(root.getAttribute("title"));
  }

  @Property
  void whatCanBeShownIsShown(@ForAll("hostile") String typed) throws Exception {
    var page = new StringBuilder();
    new Html(page).open("p").words(typed).close();
    var shown = parsed(page.toString()).getDocumentElement().getTextContent();
    assertThat(shown.codePoints().filter(Character::isLetterOrDigit).toArray())
        .isEqualTo(typed.codePoints().filter(Character::isLetterOrDigit).toArray());
  }

  @Test
  void halvesOfAPairDoNotBecomeALetterWhereWhatStoodBetweenThemIsLeftOut() {
    assertThat(Html.line("a\ud800\u202e\udc00b")).isEqualTo("ab");
  }

  @Test
  void aTextIsOneLineOfABearableLength() {
    assertThat(Html.line(" one\r\n\ttwo\u2028three\u0000 ")).isEqualTo("one two three");
    assertThat(Html.line("x".repeat(10_000))).hasSize(Html.LONGEST + 1).endsWith("…");
  }

  @Test
  void marksThatTurnTheDirectionAreLeftOut() {
    assertThat(Html.line("fdp\u202Egpj.exe\u202C\u2067\u200F")).isEqualTo("fdpgpj.exe");
    assertThat(Html.escaped("a\u202Eb")).isEqualTo("ab");
  }

  @Test
  void textFromTheRightStandsByItself() {
    var page = new StringBuilder();
    new Html(page).words("معطف 12").words("coat");
    assertThat(page.toString()).isEqualTo("<bdi dir=\"rtl\">معطف 12</bdi>coat");
  }
}
