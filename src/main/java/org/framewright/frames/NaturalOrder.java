package org.framewright.frames;

import java.util.Comparator;

/** Texts in the order that people expect: runs of digits compare as numbers, so 9 before 10. */
final class NaturalOrder implements Comparator<String> {
  static final NaturalOrder INSTANCE = new NaturalOrder();

  @Override
  public int compare(String first, String second) {
    int i = 0;
    int j = 0;
    while (i < first.length() && j < second.length()) {
      int iEnd = digitsEnd(first, i);
      int jEnd = digitsEnd(second, j);
      int order;
      if (iEnd > i && jEnd > j) {
        order = numbers(number(first, i, iEnd), number(second, j, jEnd));
        i = iEnd;
        j = jEnd;
      } else {
        order = Character.compare(first.charAt(i++), second.charAt(j++));
      }
      if (order != 0) {
        return order;
      }
    }
    int rest = Integer.compare(first.length() - i, second.length() - j);
    return rest != 0 ? rest : first.compareTo(second);
  }

  private static int digitsEnd(String text, int from) {
    int end = from;
    while (end < text.length() && text.charAt(end) >= '0' && text.charAt(end) <= '9') {
      end++;
    }
    return end;
  }

  /** The digits without the zeros before them; of zeros alone, one stays. */
  private static String number(String text, int from, int to) {
    int begin = from;
    while (begin < to - 1 && text.charAt(begin) == '0') {
      begin++;
    }
    return text.substring(begin, to);
  }

  private static int numbers(String a, String b) {
    return a.length() != b.length() ? Integer.compare(a.length(), b.length()) : a.compareTo(b);
  }
}
