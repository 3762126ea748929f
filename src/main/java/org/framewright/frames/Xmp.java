package org.framewright.frames;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.OptionalInt;
import javax.xml.namespace.QName;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * The rating in an XMP packet: property Rating of namespace http://ns.adobe.com/xap/1.0/, a real
 * number from 0 to 5, or -1 for rejected; as an attribute or as an element of a description, which
 * RDF/XML holds for the same. Read as plain XML, from end to end, so that a packet that was cut is
 * seen to be cut, and one with CDATA sections, which XMP libraries refuse, is read all the same.
 */
final class Xmp {
  private static final int LARGEST = 4 << 20;

  /** Real packets are some ten deep; a parser's work grows with the names declared further out. */
  private static final int DEEPEST = 64;

  private static final String RDF = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
  private static final QName RDF_ROOT = new QName(RDF, "RDF");
  private static final QName DESCRIPTION = new QName(RDF, "Description");
  private static final QName RATING = new QName("http://ns.adobe.com/xap/1.0/", "Rating");

  private Xmp() {}

  /**
   * The rating of a packet, empty where it has none.
   *
   * @throws Malformed where the packet is not whole, or its rating makes no sense
   */
  static OptionalInt rating(Bytes packet) throws IOException {
    if (packet.size() > LARGEST) {
      throw new Malformed("it is larger than a sidecar can sensibly be");
    }
    try {
      var text = find(packet.read(0, (int) packet.size()));
      return text.isEmpty() ? OptionalInt.empty() : OptionalInt.of(rating(text.get()));
    } catch (XMLStreamException | RuntimeException e) {
      throw new Malformed("its XMP cannot be read, or its end is missing");
    }
  }

  private static Optional<String> find(byte[] packet) throws XMLStreamException, Malformed {
    var factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    var xml = factory.createXMLStreamReader(new StringReader(text(packet)));
    Optional<String> found = Optional.empty();
    boolean rdf = false;
    int depth = 0;
    int root = -1;
    do {
      switch (xml.next()) {
        case XMLStreamConstants.START_ELEMENT -> {
          depth++;
          if (depth > DEEPEST) {
            throw new Malformed("its XMP is nested too deeply");
          }
          if (root < 0 && xml.getName().equals(RDF_ROOT)) {
            rdf = true;
            root = depth;
          } else if (root > 0 && depth == root + 1 && xml.getName().equals(DESCRIPTION)) {
            found = found.or(() -> attribute(xml));
          } else if (root > 0 && depth == root + 2 && xml.getName().equals(RATING)) {
            var text = text(xml);
            found = found.or(() -> Optional.of(text));
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
      throw new Malformed("it is no XMP: it has no rdf:RDF");
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

  private static Optional<String> attribute(XMLStreamReader xml) {
    return Optional.ofNullable(
        xml.getAttributeValue(RATING.getNamespaceURI(), RATING.getLocalPart()));
  }

  /** All text inside the element, up to its end. */
  private static String text(XMLStreamReader xml) throws XMLStreamException, Malformed {
    var text = new StringBuilder();
    for (int depth = 1; depth > 0; ) {
      switch (xml.next()) {
        case XMLStreamConstants.START_ELEMENT -> {
          depth++;
          if (depth > DEEPEST) {
            throw new Malformed("its XMP is nested too deeply");
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
      throw new Malformed("its rating \"%s\" is no number".formatted(text.strip()));
    }
    if (!(value >= -1 && value <= 5)) {
      throw new Malformed("its rating %s is not between -1 and 5".formatted(text.strip()));
    }
    return (int) Math.round(value);
  }
}
