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
        order = numbers(first.substring(i, iEnd), second.substring(j, jEnd));
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

  private static int numbers(String first, String second) {
    var a = first.replaceFirst("^0+(?=.)", "");
    var b = second.replaceFirst("^0+(?=.)", "");
    return a.length() != b.length() ? Integer.compare(a.length(), b.length()) : a.compareTo(b);
  }
}
