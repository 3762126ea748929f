package org.framewright.ui.naming;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import org.framewright.naming.Convention;
import org.framewright.naming.ExampleNames;
import org.framewright.naming.Proposal;
import org.framewright.naming.Proposal.Role;
import org.framewright.ui.look.Texts;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

@Tag("slow")
class ProposalModelTest {
  private static final String NAMES =
      """
      20260301_ABC_012_F_0001.CR3
      20260301_ABC_012_F_0002.CR3
      20260301_ABC_012_0003.CR3
      20260301_ABC_013_B_0001.CR3
      """;

  @TempDir private Path folder;

  private final List<Throwable> troubles = new ArrayList<>();
  private final List<Path> saved = new ArrayList<>();
  private final ProposalModel model = model(Tasks.immediate());

  private ProposalModel model(Tasks tasks) {
    return new ProposalModel(tasks, Texts.in(Locale.ENGLISH), troubles::add, saved::add);
  }

  private Proposed now() {
    return model.proposed().get();
  }

  private Role role(int piece) {
    return now().columns().get(piece - 1).piece().role();
  }

  @Test
  void takesTheNamesApartAndReadsEachOfThemBack() {
    model.names().set(NAMES);
    assertThat(now().columns())
        .extracting(column -> column.piece().role())
        .containsExactly(Role.DATE, Role.CLIENT, Role.SETUP, Role.VIEW, Role.COUNTER);
    assertThat(model.rows()).hasSize(4).allMatch(row -> row.texts().size() == 5);
    assertThat(now().proven()).isTrue();
    assertThat(now().findings()).isEqualTo(now().proposal().orElseThrow().findings());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "\n \n", "___\n---", "\t"})
  void withoutANameThereIsNothingToSave(String names) {
    model.names().set(NAMES);
    model.names().set(names);
    assertThat(now().proposal()).isEmpty();
    assertThat(model.rows()).isEmpty();
    assertThat(model.canSave().get()).isFalse();
    assertThat(now().remarks()).hasSize(names.isBlank() ? 0 : 1);
    model.save(folder.resolve("nothing.yaml"));
    assertThat(folder).isEmptyDirectory();
  }

  /** What each answer makes of the second piece. */
  @Tag("slow")
  @ParameterizedTest
  @EnumSource(
      value = Role.class,
      names = {"CLIENT", "TITLE", "SETUP", "VIEW", "TEXT", "OTHER"})
  void whateverIsAnsweredIsProvedAnew(Role answer) {
    model.names().set(NAMES);
    model.say(2, answer);
    assertThat(role(2)).isEqualTo(answer);
    assertThat(now().proven()).isTrue();
    assertThat(now().proposal().orElseThrow().yaml())
        .contains(
            switch (answer) {
              case CLIENT -> "client: {type: code";
              case TITLE -> "title: {type: words";
              case SETUP -> "setup: {type: code";
              case VIEW -> "view: {type: choice, values: {ABC: ABC}}";
              case TEXT -> "frame:     \"{day}_ABC_";
              default -> "part2: {type: code";
            });
    assertThat(now().asked().filter(piece -> piece.number() == 2)).isEmpty();
  }

  @Test
  void asksOneThingAfterTheOther() {
    model.names().set("260301_ABC_01_red_0001\n260301_ABC_01_blue_0002");
    var asked = new ArrayList<Integer>();
    while (now().asked().isPresent()) {
      var piece = now().asked().get();
      asked.add(piece.number());
      assertThat(now().questions()).isEqualTo(4 - asked.size());
      model.say(piece.number(), piece.role());
    }
    assertThat(asked).containsExactly(1, 2, 4);
  }

  @Test
  void aRoleIsOnePiecesOnlyAndTheLastAnswerHolds() {
    model.names().set("20260301_01_02_03\n20260301_01_02_04");
    model.say(2, Role.SETUP);
    assertThat(role(3)).isEqualTo(Role.OTHER);
    model.say(3, Role.SETUP);
    assertThat(role(2)).isEqualTo(Role.OTHER);
    assertThat(role(3)).isEqualTo(Role.SETUP);
    model.forget();
    assertThat(model.hasSaid()).isFalse();
  }

  @Test
  void whatWasSaidHoldsWhileOneTypesOn() {
    model.names().set(NAMES);
    model.say(2, Role.TEXT);
    model.names().set(NAMES + "2026");
    assertThat(role(2)).isEqualTo(Role.TEXT);
    model.names().set("A_01\nA_02");
    assertThat(now().unheld()).isTrue();
    model.names().set(NAMES);
    assertThat(now().unheld()).isFalse();
    assertThat(role(2)).isEqualTo(Role.TEXT);
  }

  @Test
  void showsWhereExamplesDisagreeAndOnlyThoseIfOneWants() {
    model.names().set(NAMES + "20260301_ABC_13_F_0002.CR3\n");
    assertThat(now().proven()).isFalse();
    model.onlyUnread().set(true);
    assertThat(model.rows())
        .singleElement()
        .satisfies(
            row -> {
              assertThat(row.name()).isEqualTo("20260301_ABC_13_F_0002");
              assertThat(row.unread().orElseThrow().at()).hasValue("20260301_ABC_13".length());
              assertThat(row.unread().orElseThrow().why()).contains("3 digits");
            });
    model.names().set(NAMES);
    assertThat(model.onlyUnread().get()).isFalse();
    assertThat(model.rows()).hasSize(4);
  }

  @Test
  void aJobsNameIsReadBackToo() {
    model.names().set(NAMES);
    model.job().set("2026-03-01 ABC knitwear");
    assertThat(now().jobUnread()).isEmpty();
    assertThat(now().proposal().orElseThrow().yaml()).contains("{day.job} {client} {title}");
    model.job().set("\u0e40\u0e2a\u0e37\u0e49\u0e2d");
    assertThat(now().jobUnread()).isPresent();
    assertThat(now().proven()).isFalse();
  }

  @Test
  void aHostilePasteIsCutAndSaidToBe() {
    model.names().set("x".repeat(1 << 20) + "\n" + "A_001_0001\n".repeat(1 << 17));
    assertThat(model.rows()).hasSize(ExampleNames.MOST);
    assertThat(now().remarks()).hasSize(2);
  }

  @Test
  void oneMegabyteOfOneLetterEndsAfterTheLongestName() {
    assertThat(ProposalModel.taken("x".repeat(1 << 20), ProposalModel.MOST_CHARACTERS))
        .hasSize(ExampleNames.LONGEST + 1);
  }

  @Test
  void whatIsPastedBeyondTheRoomIsCutAtALine() {
    var pasted = "A_001_0001\n".repeat(100_000);
    var taken = ProposalModel.taken(pasted, ProposalModel.MOST_CHARACTERS);
    assertThat(pasted).startsWith(taken);
    assertThat(taken).endsWith("1\n").hasSizeGreaterThan(ProposalModel.MOST_CHARACTERS - 11);
    assertThat(ProposalModel.taken("A_1\nB_2", 100)).isEqualTo("A_1\nB_2");
    assertThat(ProposalModel.taken("A_1\nB_2", 0)).isEmpty();
    var long1 = "y".repeat(3000) + "\nB_2";
    assertThat(ProposalModel.taken(long1, 9000)).endsWith("y\nB_2").hasSizeLessThan(1100);
  }

  @Test
  void savesWhatIsShownAndHandsItOn() throws IOException {
    model.names().set(NAMES);
    model.title().set("Knitwear \u2013 studio B");
    assertThat(model.suggestedFile()).isEqualTo("knitwear-studio-b.yaml");
    var file = folder.resolve(model.suggestedFile());
    model.save(file);
    assertThat(saved).containsExactly(file);
    assertThat(model.outcome().get().orElseThrow().file()).contains(file);
    assertThat(Convention.read(file)).isInstanceOf(Convention.Parsed.Sound.class);
    model.title().set("Another");
    assertThat(model.outcome().get()).isEmpty();
  }

  @Test
  void neverReplacesAFile() throws IOException {
    var file = Files.writeString(folder.resolve("ours.yaml"), "mine");
    model.names().set(NAMES);
    model.save(file);
    assertThat(file).hasContent("mine");
    assertThat(saved).isEmpty();
    assertThat(model.outcome().get().orElseThrow())
        .satisfies(
            said -> {
              assertThat(said.file()).isEmpty();
              assertThat(said.what())
                  .contains("exists already", file.toString(), "Give another name");
            });
  }

  @Test
  void saysWhenItCouldNotBeWritten() {
    model.names().set(NAMES);
    model.save(folder.resolve("none").resolve("ours.yaml"));
    assertThat(troubles).hasSize(1);
    assertThat(model.outcome().get().orElseThrow().what()).contains("is not saved");
    assertThat(model.canSave().get()).isTrue();
  }

  @Test
  void theNewestNamesWinAndAnOldProposalIsNotSaved() {
    Deque<Runnable> background = new ArrayDeque<>();
    var slow = model(new Tasks(background::add, Runnable::run));
    slow.names().set("A_01");
    slow.names().set("A_01\nB_02");
    slow.names().set(NAMES);
    background.remove().run();
    assertThat(slow.proposed().get().proposal()).isPresent();
    assertThat(slow.canSave().get()).isFalse();
    background.remove().run();
    assertThat(background).isEmpty();
    assertThat(slow.proposed().get().proposal().map(Proposal::examples).orElseThrow()).hasSize(4);
    assertThat(slow.canSave().get()).isTrue();
  }
}
