package org.framewright.handoff;

import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.handoff.names.KnownName;
import org.framewright.handoff.names.NamesRead;
import org.framewright.handoff.verify.PackageCheck;
import org.junit.jupiter.api.Test;

class HandOffDescriptionTest {
  @Test
  void whatWentIsCountedAndItsPlaceStandsLast() {
    var done = new Delivery.Delivered(3, Path.of("package"), 95, 249, 1, List.of());
    assertThat(HandOffDescription.delivered(done))
        .containsExactly(
            "95 selects in 249 files, each copied and read again: hand-off 3", "package");
    assertThat(HandOffDescription.planned(new HandOffPlan("all", List.of(), List.of())))
        .containsExactly("0 selects in 0 files");
  }

  @Test
  void whatCameBackIsCountedAndWhatIsWrongWithItFollows() {
    var bag =
        new PackageCheck(
            PackageCheck.Kind.BAGIT,
            List.of("manifest-sha256.txt"),
            true,
            4,
            List.of("gone.jpg"),
            List.of("other.jpg"),
            List.of("new.jpg"),
            List.of(),
            List.of(new Problem("this is no checksum", "line 3", "")),
            List.of());
    var returns =
        new Returns(
            Path.of("back"),
            List.of(
                new Returns.Answer("A_1", "001", Returns.State.ANSWERED, List.of("A_1_v01.jpg")),
                new Returns.Answer("A_2", "001", Returns.State.MISSING, List.of())),
            List.of(new Returns.Extra("final.jpg", Text.of("it is no name"))),
            Optional.of(bag),
            List.of());
    assertThat(HandOffDescription.returned(returns))
        .containsExactly(
            "1 of 2 selects came back under a name of the convention",
            "A_2 is missing",
            "extra: final.jpg: it is no name",
            "in its manifest: line 3: this is no checksum",
            "not what its manifest says: other.jpg",
            "in its manifest, not there: gone.jpg",
            "there, not in its manifest: new.jpg");
  }

  private static ClientNames client(String text, String... called) throws Exception {
    var names = new ArrayList<KnownName>();
    for (int i = 0; i < called.length; i++) {
      names.add(new KnownName(i, called[i], KnownName.Kind.NOW));
      names.add(new KnownName(i, "IMG_100" + i, KnownName.Kind.BEFORE));
    }
    var read = NamesRead.of(text.getBytes(StandardCharsets.UTF_8), "names.txt", names);
    return new ClientNames("names.txt", read, List.of(), List.of(called), List.of());
  }

  @Test
  void eachLineOfAListIsToldWithWhatItWasTakenFor() throws Exception {
    var names =
        client(
            """
            Thanks, Claire
            IMG_1000, 1001?
            > IMG_1002
            2 copies
            IMG_1003_IMG_1000
            IMG_1009
            XYZW_5555
            IMG_1000-1003
            """,
            "A/first",
            "A/second",
            "A/third",
            "IMG_1003");
    assertThat(HandOffDescription.names(names))
        .containsExactly(
            "line 1: Thanks, Claire  (names no frame)",
            "line 2: IMG_1000, 1001?",
            "  IMG_1000 = A/first (its name before a rename, IMG_1000)",
            "  1001 ? a question mark stands behind it: A/second",
            "line 3: > IMG_1002  (passed over: quoted from an earlier message)",
            "line 4: 2 copies  (names no frame)",
            "  2 - it counts something",
            "line 5: IMG_1003_IMG_1000",
            "  IMG_1003_IMG_1000 ? it holds “IMG_1003”, and another name: IMG_1003",
            "line 6: IMG_1009",
            "  IMG_1009 ? no frame has this name; the nearest: IMG_1003, IMG_1002 (now A/third),"
                + " IMG_1001 (now A/second)",
            "line 7: XYZW_5555",
            "  XYZW_5555 ? no frame has this name",
            "line 8: IMG_1000-1003",
            "  IMG_1000-1003 = A/first, A/second, A/third, IMG_1003 (a range of 4 frames)",
            "4 frames named without a doubt; 4 lines to be settled");
  }

  @Test
  void anAnswerSettlesAListAndNothingElseOfItChanges() throws Exception {
    var names = client("IMG_1000\nIMG_1001_IMG_1002", "one", "two", "three");
    assertThat(names.taken()).isEqualTo(1);
    var settled = names.settled(List.of(new NamesRead.Answer(2, 0, List.of(1))));
    assertThat(HandOffDescription.counted(names))
        .isEqualTo("1 frame named without a doubt; 1 line to be settled");
    assertThat(HandOffDescription.counted(settled)).isEqualTo("2 frames named without a doubt");
    assertThat(settled.taken()).isEqualTo(2);
    assertThat(settled.file()).isEqualTo("names.txt");
    assertThat(settled.called(2)).isEqualTo("three");
    assertThat(names.unclear()).hasSize(1);
  }

  private static Returns.Answer answer(int... versions) {
    var files = new TreeMap<Integer, List<String>>();
    for (int version : versions) {
      files.put(version, List.of("A_1_v" + version + ".jpg"));
    }
    return new Returns.Answer("A_1", "001", Returns.State.ANSWERED, List.of(), files);
  }

  private static Returns returns(Returns.Answer answer, Returns.Extra... extras) {
    return new Returns(
        Path.of("back"), List.of(answer), List.of(extras), Optional.empty(), List.of());
  }

  @Test
  void versionsAreToldWhereThereAreSeveral() {
    var counted = "1 of 1 selects came back under a name of the convention";
    assertThat(HandOffDescription.returned(returns(answer(2)))).containsExactly(counted);
    assertThat(HandOffDescription.returned(returns(answer(1, 2))))
        .containsExactly(counted, "A_1: version 2 counts, A_1_v2.jpg; also here: 1");
    assertThat(HandOffDescription.returned(returns(answer(1, 9))))
        .containsExactly(
            counted,
            "A_1: version 9 counts, A_1_v9.jpg; also here: 1; not here: 2, 3, 4, 5, 6, 7 and 1"
                + " more");
  }

  @Test
  void aWronglyNamedFileIsToldWithWhatItLikelyIs() {
    var named =
        new Returns.Extra(
            "a.jpg",
            Text.of("no name"),
            Optional.of(
                new Returns.Likely(
                    "A_1", Text.of("it has no version"), Optional.of("A_1_v1.jpg"))));
    var alike =
        new Returns.Extra(
            "b.jpg",
            Text.of("no name"),
            Optional.of(
                new Returns.Likely("A_2", Text.of("it is most like it"), Optional.empty())));
    assertThat(HandOffDescription.returned(returns(answer(1), named, alike)))
        .containsExactly(
            "1 of 1 selects came back under a name of the convention",
            "extra: a.jpg: no name",
            "  likely A_1: it has no version  ->  A_1_v1.jpg",
            "extra: b.jpg: no name",
            "  likely A_2: it is most like it",
            "1 file can be renamed right; see: framewright returns JOB FOLDER --rename --preview");
  }

  @Test
  void aFolderIsCompleteOnceEverySelectIsAnsweredAndNothingElseCame() {
    var missing = new Returns.Answer("A_2", "001", Returns.State.MISSING, List.of());
    assertThat(returns(answer(1)).complete()).isTrue();
    assertThat(returns(missing).complete()).isFalse();
    assertThat(returns(answer(1), new Returns.Extra("x.jpg", Text.of("no name"))).complete())
        .isFalse();
    assertThat(List.of(Returns.State.values()))
        .extracting(Returns.State::word)
        .containsExactly("answered", "changed", "untouched", "missing");
  }
}
