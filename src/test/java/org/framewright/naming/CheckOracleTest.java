package org.framewright.naming;

import static org.framewright.AssertThat.assertThat;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;

/**
 * The check's proofs against brute force: random conventions over small sets of texts, every name
 * of every kind written out by this test's own code, and every finding decided by comparing the
 * names.
 */
@Tag("slow")
class CheckOracleTest {
  private static final int FEW = 80;
  private static final int MANY = Integer.getInteger("oracle.conventions", 2_000);
  private static final int MOST_NAMES = 1_500;
  private static final int MOST_SORTED = 250;

  private static final List<String> TEXTS =
      List.of(
          "a", "A", "aa", "ab", "b", "1", "11", "10", "2", "01", "_", "a_", "_a", "-a", "CON",
          "nul", "a.", "é", "É", "ß", "ss", "SS", "x1", "x", "x10", "a:");

  private static final List<String> LITERALS = List.of("_", "-", "a", "1", "0", "x", "_v");

  /** A value as it is given and read, its text, and what it says of the time. */
  private record Value(String value, String text, Map<String, Integer> time) {}

  private record Spec(String name, String type, String yaml, List<Value> values) {}

  private sealed interface Item {
    record Lit(String text) implements Item {}

    record Fld(Spec spec) implements Item {}

    record Opt(List<Item> items) implements Item {}
  }

  private record Name(Map<String, Value> values, String text) {
    Map<String, String> plain() {
      var plain = new LinkedHashMap<String, String>();
      values.forEach((field, value) -> plain.put(field, value.value));
      return plain;
    }
  }

  private record Case(String yaml, Map<String, List<Item>> kinds, List<Spec> specs) {}

  // ---- random conventions

  private static final class Maker {
    private final Random random;
    private final List<Spec> specs = new ArrayList<>();

    Maker(long seed) {
      random = new Random(seed);
    }

    private <T> T one(List<T> list) {
      return list.get(random.nextInt(list.size()));
    }

    private Spec spec(String name) {
      return switch (random.nextInt(12)) {
        case 0, 1, 2, 3, 4, 5 -> choice(name);
        case 6 -> number(name);
        case 7, 8 -> counter(name);
        case 9, 10 -> date(name);
        default -> {
          var text = one(TEXTS);
          yield new Spec(
              name,
              "fixed",
              "{type: fixed, text: \"" + text + "\"}",
              List.of(new Value(text, text, Map.of())));
        }
      };
    }

    private Spec choice(String name) {
      var texts = new HashSet<String>();
      int count = 1 + random.nextInt(4);
      while (texts.size() < count) {
        texts.add(one(random.nextBoolean() ? TEXTS.subList(0, 11) : TEXTS));
      }
      var yaml =
          texts.stream()
              .map(text -> "\"" + text + "\"")
              .collect(Collectors.joining(", ", "[", "]"));
      return new Spec(
          name,
          "choice",
          "{type: choice, values: " + yaml + "}",
          texts.stream().map(text -> new Value(text, text, Map.of())).toList());
    }

    private Spec number(String name) {
      int width = 1 + random.nextInt(2);
      int most = width + random.nextInt(3 - width);
      int from = random.nextInt(most == 1 ? 9 : 95);
      int to = Math.min((int) Math.pow(10, most) - 1, from + random.nextInt(6));
      return new Spec(
          name,
          "number",
          "{type: number, digits: " + width + "-" + most + ", from: " + from + ", to: " + to + "}",
          numbers(width, from, to, "number"));
    }

    private Spec counter(String name) {
      int width = 1 + random.nextInt(2);
      int most = width + random.nextInt(3 - width);
      int room = (int) Math.pow(10, most) - 1;
      int start = most == 1 ? random.nextInt(5) : random.nextBoolean() ? 8 : room - 7;
      return new Spec(
          name,
          "counter",
          "{type: counter, digits: " + width + "-" + most + ", start: " + start + "%s}",
          numbers(width, start, room, "count"));
    }

    private static List<Value> numbers(int width, int from, int to, String unit) {
      var values = new ArrayList<Value>();
      for (int n = from; n <= to; n++) {
        var text = String.format(Locale.ROOT, "%0" + width + "d", n);
        values.add(new Value(text, text, Map.of(unit, n)));
      }
      return values;
    }

    private Spec date(String name) {
      var values = new ArrayList<Value>();
      var pattern =
          one(List.of("M", "MM", "d", "MMM", "uu", "uuM", "MMuuuu", "M-uu", "uuuu", "H", "HH"));
      for (int y = 2008; y <= (pattern.contains("u") ? 2010 : 2008); y++) {
        for (int m = 1; m <= (pattern.contains("M") ? 12 : 1); m++) {
          int last = pattern.equals("d") ? 31 : pattern.startsWith("H") ? 23 : 0;
          for (int x = pattern.equals("d") ? 1 : 0; x <= last; x++) {
            values.add(dateValue(pattern, y, m, x));
          }
        }
      }
      return new Spec(
          name, "date", "{type: date, pattern: \"" + pattern + "\", years: 2008-2010}", values);
    }

    private static Value dateValue(String pattern, int y, int m, int x) {
      var months =
          List.of(
              "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec");
      var mm = String.format(Locale.ROOT, "%02d", m);
      var time = new TreeMap<String, Integer>();
      if (pattern.contains("u")) {
        time.put("0year", y);
      }
      if (pattern.contains("M")) {
        time.put("1month", m);
      }
      return switch (pattern) {
        case "M" -> new Value("--" + mm, "" + m, time);
        case "MM" -> new Value("--" + mm, mm, time);
        case "MMM" -> new Value("--" + mm, months.get(m - 1), time);
        case "d" -> new Value(String.format(Locale.ROOT, "---%02d", x), "" + x, Map.of("2day", x));
        case "H" -> new Value(String.format(Locale.ROOT, "%02d", x), "" + x, Map.of("3hour", x));
        case "HH" -> {
          var hour = String.format(Locale.ROOT, "%02d", x);
          yield new Value(hour, hour, Map.of("3hour", x));
        }
        case "uu" -> new Value("" + y, ("" + y).substring(2), time);
        case "uuuu" -> new Value("" + y, "" + y, time);
        case "uuM" -> new Value(y + "-" + mm, ("" + y).substring(2) + m, time);
        case "M-uu" -> new Value(y + "-" + mm, m + "-" + ("" + y).substring(2), time);
        case "MMuuuu" -> new Value(y + "-" + mm, mm + y, time);
        default -> new Value("", "", time);
      };
    }

    private List<Item> items(List<Spec> free, int depth, boolean top) {
      var items = new ArrayList<Item>();
      int count = 1 + random.nextInt(3);
      for (int i = 0; i < count; i++) {
        switch (random.nextInt(6)) {
          case 0 -> items.add(new Item.Lit(one(LITERALS)));
          case 1 -> {
            if (depth < 3) {
              var inner = items(free, depth + 1, false);
              if (hasOwnField(inner)) {
                items.add(new Item.Opt(inner));
              }
            }
          }
          default -> {
            if (!free.isEmpty()) {
              items.add(new Item.Fld(free.remove(random.nextInt(free.size()))));
              if (random.nextInt(3) == 0) {
                items.add(new Item.Lit(one(LITERALS)));
              }
            }
          }
        }
      }
      if (top && items.stream().allMatch(Item.Opt.class::isInstance)) {
        items.add(new Item.Lit(one(LITERALS)));
      }
      return items;
    }

    private static boolean hasOwnField(List<Item> items) {
      return items.stream()
          .anyMatch(item -> item instanceof Item.Fld fld && !fld.spec.type.equals("fixed"));
    }

    Case make() {
      int fields = 1 + random.nextInt(5);
      for (int i = 0; i < fields; i++) {
        specs.add(spec("f" + i));
      }
      var kinds = new LinkedHashMap<String, List<Item>>();
      var patterns = new StringBuilder();
      int count = 1 + random.nextInt(3);
      for (int k = 0; k < count; k++) {
        var items = oneCounter(items(new ArrayList<>(specs), 0, true));
        kinds.put("k" + k, items);
        patterns.append("  k" + k + ": \"" + pattern(items) + "\"\n");
      }
      var yaml = new StringBuilder("convention: random\nfields:\n");
      for (var spec : specs) {
        var others = specs.stream().filter(other -> !other.name.equals(spec.name)).toList();
        var restarts =
            spec.type.equals("counter") && !others.isEmpty() && random.nextBoolean()
                ? ", restarts: " + one(others).name
                : "";
        yaml.append("  " + spec.name + ": " + spec.yaml.replace("%s", restarts) + "\n");
      }
      yaml.append("names:\n").append(patterns).append("folders: {frames: 01_frames}\n");
      return new Case(yaml.toString(), kinds, specs);
    }

    /** A name shows one counter at most; a second one becomes text. */
    private static List<Item> oneCounter(List<Item> items) {
      return oneCounter(items, new boolean[1]);
    }

    private static List<Item> oneCounter(List<Item> items, boolean[] seen) {
      var kept = new ArrayList<Item>();
      for (var item : items) {
        switch (item) {
          case Item.Fld fld when fld.spec.type.equals("counter") && seen[0] ->
              kept.add(new Item.Lit("c"));
          case Item.Fld fld -> {
            seen[0] |= fld.spec.type.equals("counter");
            kept.add(fld);
          }
          case Item.Opt opt -> {
            var inner = oneCounter(opt.items, seen);
            if (hasOwnField(inner)) {
              kept.add(new Item.Opt(inner));
            }
          }
          case Item.Lit lit -> kept.add(lit);
        }
      }
      if (kept.stream().allMatch(Item.Opt.class::isInstance)) {
        kept.add(new Item.Lit("z"));
      }
      return kept;
    }

    private static String pattern(List<Item> items) {
      var pattern = new StringBuilder();
      for (var item : items) {
        switch (item) {
          case Item.Lit lit -> pattern.append(lit.text);
          case Item.Fld fld -> pattern.append('{').append(fld.spec.name).append('}');
          case Item.Opt opt -> pattern.append('[').append(pattern(opt.items)).append(']');
        }
      }
      return pattern.toString();
    }
  }

  // ---- brute force

  /** Every name; none where there are too many to write out. */
  private static List<Name> names(List<Item> items) {
    List<Name> names = List.of(new Name(Map.of(), ""));
    for (var item : items) {
      List<Name> tails =
          switch (item) {
            case Item.Lit lit -> List.of(new Name(Map.of(), lit.text));
            case Item.Fld fld ->
                fld.spec.values.stream()
                    .map(value -> new Name(Map.of(fld.spec.name, value), value.text))
                    .toList();
            case Item.Opt opt -> {
              var inner = new ArrayList<>(names(opt.items));
              if (inner.isEmpty()) {
                yield inner;
              }
              inner.add(new Name(Map.of(), ""));
              yield inner;
            }
          };
      if (tails.isEmpty() || (long) names.size() * tails.size() > 4L * MOST_NAMES) {
        return List.of();
      }
      var longer = new ArrayList<Name>();
      for (var name : names) {
        for (var tail : tails) {
          var values = new TreeMap<>(name.values);
          values.putAll(tail.values);
          longer.add(new Name(values, name.text + tail.text));
        }
      }
      names = longer;
    }
    return names;
  }

  private static String collisionKey(String name) {
    var key =
        Normalizer.normalize(name, Normalizer.Form.NFD)
            .toUpperCase(Locale.ROOT)
            .toLowerCase(Locale.ROOT);
    return Normalizer.normalize(key, Normalizer.Form.NFC);
  }

  static int byNumbers(String a, String b) {
    int i = 0;
    int j = 0;
    while (i < a.length() && j < b.length()) {
      if (Character.isDigit(a.charAt(i)) && Character.isDigit(b.charAt(j))) {
        int endA = i;
        while (endA < a.length() && Character.isDigit(a.charAt(endA))) {
          endA++;
        }
        int endB = j;
        while (endB < b.length() && Character.isDigit(b.charAt(endB))) {
          endB++;
        }
        var x = new java.math.BigInteger(a.substring(i, endA));
        var y = new java.math.BigInteger(b.substring(j, endB));
        if (!x.equals(y)) {
          return x.compareTo(y);
        }
        i = endA;
        j = endB;
      } else {
        char x = Character.toLowerCase(Character.toUpperCase(a.charAt(i++)));
        char y = Character.toLowerCase(Character.toUpperCase(b.charAt(j++)));
        if (x != y) {
          return Character.compare(x, y);
        }
      }
    }
    if (i < a.length() || j < b.length()) {
      return i < a.length() ? 1 : -1;
    }
    return a.compareTo(b);
  }

  private static List<Spec> shown(List<Item> items) {
    var specs = new ArrayList<Spec>();
    for (var item : items) {
      switch (item) {
        case Item.Lit lit -> {}
        case Item.Fld fld -> specs.add(fld.spec);
        case Item.Opt opt -> specs.addAll(shown(opt.items));
      }
    }
    return specs;
  }

  /** Date fields whose units no date field before them shows. */
  private static Set<String> timeFields(List<Item> items) {
    var units = new HashSet<String>();
    var fields = new HashSet<String>();
    for (var spec : shown(items)) {
      var own = spec.values.getFirst().time.keySet();
      if (spec.type.equals("date") && own.stream().noneMatch(units::contains)) {
        units.addAll(own);
        fields.add(spec.name);
      }
    }
    return fields;
  }

  private static boolean isInverted(
      Convention convention, List<Item> items, List<Name> names, Comparator<String> order) {
    var dates = timeFields(items);
    var counter = shown(items).stream().filter(s -> s.type.equals("counter")).findFirst();
    boolean restartsWithTime =
        counter.isPresent()
            && convention.fields().get(counter.get().name).restarts().stream()
                .anyMatch(dates::contains);
    var groups = new HashMap<Map<String, String>, List<Name>>();
    for (var name : names) {
      var others = new TreeMap<String, String>();
      name.values.forEach(
          (field, value) ->
              others.put(
                  field,
                  dates.contains(field) || counter.stream().anyMatch(c -> c.name.equals(field))
                      ? "shown"
                      : value.value));
      groups.computeIfAbsent(others, k -> new ArrayList<>()).add(name);
    }
    for (var group : groups.values()) {
      for (var a : group) {
        for (var b : group) {
          if (order.compare(a.text, b.text) > 0
              && isEarlier(a, b, dates, counter.map(Spec::name).orElse(""), restartsWithTime)) {
            return true;
          }
        }
      }
    }
    return false;
  }

  private static boolean isEarlier(
      Name a, Name b, Set<String> dates, String counter, boolean restartsWithTime) {
    int date = 0;
    var unitsA = new TreeMap<String, Integer>();
    var unitsB = new TreeMap<String, Integer>();
    for (var field : dates) {
      if (a.values.containsKey(field)) {
        unitsA.putAll(a.values.get(field).time);
        unitsB.putAll(b.values.get(field).time);
      }
    }
    for (var unit : unitsA.keySet()) {
      if (date == 0) {
        date = unitsA.get(unit).compareTo(unitsB.get(unit));
      }
    }
    if (!a.values.containsKey(counter)) {
      return date < 0;
    }
    int count =
        a.values.get(counter).time.get("count").compareTo(b.values.get(counter).time.get("count"));
    return date == 0 ? count < 0 : date < 0 && (restartsWithTime || count < 0);
  }

  private static int shortest(List<String> names) {
    return names.stream().mapToInt(String::length).min().orElse(-1);
  }

  private static List<Finding> of(List<Finding> findings, Rule rule, String kind) {
    return findings.stream()
        .filter(finding -> finding.rule() == rule && finding.where().equals("names." + kind))
        .filter(finding -> finding.severity() != Severity.NOTE)
        .toList();
  }

  // ---- the comparison

  private int kindsTried;
  private int ordersTried;
  private int namesTried;
  private final Map<Rule, Integer> found = new TreeMap<>();
  private final List<String> disagreements = new ArrayList<>();

  private void expect(Case tried, String kind, String what, Object expected, Object answer) {
    if (!expected.equals(answer)) {
      disagreements.add(
          what
              + " of "
              + kind
              + ": brute force says "
              + expected
              + ", the check "
              + answer
              + "\n"
              + tried.yaml);
    }
  }

  private void compare(Case tried) {
    var convention = ConventionTest.sound(Convention.parse(tried.yaml, "random"));
    var findings = convention.prove(0);
    findings.forEach(finding -> found.merge(finding.rule(), 1, Integer::sum));
    var all = new LinkedHashMap<String, List<Name>>();
    tried.kinds.forEach((kind, items) -> all.put(kind, names(items)));
    if (all.values().stream().anyMatch(names -> names.isEmpty() || names.size() > MOST_NAMES)) {
      return;
    }
    all.forEach(
        (kind, names) -> {
          kindsTried++;
          namesTried += names.size();
          compare(tried, convention, findings, kind, names);
        });
    var kinds = List.copyOf(all.keySet());
    for (int j = 1; j < kinds.size(); j++) {
      var both = new ArrayList<Integer>();
      var texts = all.get(kinds.get(j)).stream().map(Name::text).collect(Collectors.toSet());
      for (int i = 0; i < j; i++) {
        var common =
            all.get(kinds.get(i)).stream().map(Name::text).filter(texts::contains).toList();
        if (!common.isEmpty()) {
          both.add(shortest(common));
        }
      }
      expect(
          tried,
          kinds.get(j),
          "wrong-kind",
          both,
          of(findings, Rule.WRONG_KIND, kinds.get(j)).stream()
              .map(finding -> finding.witness().orElseThrow().names().getFirst().length())
              .toList());
    }
    if (findings.stream().noneMatch(finding -> finding.severity() == Severity.ERROR)) {
      all.forEach(
          (kind, names) -> {
            for (var name : names) {
              expect(
                  tried,
                  kind,
                  "reading of " + name.text,
                  Map.of(kind, name.plain()),
                  convention.read(name.text) instanceof Reading.One(String id, var fields)
                      ? Map.of(id, Map.copyOf(fields))
                      : "no single reading");
            }
          });
    }
  }

  /** Then that is reported once, at the field, for all kinds that show it. */
  private static boolean datesOutOfOrder(List<Finding> findings, Kind kind) {
    return findings.stream()
        .filter(finding -> finding.rule() == Rule.SORT_ORDER)
        .anyMatch(
            finding ->
                kind.fields().keySet().stream()
                    .anyMatch(field -> finding.where().equals("fields." + field)));
  }

  private void compare(
      Case tried, Convention convention, List<Finding> findings, String kind, List<Name> names) {
    var byText = names.stream().collect(Collectors.groupingBy(Name::text));
    var ambiguous = byText.keySet().stream().filter(text -> byText.get(text).size() > 1).toList();
    expect(
        tried,
        kind,
        "two-readings",
        ambiguous.isEmpty() ? List.of() : List.of(shortest(ambiguous)),
        of(findings, Rule.TWO_READINGS, kind).stream()
            .map(finding -> finding.witness().orElseThrow().names().getFirst().length())
            .toList());
    var byKey =
        byText.keySet().stream().collect(Collectors.groupingBy(CheckOracleTest::collisionKey));
    expect(
        tried,
        kind,
        "case-clash",
        byKey.values().stream().anyMatch(texts -> texts.size() > 1),
        !of(findings, Rule.CASE_CLASH, kind).isEmpty());
    var banned =
        byText.keySet().stream()
            .anyMatch(
                text ->
                    text.contains(":")
                        || text.endsWith(".")
                        || text.matches("(?i)(con|nul)(\\..*)?"));
    var portable = of(findings, Rule.NOT_PORTABLE, kind);
    expect(
        tried,
        kind,
        "not-portable errors",
        banned,
        portable.stream().anyMatch(finding -> finding.severity() == Severity.ERROR));
    expect(
        tried,
        kind,
        "not-portable warnings",
        byText.keySet().stream().anyMatch(text -> text.startsWith("-") || text.startsWith(".")),
        portable.stream().anyMatch(finding -> finding.severity() == Severity.WARNING));
    if (names.size() <= MOST_SORTED && !datesOutOfOrder(findings, convention.kinds().get(kind))) {
      ordersTried++;
      var orders = of(findings, Rule.SORT_ORDER, kind);
      boolean byBytes =
          isInverted(convention, tried.kinds.get(kind), names, Comparator.naturalOrder());
      expect(
          tried,
          kind,
          "byte order",
          byBytes,
          orders.stream().anyMatch(finding -> finding.message().contains("byte order")));
      expect(
          tried,
          kind,
          "number-aware order",
          !byBytes
              && isInverted(convention, tried.kinds.get(kind), names, CheckOracleTest::byNumbers),
          orders.stream().anyMatch(finding -> finding.message().contains("by numbers")));
    }
    for (var name : names.subList(0, Math.min(60, names.size()))) {
      expect(
          tried,
          kind,
          "build of " + name.plain(),
          name.text,
          convention.build(kind, name.plain()) instanceof Built.Name built ? built.text() : "none");
      var readings =
          switch (convention.read(name.text, kind)) {
            case Reading.One one -> Set.of(Map.copyOf(one.fields()));
            case Reading.Several several ->
                several.readings().stream()
                    .map(one -> Map.copyOf(one.fields()))
                    .collect(Collectors.toSet());
            case Reading.None none -> Set.of();
          };
      expect(
          tried,
          kind,
          "readings of " + name.text,
          byText.get(name.text).stream().map(Name::plain).collect(Collectors.toSet()),
          readings);
    }
  }

  @Test
  void agreesWithBruteForceOnSomeConventions(TestReporter reporter) {
    compareAll(FEW, reporter);
  }

  @Test
  @Tag("slow")
  void agreesWithBruteForceOnManyConventions(TestReporter reporter) {
    compareAll(MANY, reporter);
  }

  private void compareAll(int conventions, TestReporter reporter) {
    for (long seed = 0; seed < conventions; seed++) {
      compare(new Maker(seed).make());
    }
    reporter.publishEntry(
        Map.of(
            "conventions", String.valueOf(conventions),
            "kinds compared", String.valueOf(kindsTried),
            "orders compared", String.valueOf(ordersTried),
            "names written out", String.valueOf(namesTried),
            "findings", found.toString(),
            "disagreements", String.valueOf(disagreements.size())));
    assertThat(disagreements.stream().limit(3).toList()).isEmpty();
    assertThat(kindsTried).isGreaterThan(conventions / 2);
    // A test that never meets a fault, or a sound convention, would prove nothing.
    assertThat(found.keySet())
        .contains(
            Rule.TWO_READINGS,
            Rule.WRONG_KIND,
            Rule.CASE_CLASH,
            Rule.SORT_ORDER,
            Rule.NOT_PORTABLE,
            Rule.SAME_NAME,
            Rule.UNUSED_FIELD)
        .doesNotContain(Rule.TOO_LARGE);
  }
}
