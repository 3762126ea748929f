package org.framewright.shotlist;

import java.nio.charset.Charset;
import java.util.List;

/** The encodings that people choose from, where one is not found out. */
public final class Encodings {
  /** By common practice of spreadsheets, no source; by their names in Java. */
  private static final List<String> COMMON =
      List.of(
          "UTF-8",
          "windows-1252",
          "windows-1250",
          "windows-1251",
          "windows-1253",
          "windows-1254",
          "windows-1255",
          "windows-1256",
          "windows-1257",
          "x-MacRoman",
          "GB18030",
          "Big5",
          "windows-31j",
          "EUC-JP",
          "EUC-KR",
          "UTF-16LE",
          "UTF-16BE");

  private Encodings() {}

  /** Those that this Java has, the most common first. */
  public static List<String> common() {
    return COMMON.stream().filter(Charset::isSupported).toList();
  }

  /** What people call one. */
  public static String name(String encoding) {
    try {
      return EncodingGuess.name(Charset.forName(encoding)).replace("x-Mac", "Mac ");
    } catch (IllegalArgumentException e) {
      return encoding;
    }
  }
}
