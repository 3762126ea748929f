package org.framewright.mhl;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import org.framewright.base.FileProblemException;

/**
 * The lists of a history in their order, each with the C4 of its bytes.
 *
 * @param links the first generation first
 */
record Chain(List<Link> links) {
  static final String FILE = "ascmhl_chain.xml";
  private static final String NAMESPACE = "urn:ASC:MHL:DIRECTORY:v2.0";
  private static final int MOST = 10_000;

  /** One list. */
  record Link(String name, String c4) {}

  Chain {
    links = List.copyOf(links);
  }

  /**
   * Reads a chain.
   *
   * @param file what to call it before a person
   */
  static Chain read(byte[] document, String file) throws FileProblemException {
    var xml = new Elements(document, file, NAMESPACE, "ascmhldirectory");
    var links = new ArrayList<Link>();
    var names = new HashSet<String>();
    for (var element = xml.next(); element.isPresent(); element = xml.next()) {
      if (!element.get().equals("hashlist")) {
        xml.skip();
        continue;
      }
      var number = xml.attribute("sequencenr").orElse("").strip();
      var name = "";
      var c4 = "";
      for (var part = xml.next(); part.isPresent(); part = xml.next()) {
        switch (part.get()) {
          case "path" -> name = xml.text();
          case "c4" -> c4 = xml.text().strip();
          default -> xml.skip();
        }
      }
      if (!MhlPath.isName(name) || !names.add(name) || HashKind.C4.bytes(c4).isEmpty()) {
        throw xml.wrong("it names a list in a way that is not understood");
      }
      links.add(new Link(name, c4));
      if (!number.equals("" + links.size()) || links.size() > MOST) {
        throw xml.wrong("its lists are not numbered from 1 to " + MOST + " at the most");
      }
    }
    return new Chain(links);
  }

  Chain with(String name, byte[] list) {
    var longer = new ArrayList<>(links);
    longer.add(new Link(name, c4(list)));
    return new Chain(longer);
  }

  static String c4(byte[] bytes) {
    var hash = HashKind.C4.begin();
    hash.update(ByteBuffer.wrap(bytes));
    return HashKind.C4.text(hash.value());
  }

  byte[] bytes() {
    var text = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    text.append("<ascmhldirectory xmlns=\"").append(NAMESPACE).append("\">\n");
    for (int i = 0; i < links.size(); i++) {
      text.append("  <hashlist sequencenr=\"").append(i + 1).append("\">\n");
      text.append("    <path>").append(XmlText.of(links.get(i).name())).append("</path>\n");
      text.append("    <c4>").append(links.get(i).c4()).append("</c4>\n");
      text.append("  </hashlist>\n");
    }
    return text.append("</ascmhldirectory>\n").toString().getBytes(StandardCharsets.UTF_8);
  }
}
