package org.framewright.frames.slate;

import java.util.ArrayList;
import java.util.List;

/**
 * A picture at its size, at half of it, at a quarter, and so on. What is small is found in the
 * first, what is large, blurred or noisy in one of the others. Reuses its memory.
 */
final class Pyramid {
  /** Of the shorter side: a smaller picture shows no symbol. */
  private static final int LEAST = 20;

  /** A module so many pixels wide is still told from those beside it, and noise is evened out. */
  private static final double LEAST_SAMPLED = 1.8;

  private final List<byte[]> rooms = new ArrayList<>();
  private final List<GreyPicture> levels = new ArrayList<>();

  void build(GreyPicture picture) {
    levels.clear();
    levels.add(picture);
    var last = picture;
    while (Math.min(last.width(), last.height()) / 2 >= LEAST) {
      last = last.halved(room(levels.size() - 1, last.width() / 2 * (last.height() / 2)));
      levels.add(last);
    }
  }

  private byte[] room(int number, int size) {
    if (number == rooms.size()) {
      rooms.add(new byte[size]);
    } else if (rooms.get(number).length < size) {
      rooms.set(number, new byte[size]);
    }
    return rooms.get(number);
  }

  int levels() {
    return levels.size();
  }

  GreyPicture level(int number) {
    return levels.get(number);
  }

  /** The level at which modules that are so wide in the whole picture are best sampled. */
  int levelFor(double module) {
    int level = 0;
    while (level + 1 < levels.size() && module / (2 << level) >= LEAST_SAMPLED) {
      level++;
    }
    return level;
  }

  /** The place in a level of a place in the whole picture. */
  static float in(int level, float whole) {
    return (whole + 0.5f) / (1 << level) - 0.5f;
  }

  /** The place in the whole picture of a place in a level. */
  static double whole(int level, double place) {
    return (place + 0.5) * (1 << level) - 0.5;
  }
}
