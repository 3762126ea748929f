package org.framewright.shotlist;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/** Knows files that are no lists by their first bytes. */
final class FileKind {
  private static final String SAVE_AS = "Save the list as .xlsx or .csv and give that.";

  /** The parts of a protected workbook, see [MS-OFFCRYPTO], section 1.3.2. */
  private static final byte[] PROTECTED = "EncryptedPackage".getBytes(StandardCharsets.UTF_16LE);

  private record Signature(Text what, String start) {}

  private static final List<Signature> SIGNATURES =
      List.of(
          new Signature(Text.of("this is a PDF, no list"), "%PDF"),
          new Signature(Text.of("this is a picture (JPEG), no list"), "\u00FF\u00D8\u00FF"),
          new Signature(Text.of("this is a picture (PNG), no list"), "\u0089PNG"),
          new Signature(Text.of("this is a picture (TIFF or raw), no list"), "II*\0"),
          new Signature(Text.of("this is a picture (TIFF or raw), no list"), "MM\0*"),
          new Signature(Text.of("this is a packed file (gzip), no list"), "\u001F\u008B"),
          new Signature(Text.of("this is a text document (RTF), no list"), "{\\rtf"));

  private FileKind() {}

  static boolean isZip(byte[] bytes) {
    return Encoding.starts(bytes, 'P', 'K', 3, 4) || Encoding.starts(bytes, 'P', 'K', 5, 6);
  }

  /** What a file is instead of a list, and the remedy; empty where it may be text. */
  static Optional<Problem> foreign(byte[] bytes) {
    // The compound file of older office programs, see [MS-CFB], section 2.2.
    if (Encoding.starts(bytes, 0xD0, 0xCF, 0x11, 0xE0)) {
      return Optional.of(
          contains(bytes, PROTECTED)
              ? new Problem(
                  "this workbook is protected by a password",
                  "Open it in a spreadsheet program, take the password off and save it again.")
              : new Problem("this is a workbook of the old format (.xls)", SAVE_AS));
    }
    return SIGNATURES.stream()
        .filter(signature -> Encoding.starts(bytes, signature.start().chars().toArray()))
        .findFirst()
        .map(signature -> new Problem(signature.what(), SAVE_AS));
  }

  private static boolean contains(byte[] bytes, byte[] part) {
    for (int i = 0; i + part.length <= bytes.length; i++) {
      if (bytes[i] == part[0] && Arrays.equals(bytes, i, i + part.length, part, 0, part.length)) {
        return true;
      }
    }
    return false;
  }
}
