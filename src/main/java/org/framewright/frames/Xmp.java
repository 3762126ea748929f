package org.framewright.frames;

import com.adobe.internal.xmp.XMPConst;
import com.adobe.internal.xmp.XMPException;
import com.adobe.internal.xmp.XMPMetaFactory;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.OptionalInt;

/**
 * The rating in an XMP packet: property Rating of namespace http://ns.adobe.com/xap/1.0/, a real
 * number from 0 to 5, or -1 for rejected; as an attribute or as an element.
 */
final class Xmp {
  private static final int LARGEST = 4 << 20;

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
    var bytes = packet.read(0, (int) packet.size());
    var latin = new String(bytes, StandardCharsets.ISO_8859_1).replace("\0", "");
    if (latin.contains("<!DOCTYPE")) {
      throw new Malformed("it declares a document type, which no XMP does");
    }
    if (!latin.contains("Rating")) {
      if (!latin.contains("RDF>") && !latin.contains("xmpmeta>")) {
        throw new Malformed("it is no XMP, or its end is missing");
      }
      return OptionalInt.empty();
    }
    try {
      var text = XMPMetaFactory.parseFromBuffer(bytes).getPropertyString(XMPConst.NS_XMP, "Rating");
      return text == null ? OptionalInt.empty() : OptionalInt.of(rating(text));
    } catch (XMPException | RuntimeException | StackOverflowError e) {
      throw new Malformed("its XMP cannot be read: " + e.getMessage());
    }
  }

  private static int rating(String text) throws Malformed {
    double value;
    try {
      value = Double.parseDouble(text.strip());
    } catch (NumberFormatException e) {
      throw new Malformed("its rating \"%s\" is no number".formatted(text));
    }
    if (!(value >= -1 && value <= 5)) {
      throw new Malformed("its rating %s is not between -1 and 5".formatted(text));
    }
    return (int) Math.round(value);
  }
}
