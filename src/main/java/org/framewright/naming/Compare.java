package org.framewright.naming;

/**
 * The comparison of two names as they come, character by character; the two need not come at the
 * same pace. A value: feeding gives another comparison, and equal comparisons have equal futures.
 */
sealed interface Compare {
  /** Adds text to the end of both names. */
  Compare feed(String first, String second);

  /** The sign of the comparison once both names are complete. */
  int end();

  /** Whether nothing that follows can change the sign; the sign is then {@link #end}'s. */
  boolean isDecided();

  /** Whether as many characters are known of the one name as of the other, or no more matter. */
  boolean keepsPace();

  static Compare bytes() {
    return new Bytes(0, "", "");
  }

  static Compare numbers() {
    return new Numbers(0, false, false, 0, 0, 0, "", "", new Bytes(0, "", ""));
  }

  /**
   * By bytes of UTF-8. Names have no surrogates of their own making, so UTF-16 units compare alike.
   *
   * @param first what the first name is ahead, if it is
   */
  record Bytes(int sign, String first, String second) implements Compare {
    @Override
    public Compare feed(String a, String b) {
      if (sign != 0) {
        return this;
      }
      var x = first + a;
      var y = second + b;
      int common = Math.min(x.length(), y.length());
      for (int i = 0; i < common; i++) {
        if (x.charAt(i) != y.charAt(i)) {
          return new Bytes(x.charAt(i) < y.charAt(i) ? -1 : 1, "", "");
        }
      }
      return new Bytes(0, x.substring(common), y.substring(common));
    }

    @Override
    public int end() {
      return sign != 0 ? sign : Integer.compare(first.length(), second.length());
    }

    @Override
    public boolean isDecided() {
      return sign != 0;
    }

    @Override
    public boolean keepsPace() {
      return first.isEmpty() && second.isEmpty();
    }
  }

  /**
   * As file browsers show names: digits in a row compare as one number whatever their zeros in
   * front, other characters without regard to case; where that makes no difference, by bytes.
   *
   * @param inNumber both names are within a number
   * @param begun a digit other than 0 was seen in it
   * @param digits the sign of the first digits that differ
   * @param longer by how many digits the first number is longer, once {@code digits} is known
   * @param lead by how many characters more of the first name are known
   */
  record Numbers(
      int sign,
      boolean inNumber,
      boolean begun,
      int digits,
      int longer,
      int lead,
      String first,
      String second,
      Bytes bytes)
      implements Compare {
    @Override
    public Compare feed(String a, String b) {
      if (sign != 0) {
        return this;
      }
      int leads = lead + a.length() - b.length();
      return step(first + a, second + b, leads, (Bytes) bytes.feed(a, b), false);
    }

    @Override
    public int end() {
      return sign != 0 ? sign : step(first, second, lead, bytes, true).sign;
    }

    @Override
    public boolean isDecided() {
      return sign != 0;
    }

    @Override
    public boolean keepsPace() {
      return lead == 0;
    }

    private static Numbers decided(int sign) {
      return new Numbers(sign, false, false, 0, 0, 0, "", "", new Bytes(0, "", ""));
    }

    private static boolean isDigit(char c) {
      return c >= '0' && c <= '9';
    }

    private static char folded(char c) {
      return Character.toLowerCase(Character.toUpperCase(c));
    }

    /** Compares as far as both names are known; {@code ended} says that nothing follows. */
    private Numbers step(String x, String y, int leads, Bytes tie, boolean ended) {
      int i = 0;
      int j = 0;
      boolean number = inNumber;
      boolean started = begun;
      int differ = digits;
      int more = longer;
      while (true) {
        boolean noX = i == x.length();
        boolean noY = j == y.length();
        if (!number) {
          if (noX || noY) {
            if (!ended) {
              break;
            }
            return decided(noX && noY ? tie.end() : noX ? -1 : 1);
          }
          char c = x.charAt(i);
          char d = y.charAt(j);
          if (isDigit(c) && isDigit(d)) {
            number = true;
            started = false;
            differ = 0;
            more = 0;
          } else if (folded(c) != folded(d)) {
            return decided(folded(c) < folded(d) ? -1 : 1);
          } else {
            i++;
            j++;
          }
          continue;
        }
        boolean digitX = !noX && isDigit(x.charAt(i));
        boolean digitY = !noY && isDigit(y.charAt(j));
        boolean endX = noX ? ended : !digitX;
        boolean endY = noY ? ended : !digitY;
        if (differ == 0 && more == 0 && !started && digitX && x.charAt(i) == '0') {
          i++;
        } else if (differ == 0 && more == 0 && !started && digitY && y.charAt(j) == '0') {
          j++;
        } else if (differ == 0 && more == 0 && digitX && digitY) {
          differ = Character.compare(x.charAt(i), y.charAt(j));
          started = true;
          i++;
          j++;
        } else if ((differ != 0 || more != 0 || endY) && digitX) {
          more++;
          i++;
        } else if ((differ != 0 || more != 0 || endX) && digitY) {
          more--;
          j++;
        } else if (endX && endY) {
          if (more != 0 || differ != 0) {
            return decided(more != 0 ? Integer.signum(more) : Integer.signum(differ));
          }
          number = false;
        } else {
          break;
        }
      }
      return new Numbers(
          0,
          number,
          number && started,
          number ? Integer.signum(differ) : 0,
          number ? more : 0,
          leads,
          x.substring(i),
          y.substring(j),
          tie);
    }
  }
}
