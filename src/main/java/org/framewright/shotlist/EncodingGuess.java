package org.framewright.shotlist;

import com.ibm.icu.text.CharsetDetector;
import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToLongFunction;

/**
 * Guesses how bytes that are neither UTF-8 nor UTF-16 are to be read. ICU's detector names what may
 * be; lists are short, so that what the headings say counts first, then whether the letters make
 * words, then the detector's confidence.
 */
final class EncodingGuess {
  private static final Charset WINDOWS_1252 = Charset.forName("windows-1252");

  /** So many bytes show what a list is written in. */
  private static final int SAMPLE = 1 << 16;

  /** Most lists without a mark come from spreadsheets of Western Europe. Common practice. */
  private static final int FAVOUR = 30;

  /** Confidences of ICU that are so near say nothing. */
  private static final int NEAR = 10;

  private static final int NO_LETTER = 3;

  /** A sign in the middle of a word. */
  private static final int SIGN = 2;

  /** Supersets of what ICU names, as spreadsheets write them: Unicode, Windows best-fit tables. */
  private static final Map<String, List<String>> WRITTEN_AS =
      Map.of(
          "ISO-8859-1", List.of("windows-1252"),
          "ISO-8859-2", List.of("windows-1250", "ISO-8859-2"),
          "ISO-8859-9", List.of("windows-1254"),
          "Shift_JIS", List.of("windows-31j"));

  /** What ICU does not know and spreadsheets write. */
  private static final List<String> OTHERS = List.of("windows-1252", "x-MacRoman", "UTF-8");

  /**
   * The characters that are common in a standard for East Asian text: those of its first level, by
   * the byte that they begin with (GB/T 2312, JIS X 0208, Big5; in KS X 1001 all but its Hanja).
   */
  private record Level(String charset, int lastLead) {}

  private static final Map<String, Level> LEVELS =
      Map.of(
          "GB18030", new Level("GB2312", 0xD7),
          "Big5", new Level("Big5", 0xC6),
          "windows-31j", new Level("windows-31j", 0x97),
          "EUC-JP", new Level("windows-31j", 0x97),
          "ISO-2022-JP", new Level("windows-31j", 0x97),
          "EUC-KR", new Level("EUC-KR", 0xC8));

  private record Candidate(Charset charset, String sample, long known, int odd, int confidence) {
    /** The confidence, with what speaks for the most common encoding. */
    int favoured() {
      return confidence + (charset.equals(WINDOWS_1252) ? FAVOUR : 0);
    }

    /** Whether the two say the same of this list. */
    boolean reads(Candidate other) {
      return sample.equals(other.sample);
    }
  }

  private EncodingGuess() {}

  static Encoding.Decoded of(byte[] bytes, ToLongFunction<String> known) {
    var sample = sample(bytes);
    var candidates = new ArrayList<Candidate>();
    confidences(sample)
        .forEach(
            (charset, confidence) -> {
              var text = new String(sample, charset);
              candidates.add(
                  new Candidate(
                      charset, text, known.applyAsLong(text), oddness(text, charset), confidence));
            });
    candidates.sort(
        Comparator.comparingLong(Candidate::known)
            .reversed()
            .thenComparingInt(Candidate::odd)
            .thenComparing(Comparator.comparingInt(Candidate::favoured).reversed()));
    var best = candidates.getFirst();
    boolean isGuess =
        candidates.stream()
            .anyMatch(
                other ->
                    !other.reads(best)
                        && other.known == best.known
                        && other.odd <= best.odd
                        && other.confidence > best.confidence - NEAR
                        && other.confidence >= NEAR);
    return new Encoding.Decoded(
        new String(bytes, best.charset), name(best.charset), best.charset.name(), false, isGuess);
  }

  /** For people. */
  static String name(Charset charset) {
    return charset.name().replace("windows-31j", "Shift_JIS").replace("windows", "Windows");
  }

  private static byte[] sample(byte[] bytes) {
    if (bytes.length <= SAMPLE) {
      return bytes;
    }
    int end = SAMPLE;
    while (end > 1 && bytes[end - 1] != '\n') {
      end--;
    }
    return Arrays.copyOf(bytes, end > 1 ? end : SAMPLE);
  }

  /** What the bytes may be, with ICU's confidence from 0 to 100 and what speaks for it besides. */
  private static Map<Charset, Integer> confidences(byte[] sample) {
    var confidences = new LinkedHashMap<Charset, Integer>();
    var detector = new CharsetDetector();
    detector.setText(sample);
    for (var match : detector.detectAll()) {
      for (var name : WRITTEN_AS.getOrDefault(match.getName(), List.of(match.getName()))) {
        if (!name.startsWith("UTF") && !name.startsWith("IBM") && Charset.isSupported(name)) {
          confidences.merge(Charset.forName(name), match.getConfidence(), Math::max);
        }
      }
    }
    for (var name : OTHERS) {
      if (Charset.isSupported(name)) {
        confidences.putIfAbsent(Charset.forName(name), 0);
      }
    }
    return confidences;
  }

  /** How much of a text is no word of any language. */
  private static int oddness(String text, Charset charset) {
    int odd = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c < 0x80) {
        continue;
      }
      char before = i == 0 ? ' ' : text.charAt(i - 1);
      char after = i + 1 == text.length() ? ' ' : text.charAt(i + 1);
      if (Character.isSurrogate(c) || isNoText(c)) {
        odd += NO_LETTER;
      } else if (c >= 0xFF61 && c <= 0xFF9F) {
        odd++;
      } else if (isEastAsian(c)) {
        odd += isLower(before) || isLower(after) ? NO_LETTER : 0;
        odd += isCommon(c, charset) ? 0 : 1;
      } else if (Character.isUpperCase(c) && Character.isLowerCase(before)) {
        odd++;
      } else if (isAccented(c) && isAccented(before) && i > 1 && isAccented(text.charAt(i - 2))) {
        odd++; // words of letters of another script look so
      } else if (isSignInWord(before, c, after)) {
        odd += SIGN;
      }
    }
    return odd;
  }

  private static boolean isCommon(char c, Charset charset) {
    var level = LEVELS.get(charset.name());
    if (level == null || !Charset.isSupported(level.charset())) {
      return true;
    }
    var bytes = String.valueOf(c).getBytes(Charset.forName(level.charset()));
    return bytes.length > 1 && (bytes[0] & 0xFF) <= level.lastLead();
  }

  private static boolean isAccented(char c) {
    return c >= 0x80
        && Character.isLetter(c)
        && Character.UnicodeScript.of(c) == Character.UnicodeScript.LATIN;
  }

  private static boolean isSignInWord(char before, char c, char after) {
    if (Character.isLetterOrDigit(c) || c == '\u2019') {
      return false;
    }
    return (Character.isLetter(before) && Character.isLetter(after))
        || (isSymbol(c) && (Character.isLetter(before) || Character.isLetter(after)));
  }

  private static boolean isSymbol(char c) {
    return switch (Character.getType(c)) {
      case Character.MATH_SYMBOL, Character.OTHER_SYMBOL -> true;
      default -> false;
    };
  }

  private static boolean isNoText(char c) {
    return c == '\uFFFD'
        || switch (Character.getType(c)) {
          case Character.CONTROL, Character.PRIVATE_USE, Character.UNASSIGNED -> true;
          default -> false;
        };
  }

  private static boolean isLower(char c) {
    return c >= 'a' && c <= 'z';
  }

  private static boolean isEastAsian(char c) {
    return Character.isIdeographic(c)
        || (c >= 0x3040 && c <= 0x30FF)
        || (c >= 0xAC00 && c <= 0xD7A3);
  }
}
