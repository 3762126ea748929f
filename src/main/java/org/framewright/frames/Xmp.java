package org.framewright.frames;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import javax.xml.namespace.QName;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.framewright.base.PlainText;
import org.framewright.base.Text;

/**
 * How somebody judged a picture, by its XMP packet: property Rating of namespace
 * http://ns.adobe.com/xap/1.0/, a real number from 0 to 5, or -1 for rejected; Rating of
 * Microsoft's photo namespace; and Label, a text. Each is an attribute or an element of a
 * description, which RDF/XML holds for the same. Read as plain XML, from end to end, so that a
 * packet that was cut is seen to be cut, and one with CDATA sections, which XMP libraries refuse,
 * is read all the same.
 *
 * @param rating -1 to 5, where 0 says that it is not rated
 * @param share the rating from 1 to 5 that is written as a share of a hundred
 * @param label the label, never blank
 */
record Xmp(OptionalInt rating, OptionalInt share, Optional<String> label) {
  /** One that says nothing. */
  static final Xmp NONE = new Xmp(OptionalInt.empty(), OptionalInt.empty(), Optional.empty());

  private static final int LARGEST = 4 << 20;

  /** Real packets are some ten deep; a parser's work grows with the names declared further out. */
  private static final int DEEPEST = 64;

  private static final int MOST_ATTRIBUTES = 10_000;

  private static final String RDF = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
  private static final QName RDF_ROOT = new QName(RDF, "RDF");
  private static final QName DESCRIPTION = new QName(RDF, "Description");
  private static final QName RATING = new QName("http://ns.adobe.com/xap/1.0/", "Rating");
  private static final QName LABEL = new QName("http://ns.adobe.com/xap/1.0/", "Label");

  /** Some programs write the namespace with a slash at its end. */
  private static final Set<QName> SHARES =
      Set.of(
          new QName("http://ns.microsoft.com/photo/1.0", "Rating"),
          new QName("http://ns.microsoft.com/photo/1.0/", "Rating"));

  private static final int LONGEST_LABEL = 200;

  /**
   * Reads a packet.
   *
   * @throws Malformed where the packet is not whole, or its rating makes no sense
   */
  static Xmp read(Bytes packet) throws IOException {
    if (packet.size() > LARGEST) {
      throw new Malformed(Text.of("it is larger than a sidecar can sensibly be"));
    }
    try {
      var found = find(packet.read(0, (int) packet.size()));
      return of(found);
    } catch (XMLStreamException | RuntimeException e) {
      throw new Malformed(Text.of("its XMP cannot be read, or its end is missing"));
    }
  }

  private static Xmp of(Map<QName, String> found) throws Malformed {
    var stars = found.get(RATING);
    var share = OptionalInt.empty();
    for (var name : SHARES) {
      share = share.isPresent() ? share : share(found.getOrDefault(name, ""));
    }
    return new Xmp(
        stars == null ? OptionalInt.empty() : OptionalInt.of(rating(stars)),
        share,
        Optional.of(PlainText.line(found.getOrDefault(LABEL, "")).strip())
            .filter(label -> !label.isEmpty() && label.length() <= LONGEST_LABEL));
  }

  /** The first of each property in each of its forms. */
  private static Map<QName, String> find(byte[] packet) throws XMLStreamException, Malformed {
    var factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    // Programs that develop pictures write some hundred settings as attributes; Java allows 200.
    factory.setProperty("jdk.xml.elementAttributeLimit", String.valueOf(MOST_ATTRIBUTES));
    var xml = factory.createXMLStreamReader(new StringReader(withoutInstructions(text(packet))));
    var found = new HashMap<QName, String>();
    boolean rdf = false;
    int depth = 0;
    int root = -1;
    do {
      switch (xml.next()) {
        case XMLStreamConstants.START_ELEMENT -> {
          depth++;
          if (depth > DEEPEST) {
            throw new Malformed(Text.of("its XMP is nested too deeply"));
          }
          if (root < 0 && xml.getName().equals(RDF_ROOT)) {
            rdf = true;
            root = depth;
          } else if (root > 0 && depth == root + 1 && xml.getName().equals(DESCRIPTION)) {
            attributes(xml, found);
          } else if (root > 0 && depth == root + 2 && isAskedFor(xml.getName())) {
            var name = xml.getName();
            found.putIfAbsent(name, text(xml));
            depth--;
          }
        }
        case XMLStreamConstants.END_ELEMENT -> {
          if (depth == root) {
            root = -1;
          }
          depth--;
        }
        default -> {}
      }
    } while (depth > 0 || xml.getEventType() != XMLStreamConstants.END_ELEMENT);
    if (!rdf) {
      throw new Malformed(Text.of("it is no XMP: it has no rdf:RDF"));
    }
    return found;
  }

  /** A packet is UTF-8, or UTF-16 if it begins with that one's byte order mark. */
  private static String text(byte[] packet) {
    int first = packet.length > 1 ? ((packet[0] & 0xFF) << 8) | (packet[1] & 0xFF) : 0;
    boolean wide = first == 0xFEFF || first == 0xFFFE;
    var text = new String(packet, wide ? StandardCharsets.UTF_16 : StandardCharsets.UTF_8);
    return text.startsWith("\uFEFF") ? text.substring(1) : text;
  }

  /**
   * A packet without the processing instructions before it: some programs write bytes into them
   * that XML does not allow, and nobody needs what they say.
   */
  private static String withoutInstructions(String text) {
    int from = afterSpace(text, 0);
    while (text.startsWith("<?", from)) {
      int end = text.indexOf("?>", from);
      if (end < 0) {
        break;
      }
      from = afterSpace(text, end + 2);
    }
    return text.substring(from);
  }

  private static int afterSpace(String text, int from) {
    int at = from;
    while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
      at++;
    }
    return at;
  }

  private static boolean isAskedFor(QName name) {
    return name.equals(RATING) || name.equals(LABEL) || SHARES.contains(name);
  }

  private static void attributes(XMLStreamReader xml, Map<QName, String> into) {
    for (int i = 0; i < xml.getAttributeCount(); i++) {
      if (isAskedFor(xml.getAttributeName(i))) {
        into.putIfAbsent(xml.getAttributeName(i), xml.getAttributeValue(i));
      }
    }
  }

  /** All text inside the element, up to its end. */
  private static String text(XMLStreamReader xml) throws XMLStreamException, Malformed {
    var text = new StringBuilder();
    for (int depth = 1; depth > 0; ) {
      switch (xml.next()) {
        case XMLStreamConstants.START_ELEMENT -> {
          depth++;
          if (depth > DEEPEST) {
            throw new Malformed(Text.of("its XMP is nested too deeply"));
          }
        }
        case XMLStreamConstants.END_ELEMENT -> depth--;
        case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA -> text.append(xml.getText());
        default -> {}
      }
    }
    return text.toString();
  }

  private static int rating(String text) throws Malformed {
    double value;
    try {
      value = Double.parseDouble(text.strip());
    } catch (NumberFormatException e) {
      throw new Malformed(Text.of("its rating \"{0}\" is no number", text.strip()));
    }
    if (!(value >= -1 && value <= 5)) {
      throw new Malformed(Text.of("its rating {0} is not between -1 and 5", text.strip()));
    }
    return (int) Math.round(value);
  }

  private static OptionalInt share(String text) {
    try {
      return Stars.ofShare(Integer.parseInt(text.strip()));
    } catch (NumberFormatException e) {
      return OptionalInt.empty();
    }
  }
}
