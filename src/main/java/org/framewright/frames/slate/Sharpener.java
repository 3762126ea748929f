package org.framewright.frames.slate;

import java.util.Arrays;

/**
 * Takes back what blur, movement and pixels as wide as half a module have spread to the modules
 * beside: how much of each of the eight around one is in it is learnt on the modules that are
 * known, as the weights with the least squared error there, together with how the light changes
 * across the symbol.
 */
final class Sharpener {
  private static final int NEIGHBOURS = 9;

  /** The neighbours, one for the level, one each for its change across and down. */
  private static final int WEIGHTS = NEIGHBOURS + 3;

  /** So that there is one solution, and noise is not made much of. */
  private static final double DAMPING = 0.002;

  private final double[][] sums = new double[WEIGHTS][WEIGHTS + 1];
  private final double[] inputs = new double[WEIGHTS];
  private final double[] weights = new double[WEIGHTS];

  /**
   * Fills {@code into} with what is dark: less than 0 dark, more light.
   *
   * @param greys of the symbol's modules with one more on each side, row after row
   */
  void sharpen(FixedModules fixed, float[] greys, float[] into) {
    int side = fixed.side();
    double mean = 0;
    for (int i = 0; i < (side + 2) * (side + 2); i++) {
      mean += greys[i];
    }
    mean /= (side + 2) * (side + 2);
    learn(fixed, greys, mean);
    for (int y = 0; y < side; y++) {
      for (int x = 0; x < side; x++) {
        gather(side, greys, mean, x, y);
        double sum = 0;
        for (int i = 0; i < WEIGHTS; i++) {
          sum += weights[i] * inputs[i];
        }
        into[y * side + x] = (float) sum;
      }
    }
  }

  private void gather(int side, float[] greys, double mean, int x, int y) {
    int stride = side + 2;
    for (int i = 0; i < NEIGHBOURS; i++) {
      inputs[i] = (greys[(y + i / 3) * stride + x + i % 3] - mean) / 64;
    }
    inputs[NEIGHBOURS] = 1;
    inputs[NEIGHBOURS + 1] = 2.0 * x / side - 1;
    inputs[NEIGHBOURS + 2] = 2.0 * y / side - 1;
  }

  private void learn(FixedModules fixed, float[] greys, double mean) {
    for (var row : sums) {
      Arrays.fill(row, 0);
    }
    int side = fixed.side();
    for (int y = 0; y < side; y++) {
      for (int x = 0; x < side; x++) {
        int dark = fixed.at(x, y);
        if (dark != 0) {
          gather(side, greys, mean, x, y);
          for (int i = 0; i < WEIGHTS; i++) {
            for (int j = 0; j < WEIGHTS; j++) {
              sums[i][j] += inputs[i] * inputs[j];
            }
            sums[i][WEIGHTS] -= inputs[i] * dark;
          }
        }
      }
    }
    solve();
  }

  /** Gauss's elimination; the matrix is symmetric and, damped, positive. */
  private void solve() {
    double trace = 0;
    for (int i = 0; i < WEIGHTS; i++) {
      trace += sums[i][i];
    }
    for (int i = 0; i < WEIGHTS; i++) {
      sums[i][i] += DAMPING * trace / WEIGHTS;
    }
    for (int i = 0; i < WEIGHTS; i++) {
      for (int row = i + 1; row < WEIGHTS; row++) {
        double part = sums[row][i] / sums[i][i];
        for (int column = i; column <= WEIGHTS; column++) {
          sums[row][column] -= part * sums[i][column];
        }
      }
    }
    for (int i = WEIGHTS - 1; i >= 0; i--) {
      double sum = sums[i][WEIGHTS];
      for (int column = i + 1; column < WEIGHTS; column++) {
        sum -= sums[i][column] * weights[column];
      }
      weights[i] = sum / sums[i][i];
    }
  }
}
