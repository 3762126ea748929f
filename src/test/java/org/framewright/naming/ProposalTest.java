package org.framewright.naming;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.constraints.StringLength;
import net.jqwik.api.constraints.UpperChars;
import org.framewright.naming.Proposal.Role;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ProposalTest {
  record NamesInUse(
      String title,
      Map<Integer, Role> corrections,
      String frame,
      Optional<String> job,
      List<String> fitting,
      List<String> others) {
    Proposal proposal() {
      var all = Stream.concat(fitting.stream(), others.stream()).toList();
      var proposal = Proposal.of(title, all, job);
      for (var correction : corrections.entrySet()) {
        proposal = proposal.with(correction.getKey(), correction.getValue());
      }
      return proposal;
    }

    @Override
    public String toString() {
      return title;
    }
  }

  static List<NamesInUse> sets() {
    try (var file = ProposalTest.class.getResourceAsStream("names-in-use.txt")) {
      var text = new String(file.readAllBytes(), StandardCharsets.UTF_8);
      var sets = new ArrayList<NamesInUse>();
      for (var part : text.substring(text.indexOf("\n= ")).split("\n= ", -1)) {
        if (!part.isBlank()) {
          sets.add(set(part.lines().filter(line -> !line.isBlank()).toList()));
        }
      }
      return sets;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static NamesInUse set(List<String> lines) {
    var corrections = new LinkedHashMap<Integer, Role>();
    var frame = "";
    Optional<String> job = Optional.empty();
    var fitting = new ArrayList<String>();
    var others = new ArrayList<String>();
    for (var line : lines.subList(1, lines.size())) {
      int colon = line.indexOf(": ");
      var value = line.substring(colon < 0 ? 0 : colon + 2);
      switch (colon < 0 ? "" : line.substring(0, colon)) {
        case "correct" -> {
          for (var one : value.split(" ", -1)) {
            corrections.put(
                Integer.valueOf(one.substring(0, one.indexOf('='))),
                Role.valueOf(one.substring(one.indexOf('=') + 1).toUpperCase(Locale.ROOT)));
          }
        }
        case "frame" -> frame = value;
        case "job" -> job = Optional.of(value);
        case "no" -> others.add(value);
        default -> fitting.add(line);
      }
    }
    return new NamesInUse(lines.getFirst(), corrections, frame, job, fitting, others);
  }

  @ParameterizedTest
  @MethodSource("sets")
  void proposesThePatternThatPeopleMean(NamesInUse set) {
    var proposal = set.proposal();
    assertThat(proposal.findings())
        .filteredOn(finding -> finding.rule() == Rule.BAD_CONVENTION)
        .isEmpty();
    assertThat(proposal.convention().orElseThrow().kinds().get("frame").pattern())
        .isEqualTo(set.frame);
  }

  @ParameterizedTest
  @MethodSource("sets")
  void readsEveryExampleBackAndSaysWhichItDoesNot(NamesInUse set) {
    assertThat(set.proposal().unread())
        .extracting(Proposal.Unread::example)
        .containsExactlyElementsOf(set.others);
    assertThat(set.proposal().unread()).allMatch(unread -> !unread.why().isBlank());
  }

  /** Only what the names themselves bring along: their order, a missing counter or setup. */
  @ParameterizedTest
  @MethodSource("sets")
  void proposesASoundConvention(NamesInUse set) {
    assertThat(set.proposal().findings())
        .filteredOn(finding -> finding.severity() == Severity.ERROR)
        .isEmpty();
  }

  @Test
  void fewOfTheSetsNeedACorrection() {
    assertThat(sets()).hasSizeGreaterThanOrEqualTo(30);
    assertThat(sets()).filteredOn(set -> !set.corrections.isEmpty()).hasSizeLessThanOrEqualTo(5);
  }

  @Test
  void saysWhatEachPieceIsTakenFor() {
    var pieces =
        Proposal.of(
                "Ours",
                List.of("20260301_ABC_012_F_0001", "20260301_ABC_012_0002"),
                Optional.empty())
            .pieces();
    assertThat(pieces)
        .extracting(Proposal.Piece::role)
        .containsExactly(Role.DATE, Role.CLIENT, Role.SETUP, Role.VIEW, Role.COUNTER);
    assertThat(pieces)
        .extracting(Proposal.Piece::optional)
        .containsExactly(false, false, false, true, false);
    assertThat(pieces.get(2).field()).contains("setup: {type: number, digits: 3}");
    assertThat(pieces.get(3).values()).containsExactly("F");
  }

  @Test
  void theCounterRestartsWhereTwoSetupsShareANumber() {
    var restarting =
        Proposal.of("Ours", List.of("A_001_01", "A_001_02", "A_002_01"), Optional.empty());
    assertThat(restarting.yaml()).contains("restarts: setup");
    var running =
        Proposal.of("Ours", List.of("A_001_01", "A_001_02", "A_002_03"), Optional.empty());
    assertThat(running.yaml()).doesNotContain("restarts");
  }

  @Test
  void aCorrectionMovesTheRole() {
    var proposal =
        Proposal.of("Ours", List.of("20260301_01_02_03", "20260301_01_02_04"), Optional.empty());
    assertThat(proposal.pieces())
        .extracting(Proposal.Piece::role)
        .containsExactly(Role.DATE, Role.OTHER, Role.SETUP, Role.COUNTER);
    assertThat(proposal.with(2, Role.SETUP).pieces())
        .extracting(Proposal.Piece::role)
        .containsExactly(Role.DATE, Role.SETUP, Role.OTHER, Role.COUNTER);
    assertThatIllegalArgumentException().isThrownBy(() -> proposal.with(0, Role.SETUP));
    assertThatIllegalArgumentException().isThrownBy(() -> proposal.with(5, Role.SETUP));
  }

  @Test
  void aJobsNameIsReadFromAnExample() {
    var proposal =
        Proposal.of(
            "Ours",
            List.of("20260301_NORD_001_0001", "20260301_NORD_002_0001"),
            Optional.of("2026-03-01 NORD spring look book"));
    assertThat(proposal.unread()).isEmpty();
    assertThat(proposal.convention().orElseThrow().kinds().get("job").pattern())
        .isEqualTo("{day.job} {client} {title}");
  }

  @Test
  void withoutAnExampleAJobBeginsWithItsDate() {
    var proposal = Proposal.of("Ours", List.of("A_001_01", "A_001_02"), Optional.empty());
    assertThat(proposal.convention().orElseThrow().kinds().get("job").pattern())
        .startsWith("{day}_");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"___", "-", "\u0301", "a/", "..", "{x}", "\"", "\\", "🎞", "a\tb", "#x", "[a]_1"})
  void anyTextIsProposedForOrRefused(String example) {
    try {
      var proposal = Proposal.of("Ours", List.of(example), Optional.of(example));
      assertThat(proposal.yaml()).isNotBlank();
      proposal.findings();
      proposal.unread();
    } catch (IllegalArgumentException e) {
      assertThat(e.getMessage()).isEqualTo("There is no name of a frame");
    }
  }

  @Test
  void refusesNoNames() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Proposal.of("Ours", List.of(" ", ""), Optional.empty()));
  }

  /** Whatever is built by one convention is read back by the one proposed from it. */
  @Property(tries = 40)
  void readsBackWhatIsMadeToOnePattern(
      @ForAll @UpperChars @StringLength(min = 2, max = 5) String client,
      @ForAll @Size(min = 1, max = 8) List<@IntRange(min = 1, max = 999) Integer> setups,
      @ForAll @IntRange(min = 2, max = 5) int digits,
      @ForAll @IntRange(min = 1, max = 9) int day) {
    var names = new ArrayList<String>();
    for (int setup : setups) {
      for (int take = 1; take <= 3; take++) {
        var number = ("%0" + digits + "d").formatted(take);
        names.add("2026030%d_%s_%03d_%s".formatted(day, client, setup, number));
      }
    }
    var proposal = Proposal.of("Ours", names, Optional.empty());
    assertThat(proposal.unread()).isEmpty();
    assertThat(proposal.convention().orElseThrow().kinds().get("frame").pattern())
        .isEqualTo("{day}_{client}_{setup}_{take}");
  }

  @Property(tries = 60)
  void neverThrowsOnAnyTexts(
      @ForAll @Size(min = 1, max = 6) List<@StringLength(max = 40) String> names) {
    try {
      var proposal = Proposal.of("Ours", names, Optional.empty());
      assertThat(proposal.yaml()).isNotBlank();
      assertThat(proposal.unread()).isNotNull();
    } catch (IllegalArgumentException e) {
      assertThat(e.getMessage()).isEqualTo("There is no name of a frame");
    }
  }
}
