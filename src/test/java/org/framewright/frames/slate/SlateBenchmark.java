package org.framewright.frames.slate;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.UnaryOperator;

/**
 * How many slates are read in made-up pictures, by size, share and trouble, what is found where
 * there is none, and the processor's time for it. Arguments: pictures for each number, pictures
 * without a slate.
 */
final class SlateBenchmark {
  private static final Slate SLATE = Slate.of(new JobKey("K7Q2"), "014");
  private static final double[] SHARES = {0.03, 0.05, 0.08, 0.12, 0.2, 0.4};

  private final SlateReader reader = new SlateReader(Duration.ofMinutes(1));
  private final ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
  private int wrong;

  private SlateBenchmark() {}

  public static void main(String[] args) {
    int each = args.length > 0 ? Integer.parseInt(args[0]) : 24;
    int empty = args.length > 1 ? Integer.parseInt(args[1]) : 10_000;
    var benchmark = new SlateBenchmark();
    benchmark.shares(each);
    benchmark.grounds(each);
    benchmark.troubles(each);
    benchmark.empty(empty);
    System.out.println("wrong texts: " + benchmark.wrong);
  }

  private boolean reads(SlateScene scene) {
    var reading = reader.read(scene.picture(SLATE));
    if (reading instanceof SlateReading.Found(var slate) && slate.equals(SLATE)) {
      return true;
    }
    wrong += reading instanceof SlateReading.None ? 0 : 1;
    return false;
  }

  private void shares(int each) {
    System.out.println("Read, in percent, of " + each + ", by long side and share of it:");
    System.out.printf(Locale.ROOT, "%6s", "");
    for (double share : SHARES) {
      System.out.printf(Locale.ROOT, "%8.0f %%", share * 100);
    }
    System.out.println();
    for (int edge : new int[] {640, 1024, 1440, 1620, 2048}) {
      System.out.printf(Locale.ROOT, "%6d", edge);
      for (double share : SHARES) {
        int read = 0;
        for (int seed = 0; seed < each; seed++) {
          read += reads(SlateScene.plain(edge, share, seed)) ? 1 : 0;
        }
        System.out.printf(Locale.ROOT, "%10d", 100 * read / each);
      }
      System.out.println();
    }
  }

  private void grounds(int each) {
    System.out.println("At 1620 pixels, share 8 %, in percent, by what is behind the card");
    for (int kind = 0; kind < SlateScene.GROUNDS.size(); kind++) {
      int read = 0;
      for (int i = 0; i < each; i++) {
        long seed = kind + 100L * SlateScene.GROUNDS.size() + (long) i * SlateScene.GROUNDS.size();
        read += reads(SlateScene.plain(1620, 0.08, seed)) ? 1 : 0;
      }
      System.out.printf(
          Locale.ROOT, "%-34s %4d%n", SlateScene.GROUNDS.get(kind), 100 * read / each);
    }
    int read = 0;
    for (int seed = -each; seed < 0; seed++) {
      read += reads(SlateScene.plain(1620, 0.08, seed)) ? 1 : 0;
    }
    System.out.printf(
        Locale.ROOT, "%-34s %4d%n", "dots with rings like its marks", 100 * read / each);
  }

  private void trouble(String what, int each, UnaryOperator<SlateScene> how) {
    int small = 0;
    int large = 0;
    for (int seed = 0; seed < each; seed++) {
      small += reads(how.apply(SlateScene.plain(1620, 0.08, seed))) ? 1 : 0;
      var scene = how.apply(SlateScene.plain(1620, 0.08, seed));
      large += reads(scene.covered(scene.covered(), true)) ? 1 : 0;
    }
    System.out.printf(Locale.ROOT, "%-34s %4d %4d%n", what, 100 * small / each, 100 * large / each);
  }

  private void troubles(int each) {
    System.out.println("At 1620 pixels, share 8 %, in percent: small card, large card");
    trouble("as above", each, scene -> scene);
    for (int tilt : new int[] {30, 45}) {
      trouble("tilt " + tilt, each, scene -> scene.tilted(tilt));
    }
    for (double blur : new double[] {0.0006, 0.0012, 0.002}) {
      trouble("blur " + blur * 100 + " % of the long side", each, scene -> scene.blurred(blur));
    }
    for (double way : new double[] {0.003, 0.005}) {
      trouble("moved " + way * 100 + " %", each, scene -> scene.moved(way));
    }
    for (int noise : new int[] {12, 20, 30, 45}) {
      trouble("noise " + noise + " of 255", each, scene -> scene.noisy(noise));
    }
    for (double light : new double[] {0.5, 0.25, 0.12}) {
      trouble("light " + light + ", noise 8", each, scene -> scene.dark(light).noisy(8));
    }
    for (double black : new double[] {0.5, 0.3, 0.2}) {
      trouble("contrast " + black, each, scene -> scene.pale(black));
    }
    for (double part : new double[] {0.05, 0.07, 0.1, 0.15}) {
      trouble("covered " + part * 100 + " %", each, scene -> scene.covered(part, scene.held()));
    }
    trouble(
        "tilt 35, blur 0.06 %, noise 14, contrast 0.6",
        each, scene -> scene.tilted(35).blurred(0.0006).noisy(14).pale(0.6));
  }

  private void empty(int count) {
    int found = 0;
    var hits = new double[Math.min(count, 200)];
    for (int i = 0; i < hits.length; i++) {
      hits[i] = milliseconds(SlateScene.plain(1620, 0.05 + i % 10 * 0.02, i));
    }
    var misses = new double[count];
    for (int i = 0; i < count; i++) {
      var scene = SlateScene.empty(i % 4 == 0 ? 1620 : i % 4 == 1 ? 640 : 1024, 1_000_000L + i);
      var picture = scene.picture(SLATE);
      long before = threads.getCurrentThreadCpuTime();
      found += reader.read(picture) instanceof SlateReading.None ? 0 : 1;
      misses[i] = i % 4 == 0 ? (threads.getCurrentThreadCpuTime() - before) / 1e6 : -1;
    }
    System.out.println("Slates found in " + count + " pictures without one: " + found);
    tell("with one, 1620 pixels", hits);
    tell("without, 1620 pixels", Arrays.stream(misses).filter(ms -> ms >= 0).toArray());
  }

  private double milliseconds(SlateScene scene) {
    var picture = scene.picture(SLATE);
    long before = threads.getCurrentThreadCpuTime();
    reader.read(picture);
    return (threads.getCurrentThreadCpuTime() - before) / 1e6;
  }

  private static void tell(String what, double[] times) {
    if (times.length == 0) {
      return;
    }
    Arrays.sort(times);
    System.out.printf(
        Locale.ROOT,
        "processor, %s: median %.1f ms, 95 %% below %.1f, most %.1f%n",
        what,
        times[times.length / 2],
        times[Math.min(times.length - 1, times.length * 95 / 100)],
        times[times.length - 1]);
  }
}
