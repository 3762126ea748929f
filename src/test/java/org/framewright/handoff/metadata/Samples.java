package org.framewright.handoff.metadata;

import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import javax.xml.crypto.OctetStreamData;
import javax.xml.crypto.dsig.CanonicalizationMethod;
import javax.xml.crypto.dsig.TransformService;
import javax.xml.crypto.dsig.spec.TransformParameterSpec;
import javax.xml.parsers.DocumentBuilderFactory;
import org.framewright.shotlist.Setup;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.Text;
import org.xml.sax.InputSource;

/** An invented studio and select, packets, and small files to put them into. */
final class Samples {
  static final String RDF = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
  static final String SHA = "0123456789abcdef".repeat(4);

  private Samples() {}

  static Map<String, Object> settings() {
    var kept = new LinkedHashMap<String, Object>();
    kept.put("studio.photographer", "Inès Vander");
    kept.put("studio.position", "Photographer");
    kept.put("studio.studio", "Nova スタジオ");
    kept.put("studio.mail", "ines@nova.example");
    kept.put("studio.phone", "+32 2 555 01 00");
    kept.put("studio.website", "https://nova.example");
    kept.put("studio.credit", "Inès Vander / Nova");
    kept.put("studio.source", "Nova Archive");
    kept.put("studio.copyright", "© {day.year} Nova & Söhne");
    kept.put("studio.owner", "Nova bv");
    kept.put("studio.terms", "Web, two years");
    kept.put("studio.statement", "https://nova.example/terms");
    kept.put("studio.mining", "no-training");
    return kept;
  }

  static Studio studio(Map<String, Object> kept) {
    return ((Studio.Reading.Sound) Studio.of(kept, "preferences.json")).studio();
  }

  /** A convention with a day, which has a year. */
  static FieldWords fields() {
    return new FieldWords() {
      @Override
      public boolean has(String field, String shape) {
        return field.equals("day") && (shape.isEmpty() || shape.equals("year"));
      }

      @Override
      public Optional<String> words(String field, String shape) {
        return Optional.of(shape.isEmpty() ? "2026-11-23" : "2026");
      }
    };
  }

  static SelectData select(Map<String, String> columns) {
    return select(columns, "Wool coat <grey>");
  }

  static SelectData select(Map<String, String> columns, String title) {
    return new SelectData(
        "2026-11-23_KVO_look-book",
        "AW look book",
        "KVO_001_F_0001",
        "001",
        Optional.of(
            new Setup("001", title, List.of(), OptionalInt.empty(), new LinkedHashMap<>(columns))),
        Optional.of("front"),
        Optional.of("KVO_001_F_0001_v01"),
        Optional.of(
            new SelectData.Taken(
                LocalDateTime.of(2026, 11, 23, 10, 1, 2, 400_000_000),
                Optional.of(ZoneOffset.ofHours(1)))),
        true,
        "A_0001.DNG",
        OptionalInt.of(4),
        fields(),
        false);
  }

  static Map<String, String> columns() {
    var columns = new LinkedHashMap<String, String>();
    columns.put("Model", "Ada Lune, نور");
    columns.put("EAN", "4006381333931");
    columns.put("Farbe", "moss green");
    columns.put("Model release", "Unlimited");
    columns.put("Release ID", "R-17");
    columns.put("Note", "Keep the shadow");
    return columns;
  }

  /** Everything that can be said. */
  static Block block() {
    return Block.of(studio(settings()), select(columns())).of(SHA);
  }

  static String packet(String descriptions) {
    return "<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
        + "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\"><rdf:RDF xmlns:rdf=\""
        + RDF
        + "\">"
        + descriptions
        + "</rdf:RDF></x:xmpmeta>\n<?xpacket end=\"w\"?>";
  }

  static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  static Document tree(byte[] sidecar) throws Exception {
    var text = new String(sidecar, StandardCharsets.UTF_8);
    var xml = text.substring(text.indexOf('<', Math.max(0, text.indexOf("?>"))));
    return DocumentBuilderFactory.newDefaultNSInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(xml)));
  }

  /** A packet without what is said of some properties, in canonical form (W3C, Canonical XML). */
  static String foreign(byte[] sidecar, List<Name> own) throws Exception {
    var document = tree(sidecar);
    var rdf = (Element) document.getElementsByTagNameNS(RDF, "RDF").item(0);
    for (var description : elements(rdf)) {
      if (!description.getLocalName().equals("Description")
          || description.hasAttributeNS(RDF, "nodeID")) {
        continue;
      }
      for (var name : own) {
        description.removeAttributeNS(name.namespace().uri(), name.local());
        for (var child : elements(description)) {
          if (name.namespace().uri().equals(child.getNamespaceURI())
              && name.local().equals(child.getLocalName())) {
            description.removeChild(child);
          }
        }
      }
      trim(description);
      if (description.getFirstChild() == null && !saysAnything(description)) {
        rdf.removeChild(description);
      }
    }
    trim(rdf);
    return canonical(document);
  }

  private static boolean saysAnything(Element description) {
    var attributes = description.getAttributes();
    for (int i = 0; i < attributes.getLength(); i++) {
      var attribute = attributes.item(i);
      if (!RDF.equals(attribute.getNamespaceURI())
          && !attribute.getNodeName().startsWith("xmlns")) {
        return true;
      }
    }
    return false;
  }

  private static void trim(Element element) {
    for (Node child = element.getFirstChild(); child != null; ) {
      var next = child.getNextSibling();
      if (child instanceof Text text && text.getData().isBlank()) {
        element.removeChild(child);
      }
      child = next;
    }
  }

  static List<Element> elements(Element parent) {
    var elements = new ArrayList<Element>();
    for (var child = parent.getFirstChild(); child != null; child = child.getNextSibling()) {
      if (child instanceof Element element) {
        elements.add(element);
      }
    }
    return elements;
  }

  private static String canonical(Document document) throws Exception {
    var xml = XmlText.of(document.getDocumentElement());
    var canon = canonicalisation();
    canon.init((TransformParameterSpec) null);
    var out =
        (OctetStreamData)
            canon.transform(new OctetStreamData(new ByteArrayInputStream(utf8(xml))), null);
    return new String(out.getOctetStream().readAllBytes(), StandardCharsets.UTF_8);
  }

  private static TransformService canonicalisation() throws NoSuchAlgorithmException {
    return TransformService.getInstance(CanonicalizationMethod.INCLUSIVE_WITH_COMMENTS, "DOM");
  }

  /** A segment of a JPEG. */
  static byte[] segment(int marker, byte[] body) {
    var bytes = ByteBuffer.allocate(4 + body.length);
    bytes.put((byte) 0xFF).put((byte) marker).putShort((short) (body.length + 2)).put(body);
    return bytes.array();
  }

  static byte[] xmpSegment(byte[] packet) {
    return segment(0xE1, joined(utf8("http://ns.adobe.com/xap/1.0/\0"), packet));
  }

  static byte[] joined(byte[]... parts) {
    int length = 0;
    for (var part : parts) {
      length += part.length;
    }
    var all = ByteBuffer.allocate(length);
    for (var part : parts) {
      all.put(part);
    }
    return all.array();
  }

  /** A JPEG with more segments right behind its start. */
  static byte[] with(byte[] jpeg, byte[]... segments) {
    var start = new byte[] {jpeg[0], jpeg[1]};
    var rest = Arrays.copyOfRange(jpeg, 2, jpeg.length);
    return joined(start, joined(segments), rest);
  }

  /**
   * A TIFF of two grey pixels by TIFF 6.0: head, directory, picture. Each field of the directory is
   * a tag, a type, a count and a value.
   */
  static byte[] tiff(ByteOrder order, int magic, int... more) {
    int[] usual = {
      256, 3, 1, 2, 257, 3, 1, 1, 258, 3, 1, 8, 259, 3, 1, 1, 262, 3, 1, 1, 273, 4, 1, 0, 278, 3, 1,
      1, 279, 4, 1, 2
    };
    int count = (usual.length + more.length) / 4;
    int data = 8 + 2 + 12 * count + 4;
    var bytes = ByteBuffer.allocate(data + 2).order(order);
    bytes.put(utf8(order == ByteOrder.BIG_ENDIAN ? "MM" : "II"));
    bytes.putShort((short) magic).putInt(8).putShort((short) count);
    for (int i = 0; i < usual.length + more.length; i += 4) {
      int[] from = i < usual.length ? usual : more;
      int at = i < usual.length ? i : i - usual.length;
      bytes.putShort((short) from[at]).putShort((short) from[at + 1]).putInt(from[at + 2]);
      int value = from[at] == 273 ? data : from[at + 3];
      if (from[at + 1] == 3) {
        bytes.putShort((short) value).putShort((short) 0);
      } else {
        bytes.putInt(value);
      }
    }
    bytes.putInt(0).put((byte) 0x40).put((byte) 0x80);
    return bytes.array();
  }

  static Path write(Path file, byte[] bytes) throws Exception {
    return Files.write(file, bytes);
  }
}
