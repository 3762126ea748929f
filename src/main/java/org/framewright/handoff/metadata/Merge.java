package org.framewright.handoff.metadata;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.xml.XMLConstants;
import org.w3c.dom.Attr;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Puts a block into a packet. What is not of the block stays as it was; of the block goes in what
 * the packet does not say yet, or what is to be said whatever it says. A second time changes
 * nothing.
 */
final class Merge {
  private static final String DEFAULT = "x-default";

  private final Packet packet;
  private final Document document;
  private final Prefixes prefixes;
  private final Set<Property> kept = EnumSet.noneOf(Property.class);
  private final List<Element> added = new ArrayList<>();
  private final List<Node> replaced = new ArrayList<>();

  private Merge(Packet packet) {
    this.packet = packet;
    this.document = packet.document();
    this.prefixes = Prefixes.of(document.getDocumentElement());
  }

  /**
   * What came of it; the packet has the block now.
   *
   * @param kept properties of which somebody wrote something else, which stays
   * @param changed whether anything in the packet is different
   */
  record Merged(Packet packet, Set<Property> kept, boolean changed) {}

  static Merged into(Packet packet, Block block, boolean overwrite) {
    var merge = new Merge(packet);
    block.values().forEach((property, value) -> merge.add(block, property, value, overwrite));
    merge.write();
    return new Merged(packet, merge.kept, !merge.added.isEmpty());
  }

  /** Takes of another packet what it says of the properties of a block, and nothing else. */
  static Packet known(Packet of, Block block) {
    var packet = Packet.empty();
    var merge = new Merge(packet);
    for (var property : block.values().keySet()) {
      found(of, property).stream()
          .filter(Merge::hasWords)
          .findFirst()
          .ifPresent(found -> merge.added.add(merge.copied(found, property)));
    }
    merge.write();
    return packet;
  }

  /** Whether a packet says any of what a block is about. */
  static boolean says(Packet packet, Block block) {
    return block.values().keySet().stream()
        .anyMatch(property -> found(packet, property).stream().anyMatch(Merge::hasWords));
  }

  private void add(Block block, Property property, Value value, boolean overwrite) {
    var found = found(packet, property);
    var made = element(property.path(), value);
    if (value instanceof Value.Languages) {
      found.forEach(node -> carryLanguages(node, made));
    }
    boolean same = found.size() == 1 && isSame(found.getFirst(), made);
    if (same) {
      return;
    }
    boolean ours = overwrite || property.isAlwaysOurs();
    if (!ours && found.stream().anyMatch(Merge::hasWords)) {
      if (!words(found).equals(words(List.of(made)))) {
        kept.add(property);
      }
      return;
    }
    if (property == Property.MARKED && !isRightsOurs(block)) {
      return;
    }
    replaced.addAll(found);
    added.add(made);
  }

  /** A mark belongs to the notice that it came with. */
  private boolean isRightsOurs(Block block) {
    return block.values().containsKey(Property.RIGHTS) && !kept.contains(Property.RIGHTS);
  }

  private static List<Node> found(Packet packet, Property property) {
    var found = new ArrayList<Node>();
    var uri = property.path().namespace().uri();
    var local = property.path().local();
    for (var description : packet.descriptions()) {
      var attribute = description.getAttributeNodeNS(uri, local);
      if (attribute != null) {
        found.add(attribute);
      }
      for (var child : Packet.elements(description)) {
        if (uri.equals(child.getNamespaceURI()) && local.equals(child.getLocalName())) {
          found.add(child);
        }
      }
    }
    return found;
  }

  private static boolean isSame(Node found, Element made) {
    return found instanceof Attr attribute
        ? Packet.elements(made).isEmpty() && attribute.getValue().equals(made.getTextContent())
        : found.isEqualNode(made);
  }

  private static boolean hasWords(Node found) {
    return !words(List.of(found)).isEmpty();
  }

  /** All that stands in the values, in order; which of them is which does not matter here. */
  private static List<String> words(List<Node> nodes) {
    var words = new ArrayList<String>();
    nodes.forEach(node -> collect(node, words));
    return words;
  }

  private static void collect(Node node, List<String> words) {
    switch (node) {
      case Attr attribute -> add(attribute.getValue(), words);
      case Element element -> {
        var attributes = element.getAttributes();
        for (int i = 0; i < attributes.getLength(); i++) {
          var attribute = (Attr) attributes.item(i);
          if (isSaid(attribute)) {
            add(attribute.getValue(), words);
          }
        }
        var children = Packet.elements(element);
        if (children.isEmpty()) {
          add(element.getTextContent(), words);
        }
        children.forEach(child -> collect(child, words));
      }
      default -> {}
    }
  }

  /** Whether an attribute is a value, and not a word on how to read one. */
  private static boolean isSaid(Attr attribute) {
    var uri = attribute.getNamespaceURI();
    if (Namespace.RDF.uri().equals(uri)) {
      return attribute.getLocalName().equals("resource")
          || attribute.getLocalName().equals("value");
    }
    return uri != null
        && !uri.equals(XMLConstants.XMLNS_ATTRIBUTE_NS_URI)
        && !uri.equals(XMLConstants.XML_NS_URI);
  }

  private static void add(String text, List<String> words) {
    if (!text.isBlank()) {
      words.add(text.strip());
    }
  }

  private Element copied(Node found, Property property) {
    if (found instanceof Element element) {
      var copy = (Element) document.importNode(element, true);
      bindNames(element, copy);
      return copy;
    }
    return element(property.path(), new Value.Plain(found.getNodeValue()));
  }

  /** The prefixes that an element takes from those around it have to come along. */
  private static void bindNames(Element element, Element copy) {
    var used = new HashSet<Optional<String>>();
    use(element, used);
    for (var prefix : used) {
      var uri = element.lookupNamespaceURI(prefix.orElse(null));
      if (uri != null) {
        copy.setAttributeNS(
            XMLConstants.XMLNS_ATTRIBUTE_NS_URI,
            prefix.map(name -> "xmlns:" + name).orElse("xmlns"),
            uri);
      }
    }
  }

  private static void use(Element element, Set<Optional<String>> used) {
    used.add(Optional.ofNullable(element.getPrefix()));
    var attributes = element.getAttributes();
    for (int i = 0; i < attributes.getLength(); i++) {
      var prefix = attributes.item(i).getPrefix();
      if (prefix != null && !prefix.startsWith("xml")) {
        used.add(Optional.of(prefix));
      }
    }
    Packet.elements(element).forEach(child -> use(child, used));
  }

  /** The other languages of what is replaced stay beside ours. */
  private void carryLanguages(Node found, Element made) {
    if (!(found instanceof Element property)) {
      return;
    }
    var ours = Packet.elements(made).getFirst();
    for (var container : Packet.elements(property)) {
      for (var item : Packet.elements(container)) {
        var language = item.getAttributeNS(XMLConstants.XML_NS_URI, "lang");
        if (Packet.is(item, "li") && !language.isEmpty() && !language.equals(DEFAULT)) {
          ours.appendChild(item.cloneNode(true));
        }
      }
    }
  }

  private Element element(Name name, Value value) {
    var element = document.createElementNS(name.namespace().uri(), prefixes.qualified(name));
    fill(element, value);
    return element;
  }

  private Element rdf(String local) {
    return document.createElementNS(Namespace.RDF.uri(), prefixes.of(Namespace.RDF) + ":" + local);
  }

  private void fill(Element element, Value value) {
    switch (value) {
      case Value.Plain(String text) -> element.appendChild(document.createTextNode(text));
      case Value.Languages(String text) -> {
        var item = rdf("li");
        item.setAttributeNS(XMLConstants.XML_NS_URI, "xml:lang", DEFAULT);
        item.appendChild(document.createTextNode(text));
        var all = rdf("Alt");
        all.appendChild(item);
        element.appendChild(all);
      }
      case Value.Struct struct -> {
        element.setAttributeNS(
            Namespace.RDF.uri(), prefixes.of(Namespace.RDF) + ":parseType", "Resource");
        struct.fields().forEach((name, field) -> element.appendChild(element(name, field)));
      }
      case Value.Items items -> {
        var all = rdf(items.ordered() ? "Seq" : "Bag");
        for (var one : items.items()) {
          var item = rdf("li");
          fill(item, one);
          all.appendChild(item);
        }
        element.appendChild(all);
      }
    }
  }

  private void write() {
    if (added.isEmpty()) {
      return;
    }
    for (var node : replaced) {
      switch (node) {
        case Attr attribute -> attribute.getOwnerElement().removeAttributeNode(attribute);
        default -> node.getParentNode().removeChild(node);
      }
    }
    var description = rdf("Description");
    description.setAttributeNS(Namespace.RDF.uri(), prefixes.of(Namespace.RDF) + ":about", about());
    bind(description, Namespace.RDF);
    added.forEach(element -> bindAll(description, element));
    for (var element : added) {
      description.appendChild(document.createTextNode("\n   "));
      description.appendChild(element);
    }
    description.appendChild(document.createTextNode("\n  "));
    packet.rdf().appendChild(document.createTextNode("\n  "));
    packet.rdf().appendChild(description);
    packet.rdf().appendChild(document.createTextNode("\n "));
  }

  private void bindAll(Element description, Element element) {
    for (var namespace : Namespace.values()) {
      if (namespace.uri().equals(element.getNamespaceURI())
          && prefixes.of(namespace).equals(element.getPrefix())) {
        bind(description, namespace);
      }
    }
    Packet.elements(element).forEach(child -> bindAll(description, child));
  }

  private void bind(Element description, Namespace namespace) {
    var prefix = prefixes.of(namespace);
    if (!namespace.uri().equals(packet.rdf().lookupNamespaceURI(prefix))) {
      description.setAttributeNS(
          XMLConstants.XMLNS_ATTRIBUTE_NS_URI, "xmlns:" + prefix, namespace.uri());
    }
  }

  /** What the file calls itself. */
  private String about() {
    return packet.descriptions().stream()
        .map(
            description ->
                description.hasAttributeNS(Namespace.RDF.uri(), "about")
                    ? description.getAttributeNS(Namespace.RDF.uri(), "about")
                    : description.getAttribute("about"))
        .findFirst()
        .orElse("");
  }
}
