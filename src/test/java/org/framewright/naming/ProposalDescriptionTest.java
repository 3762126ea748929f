package org.framewright.naming;

import static org.framewright.AssertThat.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A proposal in words. */
class ProposalDescriptionTest {
  private static Proposal proposal(String... names) {
    return Proposal.of("Ours", List.of(names), Optional.of("2026-03-01 KVO wool")).orElseThrow();
  }

  @Test
  void thePiecesAreALineEachWithTheQuestionBelow() {
    assertThat(
            ProposalDescription.pieces(
                proposal("20260301_KVO_012_F_0001", "20260301_KVO_012_0002")))
        .containsExactly(
            " 1  date     20260301",
            " 2  client   KVO",
            "    ? It is the same in all of them: does it change with the job, or is it part of"
                + " every name?",
            " 3  setup    012",
            " 4  view     F  (not in all of them)",
            " 5  counter  0001, 0002");
  }

  @Test
  void ofManyTextsTheFirstFiveAreShown() {
    var names = IntStream.rangeClosed(1, 6).mapToObj("KVO_00%d_0001"::formatted).toList();
    var six = Proposal.of("Ours", names, Optional.empty()).orElseThrow().pieces().get(1);
    assertThat(ProposalDescription.values(six)).isEqualTo("001, 002, 003, 004, 005 ...");
    var five = Proposal.of("Ours", names.subList(0, 5), Optional.empty()).orElseThrow();
    assertThat(ProposalDescription.values(five.pieces().get(1)))
        .isEqualTo("001, 002, 003, 004, 005");
  }

  @Test
  void thePiecesComeFirstThenTheTextThenWhatIsSoAboutItThenTheProof() {
    var proposal = proposal("20260301_KVO_012_F_0001", "20260301_KVO_012_0002", "notes on the day");
    var lines = ProposalDescription.of(proposal);
    assertThat(lines).startsWith(" 1  date     20260301").contains("convention: \"Ours\"");
    assertThat(lines)
        .endsWith(
            "",
            "note: a select keeps the name of its frame; only the folder shows which of the two it"
                + " is",
            "  Remedy: Nothing, if that is meant.",
            "does not fit: notes on the day",
            "  This is no frame name: at the beginning the day (a date as uuuuMMdd) was expected,"
                + " but there is “n”.",
            "2 of 3 names are read back as they are.");
  }

  @Test
  void whatAPieceCanBeIsAListInWords() {
    var pieces = proposal("20260301_KVO_012_F_0001", "20260301_KVO_012_0002").pieces();
    assertThat(ProposalDescription.choices(pieces.get(1)))
        .isEqualTo("client, title, setup, view, text or other");
  }

  @Test
  void whereThereIsNoNameOneIsAskedFor() {
    assertThat(ProposalDescription.noNames().remedy()).contains("20260301_ABC_012_F_0001");
  }
}
