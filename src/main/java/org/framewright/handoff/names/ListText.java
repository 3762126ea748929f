package org.framewright.handoff.names;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.framewright.base.FileProblemException;
import org.framewright.base.Problem;

/**
 * Makes the bytes of a list a text: UTF-8, UTF-16 with its mark, else Windows-1252, in which names
 * of files look as in most others.
 *
 * @param remark what is to be known of how it was read
 */
record ListText(String text, Optional<String> remark) {
  private static final Charset WINDOWS = Charset.forName("windows-1252");
  private static final int HEAD = 1 << 14;
  private static final Pattern ENCODED_MAIL =
      Pattern.compile("(?im)^content-transfer-encoding:\\s*(base64|quoted-printable)");

  /**
   * Reads a list.
   *
   * @param file named in the problem
   * @throws FileProblemException where it is no text
   */
  static ListText of(byte[] bytes, String file) throws FileProblemException {
    if (begins(bytes, 0xFE, 0xFF) || begins(bytes, 0xFF, 0xFE)) {
      return new ListText(checked(new String(bytes, StandardCharsets.UTF_16), file), none());
    }
    if (begins(bytes, 'P', 'K', 3, 4) || begins(bytes, 0xD0, 0xCF, 0x11, 0xE0)) {
      throw refused(
          "this is a document or a workbook, not a text",
          file,
          "Save it as plain text or CSV where it was written, or copy the names into a text.");
    }
    if (begins(bytes, '%', 'P', 'D', 'F')) {
      throw refused("this is a PDF, not a text", file, "Copy the names into a text file.");
    }
    int from = begins(bytes, 0xEF, 0xBB, 0xBF) ? 3 : 0;
    try {
      var utf8 =
          StandardCharsets.UTF_8
              .newDecoder()
              .decode(ByteBuffer.wrap(bytes, from, bytes.length - from));
      return new ListText(checked(utf8.toString(), file), none());
    } catch (CharacterCodingException e) {
      return new ListText(
          checked(new String(bytes, WINDOWS), file),
          Optional.of("it is not UTF-8 and was read as Windows-1252; check names with accents"));
    }
  }

  private static Optional<String> none() {
    return Optional.empty();
  }

  private static String checked(String text, String file) throws FileProblemException {
    if (text.indexOf('\0') >= 0) {
      throw refused("this is no text", file, "Give a text file with the names of frames.");
    }
    var head = text.substring(0, Math.min(HEAD, text.length()));
    if (ENCODED_MAIL.matcher(head).find()) {
      throw refused(
          "this is a mail as it travels, with its text encoded",
          file,
          "Open it in the mail program and save or copy its text.");
    }
    var beginning = head.strip().toLowerCase(Locale.ROOT);
    if (beginning.startsWith("<!doctype html") || beginning.startsWith("<html")) {
      throw refused("this is a web page, not a text", file, "Open it and copy its text.");
    }
    if (beginning.startsWith("{\\rtf")) {
      throw refused("this is formatted text (RTF)", file, "Save it as plain text.");
    }
    return text;
  }

  private static boolean begins(byte[] bytes, int... with) {
    if (bytes.length < with.length) {
      return false;
    }
    for (int i = 0; i < with.length; i++) {
      if ((bytes[i] & 0xFF) != with[i]) {
        return false;
      }
    }
    return true;
  }

  private static FileProblemException refused(String what, String file, String remedy) {
    return new FileProblemException(new Problem(what, file, remedy));
  }
}
