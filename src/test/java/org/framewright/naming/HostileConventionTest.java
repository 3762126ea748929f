package org.framewright.naming;

import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.IntFunction;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Whatever lies in a convention's file, it is read, checked and used within bounds. */
@Tag("slow")
class HostileConventionTest {
  /** Against hangs only; all of these take a small part of it. */
  private static final Duration HANG = Duration.ofMinutes(2);

  private static <T> T ends(Supplier<T> work) {
    return assertTimeoutPreemptively(HANG, work::get);
  }

  private static List<Finding> faults(String yaml) {
    return switch (ends(() -> Convention.parse(yaml, "my.yaml"))) {
      case Convention.Parsed.Faulty(List<Finding> findings) -> findings;
      case Convention.Parsed.Sound sound -> List.of();
    };
  }

  private static String withFields(String fields, String pattern) {
    return "convention: x\nfields:\n"
        + fields.indent(2)
        + "names: {k: '"
        + pattern
        + "'}\nfolders: {frames: f}\n";
  }

  private static String many(int count, String separator, IntFunction<String> one) {
    return IntStream.range(0, count).mapToObj(one).collect(Collectors.joining(separator));
  }

  // ---- one thing too large

  static List<Arguments> tooLarge() {
    var a = "a: {type: counter}";
    return List.of(
        of(withFields("d: {type: date, pattern: \"uuuu'" + "x".repeat(3_000) + "'\"}", "{d}"), 3),
        of(withFields(a, "x".repeat(256) + "{a}"), 4),
        of(withFields(a, "{a}" + "[x]".repeat(2_000)), 4),
        of(withFields("f: {type: fixed, text: " + "x".repeat(256) + "}", "{f}"), 3),
        of(withFields("c: {type: choice, values: [" + "x".repeat(256) + "]}", "{c}"), 3),
        of(
            withFields(
                "c: {type: choice, values: [" + many(1_001, ",", i -> "v" + i) + "]}", "{c}"),
            3),
        of(
            withFields(
                "c: {type: choice, values: ["
                    + many(51, ",", i -> "x".repeat(197) + (100 + i))
                    + "]}",
                "{c}"),
            3),
        of(withFields("n: {type: number, digits: 10}", "{n}"), 3),
        of(withFields("n: {type: number, digits: 99999999999}", "{n}"), 3),
        of(withFields("w: {type: words, length: 1-256}", "{w}"), 3),
        of(withFields("w: {type: words, also: '" + "+".repeat(101) + "'}", "{w}"), 3),
        of(withFields(many(201, "\n", i -> "f" + i + ": {type: counter}"), "{f0}"), 3),
        of(
            withFields(
                "c: {type: code, shapes: {" + many(21, ", ", i -> "s" + i + ": {}") + "}}", "{c}"),
            3),
        of(
            withFields("c: {type: counter, restarts: [" + many(21, ", ", i -> "a") + "]}", "{c}"),
            3),
        of(
            withFields(
                many(51, "\n", i -> "f" + i + ": {type: code}"),
                many(51, "_", i -> "{f" + i + "}")),
            54),
        of(
            withFields(
                many(50, "\n", i -> "f" + i + ": {type: words, length: 1-255}"),
                many(50, "_", i -> "{f" + i + "}")),
            53),
        of(
            withFields(
                many(200, "\n", i -> "f" + i + ": {type: words, accents: yes, length: 1-255}"),
                "{f0}"),
            // The 31st field.
            33),
        of(
            "convention: "
                + "x".repeat(10_001)
                + "\nfields: {"
                + a
                + "}\nnames: {k: '{a}'}\nfolders: {frames: f}\n",
            1),
        of(
            "convention: x\nfields: {"
                + a
                + "}\nnames: {"
                + many(51, ", ", i -> "k" + i + ": 'x{a}'")
                + "}\nfolders: {frames: f}\n",
            3),
        of(
            "convention: x\nfields: {"
                + a
                + "}\nnames: {k: '{a}'}\nfolders: {frames: f, "
                + many(50, ", ", i -> "r" + i + ": x")
                + "}\n",
            4),
        of(
            "convention: x\nfields: {"
                + a
                + "}\nnames: {k: '{a}'}\nfolders: {frames: '"
                + "y".repeat(1_001)
                + "'}\n",
            4),
        of(
            "convention: x\nfields: {"
                + a
                + "}\nnames:\n  k0: xx\n"
                + many(49, "\n", i -> "  k" + (i + 1) + ": '{k" + i + "}{k" + i + "}'")
                + "\nfolders: {frames: f}\n",
            // 2 to the power of 7 is 128, of 8 is 256.
            11));
  }

  private static Arguments of(String yaml, int line) {
    return Arguments.of(yaml, line);
  }

  @ParameterizedTest(name = "{index}")
  @MethodSource("tooLarge")
  void refusesWhatIsTooLargeAtItsPlace(String yaml, int line) {
    assertThat(faults(yaml)).isNotEmpty();
    assertThat(faults(yaml).getFirst().remedy()).isPresent();
    assertThat(faults(yaml)).extracting(Finding::line).contains(line);
  }

  @Tag("slow")
  @Test
  void reportsAHundredFaultsAndLooksNoFurther() {
    assertThat(faults("about: x\n" + many(5_000, "\n", i -> "x" + i + ": y"))).hasSize(100);
    assertThat(faults("about: x\n" + many(99, "\n", i -> "x" + i + ": y"))).hasSizeBetween(99, 100);
  }

  @ParameterizedTest(name = "{index}")
  @MethodSource("deep")
  void readsNestingWithoutEndInNoTime(String yaml) {
    assertThat(faults(yaml)).hasSizeBetween(1, 2);
  }

  static List<String> deep() {
    return List.of(
        "[".repeat(100_000),
        "{".repeat(100_000),
        "- ".repeat(100_000),
        "? ".repeat(100_000),
        "a: ".repeat(80_000),
        "[a,".repeat(80_000),
        "{a: ".repeat(60_000),
        "&a ".repeat(80_000),
        "*a ".repeat(80_000),
        "!a ".repeat(80_000),
        "\"".repeat(100_001),
        "a: '" + "x".repeat(200_000),
        "%".repeat(100_000),
        "x".repeat(200_000),
        "\t".repeat(100_000),
        "---\n".repeat(60_000));
  }

  // ---- files that are none

  @Test
  void refusesAFolderADeviceAndAPipe(@TempDir Path folder) throws Exception {
    assertThat(faulty(folder).message()).contains("this is a folder");
    var zero = Path.of("/dev/zero");
    if (Files.exists(zero)) {
      assertThat(faulty(zero).message()).contains("a device or a pipe");
    }
    var pipe = folder.resolve("pipe.yaml");
    assumeTrue(made(pipe), "mkfifo is missing");
    assertThat(faulty(pipe).message()).contains("a device or a pipe").startsWith("convention: ");
  }

  private static boolean made(Path pipe) throws InterruptedException {
    try {
      return new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor() == 0;
    } catch (IOException e) {
      return false;
    }
  }

  private static Finding faulty(Path file) {
    var parsed =
        ends(
            () -> {
              try {
                return Convention.read(file);
              } catch (IOException e) {
                throw new UncheckedIOException(e);
              }
            });
    assertThat(parsed).isInstanceOf(Convention.Parsed.Faulty.class);
    var findings = ((Convention.Parsed.Faulty) parsed).findings();
    assertThat(findings).hasSize(1);
    assertThat(findings.getFirst().remedy()).isPresent();
    return findings.getFirst();
  }

  @Test
  void refusesAHugeFileWithoutReadingItAll(@TempDir Path folder) throws IOException {
    var file = folder.resolve("huge.yaml");
    try (var channel =
        FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      channel.write(ByteBuffer.wrap(new byte[] {'a'}), 1L << 33);
    }
    assertThat(faulty(file).message()).contains("larger than 256 kB");
  }

  @Test
  void refusesOtherEncodings(@TempDir Path folder) throws IOException {
    var file = folder.resolve("x.yaml");
    for (var encoding : List.of(StandardCharsets.UTF_16, StandardCharsets.ISO_8859_1)) {
      Files.writeString(file, "convention: Größe\n", encoding);
      assertThat(faulty(file).message()).contains("not text in UTF-8");
    }
    Files.write(file, "convention: x\n".getBytes(StandardCharsets.UTF_16LE));
    assertThat(faulty(file).message()).contains("U+0000");
  }

  @Test
  void leavesOutAByteOrderMark(@TempDir Path folder) throws IOException {
    var file = folder.resolve("x.yaml");
    Files.writeString(
        file,
        "\uFEFFconvention: x\nfields: {a: {type: counter}}\nnames: {k: '{a}'}\nfolders: {frames: f}\n");
    assertThat(Convention.read(file)).isInstanceOf(Convention.Parsed.Sound.class);
  }

  // ---- large within the limits

  static List<String> large() {
    return List.of(
        withFields(
            many(50, "\n", i -> "f" + i + ": {type: words, length: 1-190}"),
            many(50, "", i -> i == 0 ? "{f0}" : "[{f" + i + "}]")),
        withFields(
            many(
                17,
                "\n",
                i -> "f" + i + ": {type: words, accents: yes, letters: mixed, length: 1-255}"),
            many(17, "", i -> i == 0 ? "{f0}" : "[-{f" + i + "}]")),
        withFields(
            many(
                20,
                "\n",
                i ->
                    "f"
                        + i
                        + ": {type: choice, values: ["
                        + many(990, ",", k -> "v" + i * 31 + "x" + k)
                        + "]}"),
            many(20, "", i -> "{f" + i + "}")),
        withFields(
            "d: {type: date, pattern: \"d'"
                + "a".repeat(40)
                + "'M'"
                + "b".repeat(40)
                + "'uuuu\", years: 1-1000}\n"
                + "t: {type: counter, digits: 1-9}\n"
                + "n: {type: number, digits: 1-9}",
            "{n}{d}{t}"),
        withFields(
            many(12, "\n", i -> "n" + i + ": {type: number, digits: 1-9}")
                + "\nt: {type: counter, digits: 1-9}",
            many(12, "", i -> "{n" + i + "}") + "{t}"),
        withFields(
            "a: {type: code, also: '"
                + many(100, "", i -> Character.toString(0x4E00 + i))
                + "', length: 1-255}\n"
                + "b: {type: code, letters: mixed, accents: yes, length: 1-255}",
            "{a}{b}"));
  }

  @Tag("slow")
  @ParameterizedTest(name = "{index}")
  @MethodSource("large")
  void provesOrGivesUpOnWhatIsLargeAndReadsNames(String yaml) {
    var convention = ConventionTest.sound(ends(() -> Convention.parse(yaml, "large")));
    var findings = ends(() -> convention.check(1_000_000));
    assertThat(findings).allMatch(finding -> finding.remedy().isPresent());
    var longest = convention.longestName("k");
    assertThat(ends(() -> convention.read("A".repeat(250)))).isNotNull();
    assertThat(longest).isNotEmpty();
    assertThat(ends(() -> convention.read("a".repeat(250)))).isNotNull();
    assertThat(ends(() -> convention.read("x".repeat(1_000_000)))).isInstanceOf(Reading.None.class);
    var values =
        convention.fields().keySet().stream()
            .collect(Collectors.toMap(name -> name, name -> "é".repeat(100_000)));
    assertThat(ends(() -> convention.build("k", values))).isInstanceOf(Built.Refused.class);
  }

  // ---- anything at all

  /** Writes conventions that are nearly right, and YAML that is nothing of the kind. */
  private static final class Writer {
    private static final List<String> KEYS =
        List.of(
            "convention",
            "about",
            "fields",
            "names",
            "folders",
            "travels-to",
            "before",
            "type",
            "label",
            "default",
            "required",
            "shapes",
            "pattern",
            "years",
            "letters",
            "digits",
            "accents",
            "also",
            "length",
            "separator",
            "order",
            "from",
            "to",
            "start",
            "restarts",
            "values",
            "text",
            "frames",
            "frame",
            "job",
            "day",
            "a",
            "b",
            "''",
            "[x]",
            "é",
            "'",
            "? x",
            "<<",
            "&x y",
            "*x",
            "1");

    private static final List<String> TYPES =
        List.of("date", "code", "words", "person", "number", "counter", "choice", "gtin", "fixed");

    private static final List<String> PLAIN =
        List.of(
            "{type: date, pattern: uuuu-MM-dd}",
            "{type: date, pattern: uuMMdd, years: 1950-2049}",
            "{type: date, pattern: HHmmss.SSS, shapes: {m: HHmm}}",
            "{type: code, length: 2-4}",
            "{type: words, length: 1-6, letters: mixed, accents: yes}",
            "{type: person, order: initials}",
            "{type: number, digits: 1-3}",
            "{type: counter, digits: 2-4, restarts: b}",
            "{type: counter}",
            "{type: choice, values: {F: front, B: back}, shapes: {long: {F: front, B: rear}}}",
            "{type: gtin}",
            "{type: fixed, text: z}");

    private static final List<String> TEXTS =
        List.of(
            "",
            "x",
            "yes",
            "no",
            "~",
            "0",
            "1",
            "9",
            "3-",
            "3-1",
            "1-255",
            "4",
            "0x10",
            "999999999",
            "99999999999999999999",
            "{a}",
            "{b}",
            "[{a}]",
            "[{a}",
            "{a}{a}",
            "'{a}_{b}'",
            "'{frame}'",
            "'{job}'",
            "'{a",
            "../x",
            "a/b",
            "\"\\u0000\"",
            "\"\\uD800\"",
            "\"\\uFFFF\"",
            "\"\\u001b[2J\"",
            "uuuu-MM-dd",
            "uu",
            "M",
            "dd",
            "QQ",
            "\"'T''\"",
            "HHmmssSSSSSSSSS",
            "&x 1",
            "*x",
            "!!int 3",
            "!!binary x",
            "|\n  a\n  b",
            ">",
            "\"",
            "é",
            "\u0301",
            "\u202E",
            "windows",
            "posix",
            "family-first",
            "upper",
            "mixed",
            "-",
            "/",
            "\uD83C\uDFA8",
            "\u0007",
            "\t",
            "- - -",
            "? ",
            "%",
            "@",
            "`",
            "---",
            "A".repeat(300));

    private static final List<String> PIECES =
        List.of(
            "{a}",
            "{b}",
            "{c}",
            "{a.m}",
            "{a.long}",
            "[{a}]",
            "[_{b}]",
            "[-{c}]",
            "x",
            "_",
            "-",
            "0",
            "[",
            "]",
            "{",
            "}",
            "/",
            "{k}",
            "é",
            "CON",
            " ",
            ".");

    private static final List<String> SOUND =
        List.of(
            "{a}_{b}",
            "{a}[_{b}]",
            "{b}{c}",
            "x{c}",
            "[{a}]-{b}",
            "{c}.{a}",
            "{a}{b}{c}",
            "s-{b}",
            "{b}[-{a}[_{c}]]");

    private final Random random;

    Writer(long seed) {
      random = new Random(seed);
    }

    private String one(List<String> list) {
      return list.get(random.nextInt(list.size()));
    }

    private String some(int most, String separator, Supplier<String> one) {
      return Stream.generate(one)
          .limit(random.nextInt(most + 1))
          .collect(Collectors.joining(separator));
    }

    private String leaf() {
      return switch (random.nextInt(4)) {
        case 0 -> one(TYPES);
        case 1 -> some(6, "", () -> Character.toString(random.nextInt(0x3000)));
        default -> one(TEXTS);
      };
    }

    private String value(int depth) {
      return switch (random.nextInt(depth > 12 ? 2 : 5)) {
        case 0, 1 -> leaf();
        case 2 -> "[" + some(4, ", ", () -> value(depth + 2)) + "]";
        default -> "{" + some(4, ", ", () -> one(KEYS) + ": " + value(depth + 2)) + "}";
      };
    }

    private String field() {
      return switch (random.nextInt(10)) {
        case 0 -> value(1);
        case 1, 2 ->
            "{type: "
                + one(TYPES)
                + ", pattern: MM, values: [q, w], text: z, "
                + some(3, ", ", () -> one(KEYS) + ": " + leaf())
                + "}";
        default -> one(PLAIN);
      };
    }

    private String pattern() {
      return switch (random.nextInt(6)) {
        case 0 -> leaf();
        case 1 -> "'" + some(5, "", () -> one(PIECES)) + "'";
        default -> "'" + one(SOUND) + "'";
      };
    }

    String write() {
      return switch (random.nextInt(8)) {
        case 0 -> some(200, "", () -> Character.toString(random.nextInt(0x110000)));
        case 1 -> some(60, "", () -> one(TEXTS));
        case 2 -> some(8, "\n", () -> one(KEYS) + ": " + value(0));
        default ->
            "convention: "
                + (random.nextInt(10) == 0 ? leaf() : "x")
                + "\nfields:\n  a: "
                + field()
                + "\n  b: "
                + field()
                + "\n  c: "
                + one(PLAIN)
                + "\nnames:\n  k: "
                + pattern()
                + "\n  frame: "
                + pattern()
                + "\nfolders: {frames: "
                + (random.nextInt(10) == 0 ? leaf() : "f")
                + "}\n"
                + (random.nextInt(10) == 0 ? one(KEYS) + ": " + value(0) + "\n" : "");
      };
    }
  }

  private int sound;
  private int faulty;

  @Tag("slow")
  @Test
  void neverThrowsAndSaysWhatAndWhereAndItsRemedy() {
    assertTimeoutPreemptively(HANG, () -> tryAll(0, 500));
    // A writer that only ever made nonsense, or no nonsense, would show nothing.
    assertThat(sound).isGreaterThan(100);
    assertThat(faulty).isGreaterThan(150);
  }

  @Test
  @Tag("slow")
  void neverThrowsInALongRun() {
    assertTimeoutPreemptively(HANG.multipliedBy(5), () -> tryAll(500, 10_000));
  }

  private void tryAll(long from, long to) {
    for (long seed = from; seed < to; seed++) {
      var yaml = new Writer(seed).write();
      try {
        tryOne(yaml);
      } catch (RuntimeException | AssertionError | StackOverflowError e) {
        throw new AssertionError("seed " + seed + ":\n" + yaml, e);
      }
    }
  }

  private void tryOne(String yaml) {
    switch (Convention.parse(yaml, "my.yaml")) {
      case Convention.Parsed.Faulty(List<Finding> findings) -> {
        faulty++;
        assertThat(findings).isNotEmpty();
        findings.forEach(HostileConventionTest::assertComplete);
      }
      case Convention.Parsed.Sound(Convention convention) -> {
        sound++;
        convention.check(100).forEach(HostileConventionTest::assertComplete);
        for (var kind : convention.kinds().keySet()) {
          var name = convention.exampleName(kind);
          assertThat(convention.read(name, kind)).isNotInstanceOf(Reading.None.class);
          assertThat(convention.longestName(kind)).isNotEmpty();
          assertThat(convention.read(yaml, kind)).isNotNull();
          assertThat(
                  convention.build(kind, Map.of("a", yaml, "b", "2026-11-25", "c", "\u0000\uD800")))
              .isNotNull();
        }
      }
    }
  }

  private static void assertComplete(Finding finding) {
    assertThat(finding.message()).isNotBlank().doesNotContain("\n", "\u001B", "\u0000");
    assertThat(finding.line()).isNotNegative();
    assertThat(finding.rule() != Rule.BAD_CONVENTION || finding.line() > 0).isTrue();
    assertThat(finding.remedy().orElse("x")).isNotBlank().doesNotContain("\n", "\u001B", "\u0000");
  }
}
