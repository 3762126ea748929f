package org.framewright.frames.slate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Gathers marks; what is found in several rows and sizes of a picture is one. */
final class Marks {
  /** Fabrics have many; a symbol three. */
  private static final int MOST = 6000;

  private static final int CELL = 16;

  /** In modules. */
  private static final double SAME_PLACE = 1.5;

  private static final double SAME_SIZE = 1.5;

  private final double[] xs = new double[MOST];
  private final double[] ys = new double[MOST];
  private final double[] modules = new double[MOST];
  private final int[] times = new int[MOST];
  private final int[] next = new int[MOST];
  private int[] first = {};
  private int wide;
  private int high;
  private int count;

  /** Begins with a new picture. */
  void clear(int width, int height) {
    wide = width / CELL + 1;
    high = height / CELL + 1;
    if (first.length < wide * high) {
      first = new int[wide * high];
    }
    Arrays.fill(first, 0, wide * high, -1);
    count = 0;
  }

  void add(double x, double y, double module) {
    int column = Math.clamp((int) x / CELL, 0, wide - 1);
    int row = Math.clamp((int) y / CELL, 0, high - 1);
    int known = find(column, row, x, y, module);
    if (known >= 0) {
      double part = 1.0 / ++times[known];
      xs[known] += (x - xs[known]) * part;
      ys[known] += (y - ys[known]) * part;
      modules[known] += (module - modules[known]) * part;
    } else if (count < MOST) {
      xs[count] = x;
      ys[count] = y;
      modules[count] = module;
      times[count] = 1;
      next[count] = first[row * wide + column];
      first[row * wide + column] = count++;
    }
  }

  private int find(int column, int row, double x, double y, double module) {
    double near = Math.max(2, SAME_PLACE * module);
    for (int r = Math.max(0, row - 1); r <= Math.min(high - 1, row + 1); r++) {
      for (int c = Math.max(0, column - 1); c <= Math.min(wide - 1, column + 1); c++) {
        for (int i = first[r * wide + c]; i >= 0; i = next[i]) {
          if (Math.abs(xs[i] - x) < near
              && Math.abs(ys[i] - y) < near
              && modules[i] < module * SAME_SIZE
              && module < modules[i] * SAME_SIZE) {
            return i;
          }
        }
      }
    }
    return -1;
  }

  List<Mark> all() {
    var all = new ArrayList<Mark>(count);
    for (int i = 0; i < count; i++) {
      all.add(new Mark(xs[i], ys[i], modules[i]));
    }
    return all;
  }
}
