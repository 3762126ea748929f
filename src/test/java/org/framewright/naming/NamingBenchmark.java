package org.framewright.naming;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;

/**
 * Names read a second, against java.util.regex on the same language in the same run, names built a
 * second, and the time of a check. {@code mvn -Pbench -Dbench=Naming}.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
public class NamingBenchmark {
  private static final int NAMES = 1_000;

  /** The frame names of the fashion template by hand, dates and all but the length of months. */
  private static final Pattern FRAME =
      Pattern.compile(
          "(?<day>(?:19|2[01])[0-9]{2}(?:0[1-9]|1[0-2])(?:0[1-9]|[12][0-9]|3[01]))"
              + "_(?<client>[A-Z0-9]{2,6})_(?<setup>[0-9]{3})(?:_(?<view>[FBSD]))?_(?<take>[0-9]{4})");

  private static final List<String> GROUPS = List.of("day", "client", "setup", "view", "take");

  private Convention fashion;
  private List<String> names;
  private List<Map<String, String>> values;

  @Setup
  public void make() throws Exception {
    fashion = template("fashion-days");
    names = new ArrayList<>();
    values = new ArrayList<>();
    for (int i = 0; i < NAMES; i++) {
      var given = new LinkedHashMap<String, String>();
      given.put("day", "2026-11-" + (10 + i % 20));
      given.put("client", i % 3 == 0 ? "NOVA" : "NORTH" + i % 10);
      given.put("setup", String.valueOf(1 + i % 40));
      if (i % 4 != 0) {
        given.put("view", "FBSD".substring(i % 4, i % 4 + 1));
      }
      given.put("take", String.valueOf(1 + i));
      values.add(given);
      names.add(((Built.Name) fashion.build("frame", given)).text());
    }
  }

  private static Convention template(String name) throws Exception {
    return ((Convention.Parsed.Sound) Convention.read(Path.of("templates", name + ".yaml")))
        .convention();
  }

  @Benchmark
  public int readAsFrame() {
    int fields = 0;
    for (var name : names) {
      fields += ((Reading.One) fashion.read(name, "frame")).fields().size();
    }
    return fields;
  }

  @Benchmark
  public int readAsAnyKind() {
    int fields = 0;
    for (var name : names) {
      fields += ((Reading.One) fashion.read(name)).fields().size();
    }
    return fields;
  }

  @Benchmark
  public int readByRegex() {
    int fields = 0;
    for (var name : names) {
      var matcher = FRAME.matcher(name);
      if (!matcher.matches()) {
        throw new IllegalStateException(name);
      }
      var read = new LinkedHashMap<String, String>();
      for (var group : GROUPS) {
        var text = matcher.group(group);
        if (text != null) {
          read.put(group, text);
        }
      }
      fields += read.size();
    }
    return fields;
  }

  @Benchmark
  public int build() {
    int length = 0;
    for (var given : values) {
      length += ((Built.Name) fashion.build("frame", given)).text().length();
    }
    return length;
  }

  /** Each template in turn. */
  @State(Scope.Benchmark)
  public static class Template {
    @Param({
      "editorial",
      "event-two-rooms",
      "fashion-days",
      "food",
      "gs1-product-images",
      "image-receivers",
      "interiors",
      "portraits",
      "still-life-gtin"
    })
    public String name;

    private Convention convention;

    @Setup
    public void read() throws Exception {
      convention = template(name);
    }
  }

  @Benchmark
  @BenchmarkMode(Mode.AverageTime)
  @OutputTimeUnit(TimeUnit.MILLISECONDS)
  public List<Finding> check(Template template) {
    return template.convention.check(999);
  }

  public static void main(String[] args) throws RunnerException {
    var options =
        new OptionsBuilder()
            .include(NamingBenchmark.class.getSimpleName())
            .forks(1)
            .warmupIterations(2)
            .warmupTime(TimeValue.seconds(1))
            .measurementIterations(3)
            .measurementTime(TimeValue.seconds(1))
            .build();
    System.out.println("One operation of read and build is " + NAMES + " names.");
    var scores = new LinkedHashMap<String, Double>();
    for (var result : new Runner(options).run()) {
      var template = result.getParams().getParam("name");
      scores.put(
          result.getPrimaryResult().getLabel() + (template == null ? "" : " " + template),
          result.getPrimaryResult().getScore());
    }
    for (var name : List.of("readAsFrame", "readAsAnyKind", "readByRegex", "build")) {
      System.out.printf("%-14s %,12.0f names/s%n", name, scores.get(name) * NAMES);
    }
    System.out.printf(
        "read / regex   %.2f%n", scores.get("readAsFrame") / scores.get("readByRegex"));
    scores.forEach(
        (name, score) -> {
          if (name.startsWith("check ")) {
            System.out.printf("%-26s %6.2f ms%n", name, score);
          }
        });
  }
}
