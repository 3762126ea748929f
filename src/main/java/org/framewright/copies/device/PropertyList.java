package org.framewright.copies.device;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * A property list as XML, see plist(5) of macOS: its dictionary at the top, with texts, numbers as
 * texts, lists and dictionaries. Nothing outside of it is ever fetched.
 */
final class PropertyList {
  private static final int DEEPEST = 16;

  private PropertyList() {}

  /** The dictionary at the top; empty if it is none. */
  static Optional<Map<String, Object>> read(byte[] xml) {
    try {
      var factory = DocumentBuilderFactory.newInstance();
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      // Apple's own lists name their DTD, so that it must be allowed, and is not fetched.
      factory.setFeature("http://xml.org/sax/features/external-general-entities", false);
      factory.setFeature("http://xml.org/sax/features/external-parameter-entities", false);
      factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
      factory.setExpandEntityReferences(false);
      var builder = factory.newDocumentBuilder();
      builder.setErrorHandler(null);
      builder.setEntityResolver((_, _) -> new InputSource(new StringReader("")));
      var root = builder.parse(new ByteArrayInputStream(xml)).getDocumentElement();
      var top = elements(root);
      return top.size() == 1 && top.getFirst().getTagName().equals("dict")
          ? Optional.of(dictionary(top.getFirst(), 0))
          : Optional.empty();
    } catch (ParserConfigurationException | SAXException | IOException e) {
      return Optional.empty();
    }
  }

  private static Map<String, Object> dictionary(Element element, int depth) {
    var values = new LinkedHashMap<String, Object>();
    String key = null;
    for (var child : elements(element)) {
      if (child.getTagName().equals("key")) {
        key = child.getTextContent();
      } else if (key != null) {
        values.put(key, value(child, depth + 1));
        key = null;
      }
    }
    return values;
  }

  private static Object value(Element element, int depth) {
    if (depth > DEEPEST) {
      return "";
    }
    return switch (element.getTagName()) {
      case "dict" -> dictionary(element, depth);
      case "array" -> elements(element).stream().map(child -> value(child, depth + 1)).toList();
      case "true", "false" -> element.getTagName();
      default -> element.getTextContent().strip();
    };
  }

  private static List<Element> elements(Element parent) {
    var elements = new ArrayList<Element>();
    for (Node node = parent.getFirstChild(); node != null; node = node.getNextSibling()) {
      if (node instanceof Element element) {
        elements.add(element);
      }
    }
    return elements;
  }
}
