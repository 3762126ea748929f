package org.framewright.naming;

import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.constraints.StringLength;
import net.jqwik.api.constraints.UpperChars;
import org.framewright.naming.Proposal.Role;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ProposalTest {
  /** By the title of their names: several tests ask for each. */
  private static final Map<String, Proposal> PROPOSALS = new ConcurrentHashMap<>();

  record NamesInUse(
      String title,
      Map<Integer, Role> corrections,
      String frame,
      Optional<String> job,
      List<String> fitting,
      List<String> others) {
    Proposal proposal() {
      return PROPOSALS.computeIfAbsent(title, _ -> propose());
    }

    private Proposal propose() {
      var all = Stream.concat(fitting.stream(), others.stream()).toList();
      var proposal = ProposalTest.proposal(title, all, job);
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

  private static Proposal proposal(String title, List<String> names, Optional<String> job) {
    return Proposal.of(title, names, job).orElseThrow();
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

  /** What each piece is taken for, whether it is asked about, and how its field is declared. */
  @ParameterizedTest
  @MethodSource("sets")
  void declaresTheFieldsAsTheNamesShowThem(NamesInUse set) {
    assertThat(fields(set.proposal())).isEqualTo(DECLARED.get(set.title));
  }

  private static final Map<String, String> DECLARED = declared();

  private static Map<String, String> declared() {
    try (var file = ProposalTest.class.getResourceAsStream("fields-of-names-in-use.txt")) {
      var declared = new LinkedHashMap<String, String>();
      var text = new String(file.readAllBytes(), StandardCharsets.UTF_8);
      for (var part : text.substring(text.indexOf("\n= ")).split("\n= ", -1)) {
        int end = part.indexOf('\n');
        if (end >= 0) {
          declared.put(part.substring(0, end), part.substring(end + 1).strip());
        }
      }
      return declared;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String fields(Proposal proposal) {
    var lines = new ArrayList<String>();
    for (var piece : proposal.pieces()) {
      lines.add(
          piece.role().word()
              + (piece.question().isPresent() ? "?" : "")
              + (piece.optional() ? " optional " : " ")
              + piece.field().orElse(piece.values().toString()));
    }
    proposal
        .yaml()
        .lines()
        .filter(line -> line.matches("  (title|job_title|client|day|job): .*"))
        .map(String::strip)
        .filter(line -> lines.stream().noneMatch(piece -> piece.endsWith(line)))
        .forEach(lines::add);
    return String.join("\n", lines);
  }

  @ParameterizedTest
  @MethodSource("sets")
  void readsEveryExampleBackAndSaysWhichItDoesNot(NamesInUse set) {
    assertThat(set.proposal().unread())
        .extracting(Proposal.Unread::example)
        .containsExactlyElementsOf(set.others);
    assertThat(set.proposal().unread()).allMatch(unread -> !unread.why().isBlank());
  }

  @Tag("slow")
  @ParameterizedTest
  @MethodSource("sets")
  void whateverAPieceCanBeThereIsAConvention(NamesInUse set) {
    var proposal = set.proposal();
    for (var piece : proposal.pieces()) {
      for (var role : piece.choices()) {
        assertThat(proposal.with(piece.number(), role).convention())
            .as("piece %d as %s", piece.number(), role)
            .isPresent();
      }
    }
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
        proposal(
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
        proposal("Ours", List.of("A_001_01", "A_001_02", "A_002_01"), Optional.empty());
    assertThat(restarting.yaml()).contains("restarts: setup");
    var running = proposal("Ours", List.of("A_001_01", "A_001_02", "A_002_03"), Optional.empty());
    assertThat(running.yaml()).doesNotContain("restarts");
  }

  @Test
  void aCorrectionMovesTheRole() {
    var proposal =
        proposal("Ours", List.of("20260301_01_02_03", "20260301_01_02_04"), Optional.empty());
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
        proposal(
            "Ours",
            List.of("20260301_NORD_001_0001", "20260301_NORD_002_0001"),
            Optional.of("2026-03-01 NORD spring look book"));
    assertThat(proposal.unread()).isEmpty();
    assertThat(proposal.convention().orElseThrow().kinds().get("job").pattern())
        .isEqualTo("{day.job} {client} {title}");
  }

  @Test
  void withoutAnExampleAJobBeginsWithItsDate() {
    var proposal = proposal("Ours", List.of("A_001_01", "A_001_02"), Optional.empty());
    assertThat(proposal.convention().orElseThrow().kinds().get("job").pattern())
        .startsWith("{day}_");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"___", "-", "\u0301", "a/", "..", "{x}", "\"", "\\", "🎞", "a\tb", "#x", "[a]_1"})
  void anyTextIsProposedForOrRefused(String example) {
    Proposal.of("Ours", List.of(example), Optional.of(example))
        .ifPresent(
            proposal -> {
              assertThat(proposal.yaml()).isNotBlank();
              assertThat(proposal.examples()).hasSize(1);
              assertThat(proposal.findings()).isNotNull();
            });
  }

  @Test
  void aTitleOfBlanksAndAJobOfBlanksAreNone() {
    var names = List.of(" A_001_01 ", "", "A_001_02");
    var proposal = Proposal.of("  ", names, Optional.of("  ")).orElseThrow();
    assertThat(proposal.yaml()).startsWith("convention: \"Our names\"\n");
    assertThat(proposal.convention().orElseThrow().kinds().get("job").pattern())
        .startsWith("{day}_");
    assertThat(proposal.examples())
        .extracting(Proposal.Example::given)
        .containsExactly("A_001_01", "A_001_02");
    assertThat(proposal(" Ours ", names, Optional.of(" 2026-03-01 A ")).yaml())
        .startsWith("convention: \"Ours\"\n")
        .contains("\"{day} {client}\"");
  }

  @Test
  void aPieceIsCountedFromOneAndItsChoicesToo() {
    var proposal = proposal("Ours", List.of("A_001_01", "A_001_02"), Optional.empty());
    assertThat(proposal.pieces()).extracting(Proposal.Piece::number).containsExactly(1, 2, 3);
    assertThat(proposal.canBe(0, Role.OTHER)).isFalse();
    assertThat(proposal.canBe(1, Role.OTHER)).isTrue();
    assertThat(proposal.canBe(3, Role.OTHER)).isTrue();
    assertThat(proposal.canBe(4, Role.OTHER)).isFalse();
  }

  @Test
  void whatIsSoAboutTheConventionIsSaid() {
    assertThat(
            proposal("Ours", List.of("KVO-A", "KVO-B"), Optional.empty()).findings().stream()
                .map(Finding::rule))
        .contains(Rule.SAME_NAME);
  }

  /** A version's number stands in the way of a select's: the title ends in a number, too. */
  @Test
  void aJobThatIsNotReadBackIsNamed() {
    var job = "2026-03-01 \u0e2a\u0e37\u0e2d";
    var proposal = proposal("Ours", List.of("A_001_01", "A_001_02"), Optional.of(job));
    assertThat(proposal.unread()).extracting(Proposal.Unread::example).containsExactly(job);
  }

  @Test
  void refusesNoNames() {
    assertThat(Proposal.of("Ours", List.of(" ", ""), Optional.empty())).isEmpty();
  }

  /** Whatever is built by one convention is read back by the one proposed from it. */
  @Tag("slow")
  @net.jqwik.api.Tag("slow")
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
    var proposal = proposal("Ours", names, Optional.empty());
    assertThat(proposal.unread()).isEmpty();
    assertThat(proposal.convention().orElseThrow().kinds().get("frame").pattern())
        .isEqualTo("{day}_{client}_{setup}_{take}");
  }

  @Tag("slow")
  @net.jqwik.api.Tag("slow")
  @Property(tries = 60)
  void neverThrowsOnAnyTexts(
      @ForAll @Size(min = 1, max = 6) List<@StringLength(max = 40) String> names) {
    Proposal.of("Ours", names, Optional.empty())
        .ifPresent(
            proposal -> {
              assertThat(proposal.yaml()).isNotBlank();
              assertThat(proposal.unread()).isNotNull();
              assertThat(proposal.pieces())
                  .allMatch(piece -> piece.choices().contains(piece.role()));
              assertThat(proposal.with(1, Role.OTHER)).isNotNull();
            });
  }

  @Test
  void takesEachExampleApart() {
    var proposal =
        proposal(
            "Ours",
            List.of("a/20260301_ABC_012_F_0001.CR3", "20260301_ABC_012_0002", "notes on the day"),
            Optional.empty());
    assertThat(proposal.examples())
        .extracting(Proposal.Example::name)
        .containsExactly("20260301_ABC_012_F_0001", "20260301_ABC_012_0002", "notes on the day");
    assertThat(proposal.examples().get(0).texts())
        .containsExactly(
            Optional.of("20260301"),
            Optional.of("ABC"),
            Optional.of("012"),
            Optional.of("F"),
            Optional.of("0001"));
    assertThat(proposal.examples().get(1).texts().get(3)).isEmpty();
    assertThat(proposal.examples().get(2).texts()).isEmpty();
    assertThat(proposal.pieces())
        .extracting(Proposal.Piece::before)
        .containsExactly("", "_", "_", "_", "_");
  }

  @Test
  void saysWhereAnExampleBeginsToDisagree() {
    var names = List.of("A_001_01", "A_001_02", "A_002_01", "A_002_x1");
    var odd = proposal("Ours", names, Optional.empty()).examples().getLast();
    assertThat(odd.unread().orElseThrow().at()).hasValue("A_002_".length());
    assertThat(odd.unread().orElseThrow().why()).contains("x");
  }

  @Test
  void oneStrayWordMakesNoPieceOptional() {
    var proposal =
        proposal(
            "Ours",
            List.of("20260301_ABC_012_0001", "20260301_ABC_012_0002", "Thumbs"),
            Optional.empty());
    assertThat(proposal.pieces()).noneMatch(Proposal.Piece::optional);
    assertThat(proposal.unread()).extracting(Proposal.Unread::example).containsExactly("Thumbs");
  }

  @Test
  void asksWhatTheNamesDoNotShow() {
    var proposal =
        proposal(
            "Ours", List.of("260301_ABC_01_red_0001", "260301_ABC_01_blue_0002"), Optional.empty());
    assertThat(proposal.pieces())
        .filteredOn(piece -> piece.question().isPresent())
        .extracting(Proposal.Piece::role)
        .containsExactly(Role.DATE, Role.CLIENT, Role.TITLE);
    assertThat(proposal.with(2, Role.TEXT).pieces().get(1).question()).isEmpty();
    assertThat(proposal.with(2, Role.TEXT).pieces().get(0).question()).isPresent();
  }

  @Test
  void aPieceIsOnlyWhatItCanBe() {
    var proposal =
        proposal("Ours", List.of("20260301_ABC_01", "20260301_DEF_02"), Optional.empty());
    assertThat(proposal.pieces().get(0).choices()).contains(Role.DATE).doesNotContain(Role.COUNTER);
    assertThat(proposal.pieces().get(1).choices())
        .contains(Role.CLIENT)
        .doesNotContain(Role.COUNTER, Role.DATE, Role.TEXT);
    assertThatIllegalArgumentException().isThrownBy(() -> proposal.with(2, Role.COUNTER));
  }

  /** A search that tries each way anew would outlive the test run. */
  @Tag("slow")
  @ParameterizedTest
  @ValueSource(strings = {"a_", "1_", "a1-", "x y_"})
  void namesOfOneRepeatedPieceAreCompared(String piece) {
    var names = new ArrayList<String>();
    for (int i = 0; i < 300; i++) {
      names.add(piece.repeat(1 + i % 29) + i);
    }
    assertThat(proposal("Ours", names, Optional.empty()).examples()).hasSize(300);
  }

  @Test
  void savesWhereNothingIsAndRefusesWhereSomethingIs(@TempDir Path folder) throws IOException {
    var proposal = proposal("Ours", List.of("A_001_01", "A_001_02"), Optional.empty());
    var file = folder.resolve("ours.yaml");
    assertThat(proposal.save(file)).isEmpty();
    assertThat(file).hasContent(proposal.yaml());
    var mine = Files.writeString(folder.resolve("mine.yaml"), "mine");
    assertThat(proposal.save(mine))
        .hasValueSatisfying(
            problem -> {
              assertThat(problem.where()).isEqualTo(mine.toString());
              assertThat(problem.remedy()).contains("another name");
            });
    assertThat(mine).hasContent("mine");
  }

  @Test
  void wordsWithSpacesAndOtherSignsAreOnePiece() {
    var proposal =
        proposal(
            "Ours",
            List.of("20260301_red wool-coat_001", "20260301_blue linen-shirt_002"),
            Optional.of("2026-03-01 spring look-book"));
    assertThat(proposal.unread()).isEmpty();
    assertThat(proposal.yaml()).contains("also: \"-\", separator: \" \"");
  }

  /** Han letters stand alone; a Thai vowel sign is a mark that no field can have. */
  @Test
  void namesInOtherScriptsAreReadWhereAFieldCanHaveTheirLetters() {
    var proposal =
        proposal(
            "Ours",
            List.of(
                "20261102_\u682a\u5f0f\u4f1a\u793e_\u8d64\u3044_0001",
                "20261102_\u682a\u5f0f\u4f1a\u793e_stra\u00dfe_0002",
                "20261102_\u682a\u5f0f\u4f1a\u793e_\u0e2a\u0e37\u0e2d_0003"),
            Optional.of("2026-11-02 \u682a\u5f0f\u4f1a\u793e \u0e2a\u0e37\u0e2d"));
    assertThat(proposal.convention()).isPresent();
    assertThat(proposal.examples())
        .extracting(example -> example.unread().isEmpty())
        .containsExactly(true, true, false);
    assertThat(proposal.examples().getLast().unread().orElseThrow().at())
        .hasValue("20261102_\u682a\u5f0f\u4f1a\u793e_\u0e2a".length());
  }
}
