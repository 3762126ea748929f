package org.framewright.shotlist;

import com.ibm.icu.text.CharsetDetector;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
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

  /** Supersets of what ICU names, as spreadsheets write them: Unicode, Windows best-fit tables. */
  private static final Map<String, List<String>> WRITTEN_AS =
      Map.of(
          "ISO-8859-1", List.of("windows-1252"),
          "ISO-8859-2", List.of("windows-1250", "ISO-8859-2"),
          "ISO-8859-9", List.of("windows-1254"),
          "Shift_JIS", List.of("windows-31j"));

  /** What ICU does not know and spreadsheets write. */
  private static final List<String> OTHERS = List.of("windows-1252", "x-MacRoman", "UTF-8");

  private record Candidate(Charset charset, String sample, long known, int odd, int confidence) {
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
            .thenComparing(Comparator.comparingInt(Candidate::confidence).reversed()));
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
    confidences.merge(WINDOWS_1252, FAVOUR, Integer::sum);
    return confidences;
  }

  /** How much of a text is no word of any language. */
  private static int oddness(String text, Charset charset) {
    var common =
        charset.name().equals("GB18030") && Charset.isSupported("GB2312")
            ? Charset.forName("GB2312").newEncoder()
            : StandardCharsets.UTF_8.newEncoder();
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
        odd += common.canEncode(c) ? 0 : 1;
      } else if (Character.isUpperCase(c) && Character.isLowerCase(before)) {
        odd++;
      } else if (!Character.isLetterOrDigit(c)
          && c != '\u2019'
          && Character.isLetter(before)
          && Character.isLetter(after)) {
        odd++;
      }
    }
    return odd;
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
