package org.framewright.shotlist;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** Finds out how bytes are to be read as text. */
final class Encoding {
  private static final Charset WINDOWS_1252 = Charset.forName("windows-1252");

  private Encoding() {}

  /**
   * @param name for people, such as {@code UTF-16, big-endian}
   * @param isCut whether the bytes end in the middle of a character, which is left out
   */
  record Decoded(String text, String name, boolean isCut) {}

  /**
   * By the byte-order mark (Unicode, section 23.8); else UTF-16 where every other byte is zero;
   * else UTF-8 where that fits without a fault; else Windows-1252, in which nearly everything fits.
   */
  static Decoded decode(byte[] bytes) {
    if (starts(bytes, 0xEF, 0xBB, 0xBF)) {
      return new Decoded(
          lenient(bytes, 3, bytes.length, StandardCharsets.UTF_8), "UTF-8 with a mark", false);
    }
    if (starts(bytes, 0xFF, 0xFE)) {
      return wide(bytes, 2, StandardCharsets.UTF_16LE, "UTF-16, little-endian");
    }
    if (starts(bytes, 0xFE, 0xFF)) {
      return wide(bytes, 2, StandardCharsets.UTF_16BE, "UTF-16, big-endian");
    }
    var wide = wide(bytes);
    if (wide.isPresent()) {
      return wide.get();
    }
    try {
      var text =
          StandardCharsets.UTF_8
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT)
              .decode(ByteBuffer.wrap(bytes));
      return new Decoded(text.toString(), "UTF-8", false);
    } catch (CharacterCodingException e) {
      return new Decoded(lenient(bytes, 0, bytes.length, WINDOWS_1252), "Windows-1252", false);
    }
  }

  /** Whether bytes begin with these. */
  static boolean starts(byte[] bytes, int... mark) {
    if (bytes.length < mark.length) {
      return false;
    }
    for (int i = 0; i < mark.length; i++) {
      if ((bytes[i] & 0xFF) != mark[i]) {
        return false;
      }
    }
    return true;
  }

  private static Optional<Decoded> wide(byte[] bytes) {
    int looked = Math.min(bytes.length, 4096) & ~1;
    int even = 0;
    int odd = 0;
    for (int i = 0; i < looked; i += 2) {
      even += bytes[i] == 0 ? 1 : 0;
      odd += bytes[i + 1] == 0 ? 1 : 0;
    }
    int pairs = looked / 2;
    if (pairs > 1 && odd > pairs / 2 && even == 0) {
      return Optional.of(wide(bytes, 0, StandardCharsets.UTF_16LE, "UTF-16, little-endian"));
    }
    if (pairs > 1 && even > pairs / 2 && odd == 0) {
      return Optional.of(wide(bytes, 0, StandardCharsets.UTF_16BE, "UTF-16, big-endian"));
    }
    return Optional.empty();
  }

  private static Decoded wide(byte[] bytes, int from, Charset charset, String name) {
    int end = bytes.length - (bytes.length - from) % 2;
    return new Decoded(lenient(bytes, from, end, charset), name, end < bytes.length);
  }

  /** What does not fit becomes U+FFFD, which the reader then says. */
  private static String lenient(byte[] bytes, int from, int end, Charset charset) {
    return new String(bytes, from, end - from, charset);
  }
}
