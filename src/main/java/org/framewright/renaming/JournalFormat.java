package org.framewright.renaming;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.regex.Pattern;
import java.util.zip.CRC32C;

/**
 * A journal as text: JSON Lines in UTF-8, each line an object whose last member {@code crc} is the
 * CRC32C of the line before that member.
 *
 * <pre>
 * {"framewright":"renames","version":1,"batch":"0007-3f9c1a0b","at":"2026-11-25T09:30:00Z",
 *  "undoes":"","guarantee":"native","volume":"ext4","home":"131@1795000000000000000",
 *  "folders":[[],["Day 1"]],"renames":2,"crc":"..."}
 * {"in":1,"from":"IMG_0001.jpg","to":"A_0001.jpg","size":1024,"modified":1795000000000000000,
 *  "key":"131","crc":"..."}
 * {"in":1,"from":"a.jpg","into":0,"to":"b.jpg","temp":"fw-0007-3f9c1a0b-1.tmp","group":"a",
 *  "size":5,"modified":1795000000000000000,"key":"","hash":"...","crc":"..."}
 * {"commit":"SHA-256 of all bytes before this line","crc":"..."}
 * {"end":"done","at":"2026-11-25T09:30:01Z","commit":"the same SHA-256","crc":"..."}
 * </pre>
 *
 * <p>(Each object is one line.) Folders are paths below the root, component by component. A name
 * that is not valid text is {@code {"bytes":"BASE64"}}. {@code size} is in bytes, {@code modified}
 * in nanoseconds since 1970, {@code key} the volume's number of the file, {@code hash} the SHA-256
 * of its first and last 64 KiB where the volume has no such number. {@code home} distinguishes the
 * folder of journals from its copies. {@code end} is {@code done}, {@code rolled back} or {@code
 * stuck}; a line of an end that is torn counts as none.
 */
final class JournalFormat {
  static final Pattern BATCH = Pattern.compile("[0-9]{4,9}-[0-9a-z]{8}");

  static final int VERSION = 1;

  /** Lines to a part, so many that a part is no large object. */
  static final int PART = 1024;

  /** What the checksum of a line begins with. */
  static final String CRC = ",\"crc\":\"";

  /** The bytes of a checksum with what closes the line. */
  static final int CRC_BYTES = CRC.length() + 8 + 2;

  private JournalFormat() {}

  static String hex(CRC32C crc) {
    return HexFormat.of().toHexDigits((int) crc.getValue());
  }

  /** What closes a line that has this checksum. */
  static byte[] closing(CRC32C crc) {
    return (CRC + hex(crc) + "\"}\n").getBytes(StandardCharsets.US_ASCII);
  }

  static String word(Guarantee guarantee) {
    return switch (guarantee) {
      case NATIVE -> "native";
      case LINKED -> "linked";
      case RESERVED -> "reserved";
    };
  }
}
