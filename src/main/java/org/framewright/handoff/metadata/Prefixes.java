package org.framewright.handoff.metadata;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import javax.xml.XMLConstants;
import org.w3c.dom.Attr;
import org.w3c.dom.Element;

/**
 * The prefixes under which a packet's namespaces go. A packet with two prefixes for one namespace
 * is refused by some readers (exiv2 0.27: "URI and prefix mismatch"), so that its own are used.
 */
final class Prefixes {
  private final Map<String, String> byUri = new HashMap<>();
  private final Map<String, String> byPrefix = new HashMap<>();
  private final Map<Namespace, String> chosen = new EnumMap<>(Namespace.class);

  private Prefixes() {}

  static Prefixes of(Element root) {
    var prefixes = new Prefixes();
    prefixes.learn(root);
    return prefixes;
  }

  private void learn(Element element) {
    var attributes = element.getAttributes();
    for (int i = 0; i < attributes.getLength(); i++) {
      var attribute = (Attr) attributes.item(i);
      if (XMLConstants.XMLNS_ATTRIBUTE.equals(attribute.getPrefix())) {
        byUri.putIfAbsent(attribute.getValue(), attribute.getLocalName());
        byPrefix.putIfAbsent(attribute.getLocalName(), attribute.getValue());
      }
    }
    Packet.elements(element).forEach(this::learn);
  }

  String of(Namespace namespace) {
    return chosen.computeIfAbsent(namespace, this::choose);
  }

  private String choose(Namespace namespace) {
    var bound = byUri.get(namespace.uri());
    if (bound != null) {
      return bound;
    }
    var prefix = namespace.prefix();
    for (int i = 1; byPrefix.containsKey(prefix); i++) {
      prefix = namespace.prefix() + i;
    }
    byPrefix.put(prefix, namespace.uri());
    return prefix;
  }

  String qualified(Name name) {
    return of(name.namespace()) + ":" + name.local();
  }
}
