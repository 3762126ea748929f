package org.framewright.mhl;

import java.io.StringReader;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.framewright.base.FileProblemException;
import org.framewright.base.Problem;

/**
 * The elements of a document of other people, one after the other. It is UTF-8, has no DOCTYPE and
 * is not nested deeply; nothing outside of it is ever looked up.
 */
final class Elements {
  private static final int DEEPEST = 64;
  private static final int LONGEST_TEXT = 1 << 15;
  private static final byte[] DOCTYPE = "<!DOCTYPE".getBytes(StandardCharsets.US_ASCII);

  private final String file;
  private final String namespace;
  private final XMLStreamReader xml;

  /**
   * Goes to the root.
   *
   * @param file what to call the document before a person
   */
  Elements(byte[] document, String file, String namespace, String root)
      throws FileProblemException {
    this.file = file;
    this.namespace = namespace;
    var factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    if (hasDoctype(document)) {
      throw new FileProblemException(
          new Problem("it has a DOCTYPE, which no such list has", file, Remedy.TEXT));
    }
    try {
      // Bytes that are no UTF-8 would be told on the standard error by the parser itself.
      xml = factory.createXMLStreamReader(new StringReader(text(document)));
      while (xml.next() != XMLStreamConstants.START_ELEMENT) {
        if (xml.getEventType() == XMLStreamConstants.DTD) {
          throw wrong("it has a DOCTYPE, which no such list has");
        }
      }
      if (!is(root)) {
        throw wrong("it is no list of ASC MHL 2.0");
      }
    } catch (XMLStreamException | RuntimeException e) {
      throw unreadable(e);
    }
  }

  /** What to do about a list that cannot be used. */
  private static final class Remedy {
    static final String TEXT = "Bring it back from a copy, or have it made anew.";
  }

  private static String text(byte[] document) throws XMLStreamException {
    try {
      var text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(document)).toString();
      return text.startsWith("\uFEFF") ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      throw new XMLStreamException(e);
    }
  }

  private static boolean hasDoctype(byte[] document) {
    for (int i = 0; i + DOCTYPE.length <= document.length; i++) {
      int k = 0;
      while (k < DOCTYPE.length && document[i + k] == DOCTYPE[k]) {
        k++;
      }
      if (k == DOCTYPE.length) {
        return true;
      }
    }
    return false;
  }

  private boolean is(String element) {
    return xml.getLocalName().equals(element) && namespace.equals(xml.getNamespaceURI());
  }

  /** The next element inside the one that was begun; empty at its end. */
  Optional<String> next() throws FileProblemException {
    try {
      while (true) {
        switch (xml.next()) {
          case XMLStreamConstants.START_ELEMENT -> {
            if (namespace.equals(xml.getNamespaceURI())) {
              return Optional.of(xml.getLocalName());
            }
            skip();
          }
          case XMLStreamConstants.END_ELEMENT -> {
            return Optional.empty();
          }
          case XMLStreamConstants.END_DOCUMENT -> throw wrong("it ends too early");
          default -> {}
        }
      }
    } catch (XMLStreamException | RuntimeException e) {
      throw unreadable(e);
    }
  }

  /** Passes over the element that was begun, with all that is in it. */
  void skip() throws FileProblemException {
    int within = 1;
    try {
      while (within > 0) {
        switch (xml.next()) {
          case XMLStreamConstants.START_ELEMENT -> within++;
          case XMLStreamConstants.END_ELEMENT -> within--;
          default -> {}
        }
        if (within > DEEPEST) {
          throw wrong("it is nested too deeply");
        }
      }
    } catch (XMLStreamException | RuntimeException e) {
      throw unreadable(e);
    }
  }

  /** The text of the element that was begun, and to its end. */
  String text() throws FileProblemException {
    var text = new StringBuilder();
    try {
      while (true) {
        switch (xml.next()) {
          case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA, XMLStreamConstants.SPACE ->
              text.append(xml.getTextCharacters(), xml.getTextStart(), xml.getTextLength());
          case XMLStreamConstants.END_ELEMENT -> {
            return text.toString();
          }
          case XMLStreamConstants.COMMENT, XMLStreamConstants.PROCESSING_INSTRUCTION -> {}
          default -> throw wrong("there is something other than text in an element of text");
        }
        if (text.length() > LONGEST_TEXT) {
          throw wrong("a text in it is longer than any of its kind");
        }
      }
    } catch (XMLStreamException | RuntimeException e) {
      throw unreadable(e);
    }
  }

  /** An attribute of the element that was begun. */
  Optional<String> attribute(String name) {
    return Optional.ofNullable(xml.getAttributeValue(null, name));
  }

  /** What is wrong where it was read to. */
  FileProblemException wrong(String what) {
    var at = xml.getLocation();
    return new FileProblemException(
        new Problem(
            what,
            file + ", line " + at.getLineNumber() + ", column " + at.getColumnNumber(),
            Remedy.TEXT));
  }

  private FileProblemException unreadable(Exception cause) {
    var wrong =
        xml == null
            ? new FileProblemException(new Problem("it is no XML", file, Remedy.TEXT))
            : wrong("it is no whole XML document");
    wrong.initCause(cause);
    return wrong;
  }
}
