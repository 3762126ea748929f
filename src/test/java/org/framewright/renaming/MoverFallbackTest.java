package org.framewright.renaming;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.framewright.disk.Recording;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Each way to change a name moves to a free name, and leaves a taken one as it is. */
@DisabledOnOs(OS.WINDOWS)
class MoverFallbackTest {
  @TempDir private Path folder;
  private Path from;
  private Path to;

  /** A mover that gives one answer and does nothing. */
  private record Idle(MoveResult result, Guarantee guarantee) implements Mover {
    @Override
    public MoveResult move(Path from, Path to) {
      return result;
    }
  }

  /** One that replaces, as rename(2) does. */
  private record Replacing(Guarantee guarantee) implements Mover {
    @Override
    public MoveResult move(Path from, Path to) throws IOException {
      Files.move(from, to, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
      return MoveResult.MOVED;
    }
  }

  /** One that fails. */
  private record Failing(Guarantee guarantee) implements Mover {
    @Override
    public MoveResult move(Path from, Path to) throws IOException {
      throw new IOException("no");
    }
  }

  static List<Mover> movers() {
    return MoverFallback.movers();
  }

  @BeforeEach
  void aFile() throws IOException {
    from = Files.writeString(folder.resolve("IMG_1.jpg"), "a frame");
    to = folder.resolve("A_1.jpg");
  }

  @ParameterizedTest
  @MethodSource("movers")
  void movesToAFreeName(Mover mover) throws IOException {
    assertThat(mover.move(from, to)).isEqualTo(MoveResult.MOVED);
    assertThat(from).doesNotExist();
    assertThat(to).hasContent("a frame");
  }

  @ParameterizedTest
  @MethodSource("movers")
  void leavesATakenNameAsItIs(Mover mover) throws IOException {
    Files.writeString(to, "another");
    assertThat(mover.move(from, to)).isEqualTo(MoveResult.TAKEN);
    assertThat(from).hasContent("a frame");
    assertThat(to).hasContent("another");
  }

  @ParameterizedTest
  @MethodSource("movers")
  void saysThatAFileIsGone(Mover mover) throws IOException {
    Files.delete(from);
    assertThat(mover.move(from, to)).isEqualTo(MoveResult.GONE);
    assertThat(to).doesNotExist();
  }

  @ParameterizedTest
  @MethodSource("movers")
  void saysThatAFolderIsGone(Mover mover) throws IOException {
    assertThat(mover.move(from, folder.resolve("none/A_1.jpg"))).isEqualTo(MoveResult.GONE);
    assertThat(from).hasContent("a frame");
  }

  @Test
  void theFirstThatMovesAndRefusesIsTaken() throws IOException {
    var link = new LinkMover();
    var movers =
        List.of(
            new Idle(MoveResult.UNSUPPORTED, Guarantee.NATIVE),
            new Idle(MoveResult.MOVED, Guarantee.NATIVE),
            new Replacing(Guarantee.NATIVE),
            new Failing(Guarantee.NATIVE),
            link,
            new ReserveMover());
    assertThat(MoverFallback.pick(movers, folder)).isSameAs(link);
    assertThat(folder.toFile().list()).containsExactly("IMG_1.jpg");
  }

  /** A path of another file system is not one that the system's call would find. */
  @Test
  void theSystemsOwnCallIsTakenForItsOwnPathsOnly() throws IOException {
    assertThat(MoverFallback.movers(folder)).hasSameSizeAs(MoverFallback.movers());
    assertThat(MoverFallback.movers(Recording.on(folder).root()))
        .extracting(Mover::guarantee)
        .containsExactly(Guarantee.LINKED, Guarantee.RESERVED);
  }

  @Test
  void whereNoneWorksNothingIsRenamed() {
    assertThatThrownBy(
            () ->
                MoverFallback.pick(
                    List.of(new Idle(MoveResult.UNSUPPORTED, Guarantee.NATIVE)), folder))
        .hasMessageContaining("no rename that is safe");
    assertThatThrownBy(() -> MoverFallback.pick(List.of(new Failing(Guarantee.RESERVED)), folder))
        .hasMessage("no");
    assertThat(folder.toFile().list()).containsExactly("IMG_1.jpg");
  }

  @Test
  void allButTheSystemsOwnCallPromiseLess() {
    assertThat(Guarantee.NATIVE.reduced()).isFalse();
    assertThat(new LinkMover().guarantee()).isEqualTo(Guarantee.LINKED);
    assertThat(new ReserveMover().guarantee()).isEqualTo(Guarantee.RESERVED);
    assertThat(List.of(Guarantee.LINKED, Guarantee.RESERVED)).allMatch(Guarantee::reduced);
    assertThat(Guarantee.values()).extracting(Guarantee::words).doesNotHaveDuplicates();
  }

  @Test
  void onlyOurOwnMarkIsAMark() throws IOException {
    var mark =
        Files.writeString(to, "framewright: this name is reserved by a rename in progress\n");
    assertThat(ReserveMover.isMarked(mark)).isTrue();
    Files.writeString(to, "framewright: this name is reserved by a rename in progresS\n");
    assertThat(ReserveMover.isMarked(mark)).isFalse();
    assertThat(ReserveMover.isMarked(from)).isFalse();
    assertThat(ReserveMover.isMarked(folder)).isFalse();
    assertThat(ReserveMover.isMarked(folder.resolve("none"))).isFalse();
  }

  @Test
  void twoLinksAreOneFileAndACopyIsNot() throws IOException {
    assertThat(Links.areOneFile(from, Files.createLink(to, from))).isTrue();
    Files.delete(to);
    assertThat(Links.areOneFile(from, Files.copy(from, to))).isFalse();
    assertThat(Links.areOneFile(from, from)).isFalse();
  }
}
