package org.framewright.mhl;

/** Text in a document of XML 1.0. */
final class XmlText {
  private XmlText() {}

  /** Whether a document can hold a text: it has no place for most control characters. */
  static boolean canHold(String text) {
    return text.codePoints()
        .allMatch(
            one ->
                one == '\t'
                    || one == '\n'
                    || one == '\r'
                    || (one >= 0x20 && one < 0xD800)
                    || (one > 0xDFFF && one < 0xFFFE)
                    || one > 0xFFFF);
  }

  /** The text as it stands in an element or an attribute. */
  static String of(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;")
        .replace("\t", "&#9;")
        .replace("\n", "&#10;")
        .replace("\r", "&#13;");
  }
}
