package org.framewright.frames.slate;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.UnaryOperator;
import org.framewright.frames.slate.SlateScene.Trouble;

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
    benchmark.shares("Small card, as usual", each, SlateScene::usual);
    benchmark.shares("Small card, hard", each, SlateScene::hard);
    benchmark.shares(
        "Large card, as usual",
        each,
        (edge, share, seed) -> SlateScene.usual(edge, share, seed).large());
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

  @FunctionalInterface
  private interface Scenes {
    SlateScene of(int edge, double share, long seed);
  }

  private void shares(String what, int each, Scenes scenes) {
    System.out.println(what + ": read, in percent, of " + each + ", by long side and share of it:");
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
          read += reads(scenes.of(edge, share, seed)) ? 1 : 0;
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
        read += reads(SlateScene.usual(1620, 0.08, seed)) ? 1 : 0;
      }
      System.out.printf(
          Locale.ROOT, "%-46s %4d%n", SlateScene.GROUNDS.get(kind), 100 * read / each);
    }
  }

  private void trouble(String what, int each, UnaryOperator<SlateScene> how) {
    int small = 0;
    int large = 0;
    for (int seed = 0; seed < each; seed++) {
      small += reads(how.apply(SlateScene.plain(1620, 0.08, seed))) ? 1 : 0;
      var scene = how.apply(SlateScene.plain(1620, 0.08, seed));
      large += reads(scene.large()) ? 1 : 0;
    }
    System.out.printf(Locale.ROOT, "%-46s %4d %4d%n", what, 100 * small / each, 100 * large / each);
  }

  private void troubles(int each) {
    System.out.println("At 1620 pixels, share 8 %, in percent: small card, large card");
    trouble("as above", each, scene -> scene);
    each("tilt", each, Trouble.TILT, 30, 45);
    each("blur, by the long side", each, Trouble.BLUR, 0.0006, 0.0012, 0.002);
    each("moved, by the long side", each, Trouble.MOTION, 0.003, 0.005);
    each("noise, of 255", each, Trouble.NOISE, 12, 20, 30, 45);
    for (double light : new double[] {0.5, 0.25, 0.12}) {
      trouble(
          "light " + light + ", noise 8",
          each,
          scene -> scene.with(Trouble.LIGHT, light).with(Trouble.NOISE, 8));
    }
    each("contrast", each, Trouble.CONTRAST, 0.5, 0.3, 0.2, 0.1);
    each("light on the card alone", each, Trouble.SHADOW, 0.5, 0.25, 0.125);
    each("glare on half of it", each, Trouble.GLARE, 0.6, 0.8, 1);
    each("covered", each, Trouble.COVERED, 0.05, 0.07, 0.1, 0.15);
    each("quality of the JPEG", each, Trouble.QUALITY, 0.6, 0.75, 0.9);
    trouble(
        "tilt 35, blur 0.0006, noise 14, contrast 0.6",
        each,
        scene ->
            scene
                .with(Trouble.TILT, 35)
                .with(Trouble.BLUR, 0.0006)
                .with(Trouble.NOISE, 14)
                .with(Trouble.CONTRAST, 0.6)
                .with(Trouble.QUALITY, 0.7));
  }

  private void each(String what, int each, Trouble trouble, double... much) {
    for (double value : much) {
      trouble(what + " " + value, each, scene -> scene.with(trouble, value));
    }
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
