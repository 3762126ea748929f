package org.framewright.handoff.metadata;

import org.w3c.dom.Attr;
import org.w3c.dom.CDATASection;
import org.w3c.dom.Comment;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.ProcessingInstruction;
import org.w3c.dom.Text;

/**
 * A tree as text, with nothing added and nothing tidied: the runtime's own serialisers write the
 * line ends of the system that they run on.
 */
final class XmlText {
  private final StringBuilder text = new StringBuilder();

  private XmlText() {}

  static String of(Element element) {
    var xml = new XmlText();
    xml.element(element);
    return xml.text.toString();
  }

  /** The text without characters that XML 1.0 cannot hold (its section 2.2). */
  static String legal(String text) {
    if (text.codePoints().allMatch(XmlText::isLegal)) {
      return text;
    }
    var legal = new StringBuilder(text.length());
    text.codePoints().forEach(c -> legal.appendCodePoint(isLegal(c) ? c : c < 0x20 ? ' ' : 0xFFFD));
    return legal.toString();
  }

  static boolean isLegal(int c) {
    return c == '\t'
        || c == '\n'
        || c == '\r'
        || (c >= 0x20 && c <= 0xD7FF)
        || (c >= 0xE000 && c <= 0xFFFD)
        || c >= 0x10000;
  }

  private void element(Element element) {
    text.append('<').append(element.getTagName());
    var attributes = element.getAttributes();
    for (int i = 0; i < attributes.getLength(); i++) {
      var attribute = (Attr) attributes.item(i);
      text.append(' ').append(attribute.getName()).append("=\"");
      escaped(attribute.getValue(), true);
      text.append('"');
    }
    if (element.getFirstChild() == null) {
      text.append("/>");
      return;
    }
    text.append('>');
    for (var child = element.getFirstChild(); child != null; child = child.getNextSibling()) {
      node(child);
    }
    text.append("</").append(element.getTagName()).append('>');
  }

  private void node(Node node) {
    switch (node) {
      case Element element -> element(element);
      case CDATASection cdata -> text.append("<![CDATA[").append(cdata.getData()).append("]]>");
      case Text plain -> escaped(plain.getData(), false);
      case Comment comment -> text.append("<!--").append(comment.getData()).append("-->");
      case ProcessingInstruction told ->
          text.append("<?")
              .append(told.getTarget())
              .append(told.getData().isEmpty() ? "" : " ")
              .append(told.getData())
              .append("?>");
      default -> throw new IllegalStateException("a node of type " + node.getNodeType());
    }
  }

  private void escaped(String words, boolean inAttribute) {
    for (int i = 0; i < words.length(); i++) {
      char c = words.charAt(i);
      switch (c) {
        case '<' -> text.append("&lt;");
        case '>' -> text.append("&gt;");
        case '&' -> text.append("&amp;");
        case '"' -> text.append(inAttribute ? "&quot;" : "\"");
        // A parser makes a line feed of the first, and a space of all in an attribute.
        case '\r' -> text.append("&#13;");
        case '\n' -> text.append(inAttribute ? "&#10;" : "\n");
        case '\t' -> text.append(inAttribute ? "&#9;" : "\t");
        default -> text.append(c);
      }
    }
  }
}
