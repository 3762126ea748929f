package org.framewright.job;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.OptionalInt;
import org.framewright.Templates;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;

/**
 * What it costs to read the codes of a list, as the app does with each change of it, and to find
 * one: 500, 5,000 and 50,000 setups with six columns of product numbers. The first line is that of
 * a program just started. {@code mvn -q -Pbench -Dbench=Codes}.
 */
final class CodesBenchmark {
  private static final int COLUMNS = 6;
  private static final int FOUND = 1_000;

  private CodesBenchmark() {}

  public static void main(String[] args) {
    for (int setups : new int[] {5_000, 500, 5_000, 5_000, 50_000}) {
      run(setups);
    }
  }

  private static void run(int setups) {
    var list = list(setups);
    var threads = ManagementFactory.getThreadMXBean();
    long cpu = threads.getCurrentThreadCpuTime();
    long begin = System.nanoTime();
    var codes = SetupCodes.of(list, Templates.fashionDays(), List.of());
    long read = System.nanoTime();
    long cpuOfReading = threads.getCurrentThreadCpuTime() - cpu;
    int right = 0;
    for (int i = 0; i < FOUND; i++) {
      int setup = 1 + i % setups;
      if (codes.find(code(setup, i % COLUMNS)) instanceof Scanned.One(var one)
          && one.code().equals("" + setup)) {
        right++;
      }
    }
    long found = System.nanoTime();
    System.out.printf(
        "%,7d setups: read in %,5d ms, of processor %,5d ms; %,d of %,d found, %,d µs each%n",
        setups,
        (read - begin) / 1_000_000,
        cpuOfReading / 1_000_000,
        right,
        FOUND,
        (found - read) / 1_000 / FOUND);
  }

  private static ShotList list(int setups) {
    var all = new ArrayList<Setup>();
    for (int i = 1; i <= setups; i++) {
      var columns = new LinkedHashMap<String, String>();
      for (int column = 0; column < COLUMNS; column++) {
        columns.put("EAN size " + (34 + 2 * column), code(i, column));
      }
      all.add(new Setup("" + i, "Garment " + i, List.of(), OptionalInt.empty(), columns));
    }
    return new ShotList(all);
  }

  /** A number of 13 digits with its check digit (GS1 General Specifications, 7.9; from memory). */
  private static String code(int setup, int column) {
    var digits = "40%07d%03d".formatted(setup, column);
    int sum = 0;
    for (int i = 0; i < digits.length(); i++) {
      sum += (digits.charAt(i) - '0') * (i % 2 == 0 ? 1 : 3);
    }
    return digits + (10 - sum % 10) % 10;
  }
}
