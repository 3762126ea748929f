package org.framewright.shotlist;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Problem;

/** Knows files that are no lists by their first bytes. */
final class FileKind {
  private static final String SAVE_AS = "Save the list as .xlsx or .csv and give that.";

  /** The parts of a protected workbook, see [MS-OFFCRYPTO], section 1.3.2. */
  private static final byte[] PROTECTED = "EncryptedPackage".getBytes(StandardCharsets.UTF_16LE);

  private record Signature(String what, int... bytes) {}

  private static final List<Signature> SIGNATURES =
      List.of(
          new Signature("this is a PDF", '%', 'P', 'D', 'F'),
          new Signature("this is a picture (JPEG)", 0xFF, 0xD8, 0xFF),
          new Signature("this is a picture (PNG)", 0x89, 'P', 'N', 'G'),
          new Signature("this is a picture (TIFF or raw)", 'I', 'I', 0x2A, 0),
          new Signature("this is a picture (TIFF or raw)", 'M', 'M', 0, 0x2A),
          new Signature("this is a packed file (gzip)", 0x1F, 0x8B),
          new Signature("this is a text document (RTF)", '{', '\\', 'r', 't', 'f'));

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
        .filter(signature -> Encoding.starts(bytes, signature.bytes()))
        .findFirst()
        .map(signature -> new Problem(signature.what() + ", no list", SAVE_AS));
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
