package org.framewright.ui.renaming;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.framewright.base.Text;
import org.framewright.renaming.PlannedRename;
import org.framewright.renaming.Seen;
import org.framewright.renaming.Status;
import org.framewright.ui.look.Texts;
import org.framewright.ui.renaming.PlanLine.State;
import org.junit.jupiter.api.Test;

class PlanLineTest {
  private static PlannedRename rename(String from, String to, String group, Status status) {
    var blocked = status == Status.BLOCKED;
    return new PlannedRename(
        Path.of(from),
        Path.of(to),
        group,
        status,
        Text.of(blocked ? "it is there already" : ""),
        Text.of(blocked ? "Move it away." : ""),
        Seen.NOTHING);
  }

  @Test
  void foldsTheFilesOfAFrameIntoOneLine() {
    var lines =
        PlanLine.of(
            Texts.in(Locale.ENGLISH),
            List.of(
                rename("01/IMG_1.CR3", "01/A_0001.CR3", "g", Status.READY),
                rename("01/IMG_1.JPG", "01/A_0001.JPG", "g", Status.READY),
                rename("01/IMG_1.xmp", "01/A_0001.xmp", "g", Status.READY)),
            List.of());
    assertThat(lines)
        .singleElement()
        .satisfies(
            line -> {
              assertThat(line.from()).isEqualTo("IMG_1");
              assertThat(line.to()).isEqualTo("A_0001");
              assertThat(line.endings()).containsExactly(".CR3", ".JPG", ".xmp");
              assertThat(line.files()).isEqualTo(3);
              assertThat(line.folder()).isEqualTo("01");
            });
  }

  @Test
  void keepsFilesApartThatDoNotGetOneName() {
    var lines =
        PlanLine.of(
            Texts.in(Locale.ENGLISH),
            List.of(
                rename("IMG_1.CR3", "A_0001.CR3", "g", Status.READY),
                rename("IMG_1.JPG", "B_0001.JPG", "g", Status.READY)),
            List.of());
    assertThat(lines).extracting(PlanLine::to).containsExactly("A_0001.CR3", "B_0001.JPG");
  }

  @Test
  void putsWhatIsBlockedFirstAndWhatIsNamedLast() {
    var lines =
        PlanLine.of(
            Texts.in(Locale.ENGLISH),
            List.of(
                rename("a.jpg", "a.jpg", "", Status.UNCHANGED),
                rename("b.jpg", "B.jpg", "", Status.READY),
                rename("c.jpg", "C.jpg", "", Status.BLOCKED),
                rename("d.jpg", "D.jpg", "", Status.READY)),
            List.of());
    assertThat(lines)
        .extracting(PlanLine::state)
        .containsExactly(State.BLOCKED, State.READY, State.READY, State.UNCHANGED);
    assertThat(lines)
        .extracting(PlanLine::from)
        .containsExactly("c.jpg", "b.jpg", "d.jpg", "a.jpg");
  }

  @Test
  void aBlockedFrameSaysTheReasonOfTheFileThatHasOne() {
    var why = rename("IMG_1.JPG", "A.JPG", "g", Status.BLOCKED);
    var silent =
        new PlannedRename(
            Path.of("IMG_1.CR3"),
            Path.of("A.CR3"),
            "g",
            Status.BLOCKED,
            Text.NONE,
            Text.NONE,
            Seen.NOTHING);
    assertThat(PlanLine.of(Texts.in(Locale.ENGLISH), List.of(silent, why), List.of()))
        .singleElement()
        .satisfies(
            line -> {
              assertThat(line.why()).isEqualTo("it is there already");
              assertThat(line.remedy()).isEqualTo("Move it away.");
            });
  }

  @Test
  void isFoundByAnyOfItsWords() {
    var line =
        PlanLine.of(
                Texts.in(Locale.ENGLISH),
                List.of(rename("f/IMG_9.CR3", "f/LUMO_001.CR3", "", Status.BLOCKED)),
                List.of())
            .getFirst();
    assertThat(line.matches(List.of("img_9"))).isTrue();
    assertThat(line.matches(List.of("lumo", "blocked"))).isTrue();
    assertThat(line.matches(List.of("already"))).isTrue();
    assertThat(line.matches(List.of("lumo", "ready to go"))).isFalse();
  }

  @Test
  void foldsTenThousandFramesWithoutLosingAFile() {
    var renames = new ArrayList<PlannedRename>();
    for (var i = 0; i < 10_000; i++) {
      renames.add(rename("IMG_" + i + ".CR3", "A_" + i + ".CR3", "g" + i, Status.READY));
      renames.add(rename("IMG_" + i + ".JPG", "A_" + i + ".JPG", "g" + i, Status.READY));
    }
    var lines = PlanLine.of(Texts.in(Locale.ENGLISH), renames, List.of());
    assertThat(lines).hasSize(10_000);
    assertThat(lines.stream().mapToInt(PlanLine::files).sum()).isEqualTo(20_000);
  }
}
