package org.framewright.frames.slate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Finds marks that may be the three of one symbol, the likeliest first. */
final class TrioFinder {
  /** From mark to mark, in modules as the marks tell them: 14 or 18, turned and tilted. */
  private static final double NEAREST = 6.5;

  private static final double FARTHEST = 23;
  private static final double SAME_SIZE = 1.7;

  /** Of the two sides, and of the angle between them: tilted by 45 degrees. */
  private static final double MOST_UNEQUAL = 1.9;

  private static final double LEAST_SINE = 0.75;

  /** Dense fabrics have tens of thousands. */
  private static final int MOST_COMPARED = 12_000;

  /** A symbol is liker than what a fabric has; to read one that is none takes 2 ms. */
  private static final int MOST_KEPT = 10;

  private static final int LAST_OF_CORNER = 3;
  private static final double LEAST_OF_CORNER = 0.4;
  private static final double LEAST = 0.5;

  /** Likelier than this is not what it is taken for only by its far side being smaller. */
  private static final double SURE = 0.8;

  /**
   * By how much of it a symbol near the lens, a fifth of the picture wide, seems smaller from one
   * mark to the next: tilted by 45 degrees at 40 percent of the width 0.13, by a lens of 50 mm.
   */
  private static final float[] NARROWED = {-0.1f, 0, 0.1f};

  private static final int NEAR_PART = 5;

  private static final List<FixedModules> SIZES = List.of(FixedModules.SMALL, FixedModules.LARGE);

  private final Correlation correlation = new Correlation();
  private Pyramid pyramid;
  private int compared;

  private record Crowd(Mark mark, List<Mark> near) {}

  List<Trio> find(Pyramid picture, List<Mark> marks) {
    pyramid = picture;
    compared = 0;
    var trios = new ArrayList<Trio>();
    // A mark of a symbol stands alone, one of a fabric among many.
    for (var crowd : crowds(marks)) {
      for (int i = 0; i < crowd.near.size(); i++) {
        for (int j = 0; j < i; j++) {
          compare(crowd.mark, crowd.near.get(i), crowd.near.get(j), trios);
        }
      }
      if (compared > MOST_COMPARED) {
        break;
      }
    }
    trios.sort(Comparator.comparingDouble(Trio::correlation).reversed());
    return trios.subList(0, Math.min(MOST_KEPT, trios.size()));
  }

  private static List<Crowd> crowds(List<Mark> marks) {
    var sorted = marks.stream().sorted(Comparator.comparingDouble(Mark::x)).toList();
    var crowds = new ArrayList<Crowd>();
    for (int i = 0; i < sorted.size(); i++) {
      var mark = sorted.get(i);
      var near = new ArrayList<Mark>();
      for (int j = i - 1; j >= 0 && isWithin(mark, sorted.get(j)); j--) {
        near(mark, sorted.get(j), near);
      }
      for (int j = i + 1; j < sorted.size() && isWithin(mark, sorted.get(j)); j++) {
        near(mark, sorted.get(j), near);
      }
      if (near.size() >= 2) {
        crowds.add(new Crowd(mark, near));
      }
    }
    crowds.sort(Comparator.comparingInt(crowd -> crowd.near.size()));
    return crowds;
  }

  private static boolean isWithin(Mark mark, Mark other) {
    return Math.abs(mark.x() - other.x()) < FARTHEST * mark.module();
  }

  private static void near(Mark mark, Mark other, List<Mark> into) {
    double distance = mark.distance(other);
    if (distance > NEAREST * mark.module()
        && distance < FARTHEST * mark.module()
        && mark.module() < SAME_SIZE * other.module()
        && other.module() < SAME_SIZE * mark.module()) {
      into.add(other);
    }
  }

  private void compare(Mark corner, Mark one, Mark other, List<Trio> into) {
    double oneSide = corner.distance(one);
    double otherSide = corner.distance(other);
    if (oneSide > MOST_UNEQUAL * otherSide || otherSide > MOST_UNEQUAL * oneSide) {
      return;
    }
    double area =
        (one.x() - corner.x()) * (other.y() - corner.y())
            - (one.y() - corner.y()) * (other.x() - corner.x());
    if (Math.abs(area) < LEAST_SINE * oneSide * otherSide) {
      return;
    }
    // Seen from its corner, what is right is followed by what is below, clockwise.
    var right = area > 0 ? one : other;
    var below = area > 0 ? other : one;
    for (var fixed : SIZES) {
      compared++;
      double like = correlation(corner, right, below, fixed, 0, 0);
      if (like > 0 && like < SURE && isNear(corner, right, below, fixed)) {
        like = narrowed(corner, right, below, fixed, like);
      }
      if (like > LEAST) {
        into.add(new Trio(corner, right, below, fixed, like));
      }
    }
  }

  private boolean isNear(Mark corner, Mark right, Mark below, FixedModules fixed) {
    return Trio.module(corner, right, below, fixed) * fixed.side() * NEAR_PART
        > pyramid.level(0).edge();
  }

  private double narrowed(Mark corner, Mark right, Mark below, FixedModules fixed, double plain) {
    double best = plain;
    for (float across : NARROWED) {
      for (float down : NARROWED) {
        best = Math.max(best, correlation(corner, right, below, fixed, across, down));
      }
    }
    return best;
  }

  /**
   * As if the symbol narrowed so from mark to mark: by nothing, a parallelogram. Nothing where the
   * first marks are not like marks.
   */
  private double correlation(
      Mark corner, Mark right, Mark below, FixedModules fixed, float across, float down) {
    int level = pyramid.levelFor(Trio.module(corner, right, below, fixed));
    var picture = pyramid.level(level);
    float between = fixed.betweenMarks();
    float cornerX = Pyramid.in(level, (float) corner.x());
    float cornerY = Pyramid.in(level, (float) corner.y());
    float acrossX = Pyramid.in(level, (float) right.x()) * (1 + across) - cornerX;
    float acrossY = Pyramid.in(level, (float) right.y()) * (1 + across) - cornerY;
    float downX = Pyramid.in(level, (float) below.x()) * (1 + down) - cornerX;
    float downY = Pyramid.in(level, (float) below.y()) * (1 + down) - cornerY;
    int side = fixed.side();
    correlation.clear();
    for (int y = 0; y < side; y++) {
      for (int x = 0; x < side; x++) {
        int dark = fixed.at(x, y);
        if (dark != 0) {
          float u = (x + 0.5f - FixedModules.TO_MARK) / between;
          float v = (y + 0.5f - FixedModules.TO_MARK) / between;
          float far = 1 + u * across + v * down;
          correlation.add(
              dark,
              picture.at(
                  (cornerX + u * acrossX + v * downX) / far,
                  (cornerY + u * acrossY + v * downY) / far));
        }
      }
      if (y == LAST_OF_CORNER && correlation.value() < LEAST_OF_CORNER) {
        return 0;
      }
    }
    return correlation.value();
  }
}
