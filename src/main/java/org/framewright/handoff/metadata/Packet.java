package org.framewright.handoff.metadata;

import java.io.IOException;
import java.io.StringReader;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.framewright.base.Text;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;
import org.xml.sax.helpers.DefaultHandler;

/**
 * An XMP packet (ISO 16684-1) as a tree, with what stands before and behind it in its file.
 *
 * <p>Only what lies between {@code x:xmpmeta}, or {@code rdf:RDF} where there is none, and its end
 * is read as XML: some programs leave a control byte in the lines around it, which no XML has.
 */
final class Packet {
  /** Far more than any sidecar has. */
  static final int LARGEST = 4 << 20;

  /** Real packets are some ten deep; whoever walks a tree goes as deep as it is. */
  private static final String DEEPEST = "64";

  /** Raw converters write hundreds of attributes; the runtime's own limit is 200. */
  private static final String MOST_ATTRIBUTES = "10000";

  private static final String NO_DOCTYPE = "http://apache.org/xml/features/disallow-doctype-decl";
  private static final Pattern META = start("xmpmeta|xapmeta");
  private static final Pattern RDF = start("RDF");
  private static final Pattern ENCODING = Pattern.compile("encoding\\s*=\\s*[\"']([^\"']*)");
  private static final String BEGIN =
      "<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n";
  private static final String END = "\n<?xpacket end=\"w\"?>";
  private static final String EMPTY =
      "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n <rdf:RDF xmlns:rdf=\""
          + Namespace.RDF.uri()
          + "\">\n </rdf:RDF>\n</x:xmpmeta>";

  private final String head;
  private final String tail;
  private final Document document;
  private final Element rdf;

  private Packet(String head, Document document, String tail) throws NotUsable {
    this.head = head;
    this.document = document;
    this.tail = tail;
    this.rdf = rdf(document.getDocumentElement());
  }

  private static Pattern start(String locals) {
    return Pattern.compile("<((?:[\\p{L}_][\\p{L}\\p{N}_.\\-]*:)?(?:" + locals + "))(?=[\\s>/])");
  }

  /** One that says nothing. */
  static Packet empty() {
    try {
      return new Packet(BEGIN, tree(EMPTY), END);
    } catch (NotUsable e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * Reads a packet.
   *
   * @throws NotUsable where it is none, or not to be trusted
   */
  static Packet read(byte[] bytes) throws NotUsable {
    if (bytes.length > LARGEST) {
      throw new NotUsable(Text.of("its XMP is larger than any that makes sense"));
    }
    var charset = charset(bytes);
    var text = decoded(bytes, charset);
    var start = META.matcher(text);
    if (!start.find()) {
      start = RDF.matcher(text);
      if (!start.find()) {
        throw new NotUsable(Text.of("it has no XMP that can be read"));
      }
    }
    var before = text.substring(0, start.start());
    if (before.contains("<!DOCTYPE")) {
      throw new NotUsable(Text.of("its XMP brings a document type along, which none needs"));
    }
    int end = end(text, start);
    var after = text.substring(end);
    var encoding = ENCODING.matcher(before);
    if (charset.equals(StandardCharsets.UTF_8)
        && encoding.find()
        && !encoding.group(1).equalsIgnoreCase("UTF-8")) {
      throw new NotUsable(Text.of("its XMP is not in the encoding that XMP is in"));
    }
    boolean kept =
        charset.equals(StandardCharsets.UTF_8)
            && (before + after).codePoints().allMatch(XmlText::isLegal);
    return new Packet(
        kept ? before : BEGIN, tree(text.substring(start.start(), end)), kept ? after : END);
  }

  private static int end(String text, Matcher start) throws NotUsable {
    int end = text.lastIndexOf("</" + start.group(1));
    int close = end < start.start() ? -1 : text.indexOf('>', end);
    if (close < 0) {
      throw new NotUsable(Text.of("its XMP is cut short"));
    }
    return close + 1;
  }

  /** UTF-8, or what a byte order mark says. */
  private static Charset charset(byte[] bytes) {
    int first = bytes.length > 1 ? ((bytes[0] & 0xFF) << 8) | (bytes[1] & 0xFF) : 0;
    return first == 0xFEFF || first == 0xFFFE ? StandardCharsets.UTF_16 : StandardCharsets.UTF_8;
  }

  private static String decoded(byte[] bytes, Charset charset) throws NotUsable {
    try {
      return charset.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      throw new NotUsable(Text.of("its XMP is not in the encoding that XMP is in"));
    }
  }

  private static Document tree(String xml) throws NotUsable {
    try {
      var factory = DocumentBuilderFactory.newDefaultNSInstance();
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      factory.setFeature(NO_DOCTYPE, true);
      factory.setAttribute("jdk.xml.elementAttributeLimit", MOST_ATTRIBUTES);
      factory.setAttribute("jdk.xml.maxElementDepth", DEEPEST);
      factory.setXIncludeAware(false);
      factory.setExpandEntityReferences(false);
      var builder = factory.newDocumentBuilder();
      builder.setErrorHandler(new Silent());
      return builder.parse(new InputSource(new StringReader(xml)));
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException("every Java reads XML", e);
    } catch (SAXException | IOException e) {
      throw new NotUsable(Text.of("its XMP is no XML that can be read"));
    }
  }

  /** The runtime's own handler prints. */
  private static final class Silent extends DefaultHandler {
    @Override
    public void error(SAXParseException e) throws SAXException {
      throw e;
    }

    @Override
    public void fatalError(SAXParseException e) throws SAXException {
      throw e;
    }
  }

  private static Element rdf(Element root) throws NotUsable {
    if (is(root, "RDF")) {
      return root;
    }
    for (var child : elements(root)) {
      if (is(child, "RDF")) {
        return child;
      }
    }
    throw new NotUsable(Text.of("it has no XMP that can be read"));
  }

  static boolean is(Element element, String local) {
    return Namespace.RDF.uri().equals(element.getNamespaceURI())
        && element.getLocalName().equals(local);
  }

  static List<Element> elements(Node parent) {
    var elements = new ArrayList<Element>();
    for (var child = parent.getFirstChild(); child != null; child = child.getNextSibling()) {
      if (child instanceof Element element) {
        elements.add(element);
      }
    }
    return elements;
  }

  Document document() {
    return document;
  }

  Element rdf() {
    return rdf;
  }

  /** The descriptions of the file itself: not those of nodes that are named and meant elsewhere. */
  List<Element> descriptions() {
    return elements(rdf).stream()
        .filter(element -> is(element, "Description"))
        .filter(element -> !element.hasAttributeNS(Namespace.RDF.uri(), "nodeID"))
        .toList();
  }

  /** As a file of its own, with what stood around it. */
  byte[] bytes() {
    return (head + XmlText.of(document.getDocumentElement()) + tail)
        .getBytes(StandardCharsets.UTF_8);
  }

  /** Whether bytes are this packet with some room to grow. */
  boolean isIn(byte[] bytes) {
    int said = padded(0).length - END.length();
    return bytes.length >= said && Arrays.equals(padded(0), 0, said, bytes, 0, said);
  }

  /** As a packet inside another file, with room to grow. */
  byte[] padded(int room) {
    var packet = new StringBuilder(BEGIN).append(XmlText.of(document.getDocumentElement()));
    for (int i = 0; i < room; i++) {
      packet.append(i % 100 == 0 ? '\n' : ' ');
    }
    return packet.append(END).toString().getBytes(StandardCharsets.UTF_8);
  }
}
