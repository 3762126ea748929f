package org.framewright.shotlist;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.function.ToLongFunction;

/** Finds out how bytes are to be read as text. */
final class Encoding {
  private static final int ESCAPE = 0x1B;

  private Encoding() {}

  /**
   * @param name for people, such as {@code UTF-16, big-endian}
   * @param charset its name in the IANA registry
   * @param isCut whether the bytes end in the middle of a character, which is left out
   * @param isGuess whether another encoding fits nearly as well
   */
  record Decoded(String text, String name, String charset, boolean isCut, boolean isGuess) {
    private Decoded(String text, String name, Charset charset, boolean isCut) {
      this(text, name, charset.name(), isCut, false);
    }
  }

  /** The same without knowing what a list says. */
  static Decoded decode(byte[] bytes) {
    return decode(bytes, _ -> 0);
  }

  /**
   * By the byte-order mark (Unicode, section 23.8); else UTF-16 where every other byte is zero;
   * else UTF-8 where that fits without a fault; else by {@link EncodingGuess}.
   *
   * @param known how much of a text is known
   */
  static Decoded decode(byte[] bytes, ToLongFunction<String> known) {
    if (starts(bytes, 0xEF, 0xBB, 0xBF)) {
      return new Decoded(
          lenient(bytes, 3, bytes.length, StandardCharsets.UTF_8),
          "UTF-8 with a mark",
          StandardCharsets.UTF_8,
          false);
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
    var utf8 =
        switchesSets(bytes) ? Optional.<String>empty() : strict(bytes, StandardCharsets.UTF_8);
    return utf8.map(text -> new Decoded(text, "UTF-8", StandardCharsets.UTF_8, false))
        .orElseGet(() -> EncodingGuess.of(bytes, known));
  }

  /** In an encoding that a person named; empty where the bytes are no text of it. */
  static Optional<Decoded> decode(byte[] bytes, Charset charset) {
    return strict(bytes, charset)
        .map(text -> text.startsWith("\uFEFF") ? text.substring(1) : text)
        .map(text -> new Decoded(text, EncodingGuess.name(charset), charset, false));
  }

  /** The text of bytes without a fault; empty if there is one. */
  static Optional<String> strict(byte[] bytes, Charset charset) {
    try {
      return Optional.of(
          charset
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT)
              .decode(ByteBuffer.wrap(bytes))
              .toString());
    } catch (CharacterCodingException e) {
      return Optional.empty();
    }
  }

  /** Seven-bit text that switches between sets of characters: ISO/IEC 2022, as in ISO-2022-JP. */
  private static boolean switchesSets(byte[] bytes) {
    for (int i = 0; i + 1 < bytes.length; i++) {
      if (bytes[i] == ESCAPE && bytes[i + 1] == '$') {
        return true;
      }
    }
    return false;
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
    return new Decoded(lenient(bytes, from, end, charset), name, charset, end < bytes.length);
  }

  /** What does not fit becomes U+FFFD, which the reader then says. */
  private static String lenient(byte[] bytes, int from, int end, Charset charset) {
    return new String(bytes, from, end - from, charset);
  }
}
