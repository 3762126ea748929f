package org.framewright.handoff.names;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.framewright.AssertThat.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tag;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.StringLength;
import org.framewright.base.FileProblemException;

/** What holds of every job and every list. */
@Tag("slow")
class NamesLawsTest {
  /**
   * A job.
   *
   * @param now each frame's name
   * @param before its name before a rename, as a camera gives it; no two alike
   */
  record Frames(List<String> now, List<String> before) {
    List<KnownName> names() {
      var names = new ArrayList<KnownName>();
      for (int i = 0; i < now.size(); i++) {
        names.add(new KnownName(i, now.get(i), KnownName.Kind.NOW));
        names.add(new KnownName(i, before.get(i), KnownName.Kind.BEFORE));
      }
      return names;
    }
  }

  /** A way of writing a name or a list of names. */
  record Style(String form, boolean lower, String separator) {
    String of(String name) {
      var text = lower ? name.toLowerCase(Locale.ROOT) : name;
      return form.formatted(text.replace("_", separator));
    }
  }

  @Provide
  Arbitrary<Frames> jobs() {
    var setups = Arbitraries.integers().between(1, 40);
    var views = Arbitraries.of("F", "B", "D", "side");
    var frame =
        Combinators.combine(setups, views, Arbitraries.integers().between(1, 200))
            .as((setup, view, take) -> "%03d_%s_%04d".formatted(setup, view, take));
    var camera = Arbitraries.of("IMG_", "DSC_", "_MG_", "P100");
    return Combinators.combine(
            frame.list().uniqueElements().ofMinSize(1).ofMaxSize(30),
            camera,
            Arbitraries.integers().between(1, 9900))
        .as(
            (frames, body, first) ->
                new Frames(
                    frames.stream().map(name -> "A/20261123_KVO_" + name).toList(),
                    IntStream.range(0, frames.size())
                        .mapToObj(i -> "A/" + body + "%04d".formatted(first + i))
                        .toList()));
  }

  @Provide
  Arbitrary<Style> styles() {
    return Combinators.combine(
            Arbitraries.of(
                "%s",
                "%s.jpg",
                "%s.NEF",
                "- %s",
                "* %s.JPG",
                "3. %s",
                "12) %s",
                "• %s",
                "(%s)",
                "[%s]",
                "\"%s\"",
                "%s please",
                "%s.tif (the skin, please)",
                "%s, thanks!",
                "%s – with more contrast",
                "frame %s",
                "We love %s!",
                "Screenshot of %s.png",
                "https://gallery.example/kvo/%s.jpg",
                "\t%s\t",
                "%s;",
                "**%s**"),
            Arbitraries.of(true, false),
            Arbitraries.of("_", "-"))
        .as(Style::new);
  }

  private static NamesRead read(String text, Frames job) {
    try {
      return NamesRead.of(text.getBytes(UTF_8), "names.txt", job.names());
    } catch (FileProblemException e) {
      throw new AssertionError(e.problem().sentences(), e);
    }
  }

  private static String stem(String name) {
    return name.substring(name.indexOf('/') + 1);
  }

  @Property(tries = 200)
  void everyFrameIsFoundByItsNameInAnyStyle(
      @ForAll("jobs") Frames job, @ForAll("styles") Style style) {
    var text =
        job.now().stream().map(name -> style.of(stem(name))).collect(Collectors.joining("\n"));
    var read = read(text, job);
    assertThat(read.unclear()).as(text).isEmpty();
    assertThat(read.frames()).as(text).isEqualTo(all(job));
  }

  @Property(tries = 200)
  void everyFrameIsFoundByItsNameFromBeforeTheRename(
      @ForAll("jobs") Frames job, @ForAll("styles") Style style) {
    var text =
        job.before().stream().map(name -> style.of(stem(name))).collect(Collectors.joining("\n"));
    var read = read(text, job);
    assertThat(read.unclear()).as(text).isEmpty();
    assertThat(read.frames()).as(text).isEqualTo(all(job));
  }

  @Property(tries = 200)
  void aListOnOneLineNamesItsFrames(@ForAll("jobs") Frames job) {
    for (var separator : List.of(", ", "; ", " and ", " ", "\t", " | ", " & ")) {
      for (var names : List.of(job.now(), job.before())) {
        var text = names.stream().map(NamesLawsTest::stem).collect(Collectors.joining(separator));
        assertThat(read(text, job).frames()).as(text).isEqualTo(all(job));
      }
    }
  }

  @Property(tries = 200)
  void aRangeIsAllFramesBetweenItsEnds(
      @ForAll("jobs") Frames job, @ForAll int one, @ForAll int other) {
    int from = Math.floorMod(one, job.before().size());
    int to = from + Math.floorMod(other, job.before().size() - from);
    if (from == to) {
      return;
    }
    var first = stem(job.before().get(from));
    var last = stem(job.before().get(to));
    var number = last.replaceFirst(".*\\D", "");
    for (var text : List.of(first + "-" + last, first + " - " + last, first + " to " + last)) {
      assertThat(read(text, job).frames())
          .as(text)
          .isEqualTo(IntStream.rangeClosed(from, to).boxed().toList());
    }
    if (number.length() == first.replaceFirst(".*\\D", "").length()) {
      assertThat(read(first + "-" + number, job).frames())
          .isEqualTo(IntStream.rangeClosed(from, to).boxed().toList());
    }
  }

  /** By a search through all names, which is the oracle. */
  @Property(tries = 200)
  void anEndOfANameIsTakenOnlyWhereItFitsOneFrame(@ForAll("jobs") Frames job, @ForAll int which) {
    var name = job.now().get(Math.floorMod(which, job.now().size()));
    var parts = List.of(stem(name).split("_"));
    for (int from = 0; from < parts.size() - 1; from++) {
      var end = String.join("_", parts.subList(from, parts.size()));
      var fitting =
          IntStream.range(0, job.now().size())
              .filter(
                  i -> job.now().get(i).endsWith("_" + end) || stem(job.now().get(i)).equals(end))
              .boxed()
              .toList();
      var read = read(end, job);
      if (fitting.size() == 1) {
        assertThat(read.frames()).as(end).isEqualTo(fitting);
      } else {
        assertThat(read.frames()).as(end).isEmpty();
        assertThat(read.unclear()).as(end).hasSize(1);
      }
    }
  }

  @Property(tries = 500)
  void noTextBreaksIt(@ForAll("jobs") Frames job, @ForAll("texts") String text) {
    var read = read(text.replace("\0", ""), job);
    assertThat(all(job)).containsAll(read.frames());
  }

  @Provide
  Arbitrary<String> texts() {
    var pieces =
        Arbitraries.of(
            "IMG_",
            "DSC",
            "001",
            "_F_",
            "0003",
            "-",
            " - ",
            ", ",
            "(",
            ")",
            "[",
            "]",
            ":",
            "\n",
            " ",
            ".jpg",
            "not ",
            "or ",
            "to ",
            "look ",
            "> ",
            "1.",
            "\t",
            "~~",
            "?",
            "/",
            "\"",
            "20261123",
            "KVO",
            "②",
            "\u0301",
            "\uD800",
            "ﷺ",
            "9999999999999999999999",
            "0",
            "wrote:",
            "@",
            "://");
    return Arbitraries.oneOf(
        Arbitraries.strings().ofMaxLength(200),
        pieces.list().ofMaxSize(40).map(list -> String.join("", list)));
  }

  private static List<Integer> all(Frames job) {
    return IntStream.range(0, job.now().size()).boxed().toList();
  }

  /**
   * Not a measure of time, but the suite would hang: a job of 20,000 frames, a megabyte of text.
   */
  @org.junit.jupiter.api.Tag("slow")
  @org.junit.jupiter.api.Test
  @org.junit.jupiter.api.Timeout(120)
  void aHostileTextComesToAnEnd() {
    var names = new ArrayList<KnownName>();
    for (int i = 0; i < 20_000; i++) {
      var take = "A/20261123_KVO_%03d_F_%04d".formatted(i / 100, i % 100 + 1);
      names.add(new KnownName(i, take, KnownName.Kind.NOW));
      names.add(new KnownName(i, "A/IMG_%04d".formatted(i % 9999 + 1), KnownName.Kind.BEFORE));
    }
    var random = new Random(14);
    var mixed = new StringBuilder();
    while (mixed.length() < 1 << 20) {
      mixed.append(
          List.of("1-", "KVO ", "001", "_F_", ":", "\n", "IMG_", ", ", "-9999 ", "a1")
              .get(random.nextInt(10)));
    }
    for (var text :
        List.of(
            "1-999999999 ".repeat(90_000),
            "1-9999\n".repeat(150_000),
            "IMG_0001-9999, ".repeat(70_000),
            "KVO ".repeat(260_000),
            "KVO:\n1\n".repeat(150_000),
            "20261123_KVO_001_F ".repeat(55_000),
            "a1".repeat(500_000),
            ".jpg".repeat(260_000),
            "(".repeat(1 << 20),
            "IMG_99999 ".repeat(100_000),
            "http://".repeat(150_000),
            "x@".repeat(500_000),
            "\n".repeat(1 << 20),
            "From: x\nTo: y\n".repeat(70_000),
            "x wrote:\n> 1\n".repeat(70_000),
            mixed.toString())) {
      try {
        var read = NamesRead.of(text.getBytes(UTF_8), "names.txt", names);
        assertThat(read.lines()).isNotNull();
      } catch (FileProblemException e) {
        assertThat(e.problem().remedy()).isNotEmpty();
      }
    }
  }

  /**
   * The expected number is the recurrence of the optimal string alignment distance as published
   * (Boytsov, "Indexing methods for approximate dictionary searching", ACM JEA 16, 2011, section
   * 2.2.2; from memory), worked out without shortcuts.
   */
  @Property
  void changesOfLettersAreCountedAsTheRecurrenceCountsThem(
      @ForAll @StringLength(max = 6) @CharRange(from = 'a', to = 'c') String one,
      @ForAll @StringLength(max = 6) @CharRange(from = 'a', to = 'c') String other,
      @ForAll @IntRange(max = 6) int most) {
    int expected = alignment(one, one.length(), other, other.length());

    int counted = SimilarNames.changes(one, other, most);

    assertThat(counted).isEqualTo(Math.min(expected, most + 1));
  }

  private static int alignment(String a, int i, String b, int j) {
    if (i == 0 || j == 0) {
      return i + j;
    }
    int replaced = alignment(a, i - 1, b, j - 1) + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
    int least =
        Math.min(replaced, 1 + Math.min(alignment(a, i - 1, b, j), alignment(a, i, b, j - 1)));
    boolean swapped =
        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
    return swapped ? Math.min(least, 1 + alignment(a, i - 2, b, j - 2)) : least;
  }
}
