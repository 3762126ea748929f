package org.framewright.job;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.SequencedMap;
import java.util.stream.Collectors;
import org.framewright.base.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A folder that is kept like a store, and what a person is told where that cannot be. */
class JobMirrorTest {
  @TempDir private Path root;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private final MemoryLogs store = new MemoryLogs();

  /** A computer with a job folder of its own. */
  private final class Computer {
    private final Path job;
    private final String station;
    private final JobMirror mirror;
    private final EventLog log;

    Computer(String station) throws IOException {
      this(station, station);
    }

    Computer(String folder, String station) throws IOException {
      this(folder, station, store);
    }

    Computer(String folder, String station, NumberedLogs store) throws IOException {
      this.job = root.resolve(folder);
      this.station = station;
      this.mirror = MirrorScene.mirror(job, station, clock, store);
      this.log = MirrorScene.log(job, station, clock, mirror);
    }

    Path file() {
      return MirrorScene.log(job).resolve(station + ".jsonl");
    }

    void tick(String... setups) throws IOException {
      for (var setup : setups) {
        log.append(EventLogContract.shot(setup));
      }
    }

    String told() {
      return mirror.told().stream().map(Text::english).collect(Collectors.joining("\n"));
    }

    /** Every setup that a newcomer to its folder reads. */
    List<String> setups() throws IOException {
      var all = new FileEventLog(MirrorScene.log(job), new Station("newcomer"), clock);
      return EventLogContract.setups(all.news());
    }
  }

  @Test
  void twoStationsWithoutASharedFolderWorkThroughTheStoreAlone() throws Exception {
    var desk = new Computer("desk");
    var cart = new Computer("cart");
    desk.tick("1", "2");
    assertThat(desk.mirror.exchange()).isEqualTo(new JobMirror.Exchanged(2, 0));
    assertThat(cart.mirror.exchange()).isEqualTo(new JobMirror.Exchanged(0, 2));
    cart.tick("3");
    assertThat(cart.mirror.exchange()).isEqualTo(new JobMirror.Exchanged(1, 0));
    assertThat(desk.mirror.exchange()).isEqualTo(new JobMirror.Exchanged(0, 1));
    assertThat(desk.setups()).containsExactlyInAnyOrder("1", "2", "3");
    assertThat(cart.setups()).containsExactlyInAnyOrder("1", "2", "3");
    assertThat(desk.mirror.exchange()).isEqualTo(new JobMirror.Exchanged(0, 0));
    assertThat(desk.told()).isEmpty();
    assertThat(desk.log.news()).hasSize(3);
  }

  @Test
  void theStoreHasTheLinesByteForByte() throws Exception {
    var desk = new Computer("desk");
    desk.tick("1", "2");
    desk.mirror.exchange();
    assertThat(store.log("desk").stream().map(SealedLine::toString))
        .containsExactlyElementsOf(Files.readAllLines(desk.file()));
  }

  @Test
  void whatCameFromTheStoreIsReadWithoutIt() throws Exception {
    var desk = new Computer("desk");
    desk.tick("1");
    desk.mirror.exchange();
    new Computer("cart").mirror.exchange();
    assertThat(MirrorScene.log(root.resolve("cart")).resolve("from-store/cart/desk.jsonl"))
        .hasSameTextualContentAs(desk.file());
    assertThat(new Computer("cart").setups()).containsExactly("1");
  }

  @Test
  void aTickIsInTheFolderWhenTheStoreIsNotReached() throws Exception {
    var desk = new Computer("desk", "desk", new Away());
    var heard = new ArrayList<String>();
    desk.mirror.onAppend(() -> heard.add("appended"));
    desk.tick("1");
    assertThat(heard).hasSize(1);
    assertThat(desk.setups()).containsExactly("1");
    assertThatThrownBy(desk.mirror::exchange).isInstanceOf(IOException.class);
    assertThat(new Computer("desk").mirror.exchange()).isEqualTo(new JobMirror.Exchanged(1, 0));
  }

  private static final class Away implements NumberedLogs {
    @Override
    public SequencedMap<String, Long> heads() throws IOException {
      throw new IOException("away");
    }

    @Override
    public Receipt append(String writer, List<SealedLine> lines) throws IOException {
      throw new IOException("away");
    }

    @Override
    public List<byte[]> read(String writer, long from) throws IOException {
      throw new IOException("away");
    }
  }

  @Test
  void twoStationsOfOneFolderBringNothingToItTwice() throws Exception {
    var desk = new Computer("shared", "desk");
    var cart = new Computer("shared", "cart");
    desk.tick("1");
    cart.tick("2");
    assertThat(desk.mirror.exchange()).isEqualTo(new JobMirror.Exchanged(2, 0));
    assertThat(cart.mirror.exchange()).isEqualTo(new JobMirror.Exchanged(0, 0));
    assertThat(MirrorScene.log(desk.job).resolve("from-store")).doesNotExist();
  }

  @Test
  void aStoreThatCameBackFromAnOlderCopyGetsWhatItLacks() throws Exception {
    var desk = new Computer("desk");
    desk.tick("1", "2");
    desk.mirror.exchange();
    var backup = store.copy();
    desk.tick("3", "4");
    desk.mirror.exchange();
    store.restore(backup);
    assertThat(desk.mirror.exchange()).isEqualTo(new JobMirror.Exchanged(2, 0));
    assertThat(store.log("desk")).hasSize(4);
    store.restore(new MemoryLogs());
    desk.tick("5");
    assertThat(desk.mirror.exchange()).isEqualTo(new JobMirror.Exchanged(5, 0));
    assertThat(desk.told()).isEmpty();
  }

  @Test
  void aFolderThatCameBackFromAnOlderCopyGetsTheEndOfItsOwnLog() throws Exception {
    var desk = new Computer("desk");
    desk.tick("1");
    var older = Files.readAllBytes(desk.file());
    desk.tick("2", "3");
    desk.mirror.exchange();
    var whole = Files.readAllBytes(desk.file());
    Files.write(desk.file(), older);
    var again = new Computer("desk");
    assertThat(again.mirror.exchange()).isEqualTo(new JobMirror.Exchanged(0, 2));
    assertThat(desk.file()).hasBinaryContent(whole);
    again.tick("4");
    assertThat(again.mirror.exchange()).isEqualTo(new JobMirror.Exchanged(1, 0));
    assertThat(again.told()).isEmpty();
  }

  @Test
  void whereTwoWriteUnderOneNameAPersonIsToldWhatToDo() throws Exception {
    var desk = new Computer("desk");
    var clone = new Computer("clone", "desk");
    desk.tick("1", "2");
    clone.tick("a", "b", "c");
    desk.mirror.exchange();
    clone.mirror.exchange();
    assertThat(clone.told())
        .contains("Event 2 of desk is another one in the store")
        .contains("move " + SettingsFolder.usual().resolve("station") + " away");
    assertThat(store.log("desk").stream().map(SealedLine::toString))
        .containsExactlyElementsOf(Files.readAllLines(desk.file()));
    assertThat(clone.setups()).containsExactlyInAnyOrder("a", "b", "c");
    clone.mirror.exchange();
    assertThat(clone.told()).contains("Event 2 of desk");
  }

  /** The folder was brought back while the program was open, and then worked in. */
  @Test
  void whatReplacesWhatWasSentIsToldToo() throws Exception {
    var desk = new Computer("desk");
    desk.tick("1", "2");
    desk.mirror.exchange();
    Files.delete(desk.file());
    new FileEventLog(MirrorScene.log(desk.job), new Station("desk"), clock)
        .append(EventLogContract.shot("other"));
    desk.mirror.exchange();
    assertThat(desk.told()).contains("Event 1 of desk is another one");
    assertThat(store.log("desk")).hasSize(2);
  }

  @Test
  void aDamagedLineStopsOnlyWhatComesAfterItAndSaysSo() throws Exception {
    var desk = new Computer("desk");
    desk.tick("1", "2", "3");
    var lines = Files.readAllLines(desk.file());
    Files.writeString(
        desk.file(), lines.get(0) + "\n" + "x".repeat(40) + "\n" + lines.get(2) + "\n");
    desk.mirror.exchange();
    assertThat(store.log("desk")).hasSize(1);
    assertThat(desk.told())
        .contains("has the events of desk up to 1 only", "goes on with 3", "a copy that is whole");
    Files.write(desk.file(), lines);
    desk.mirror.exchange();
    assertThat(store.log("desk")).hasSize(3);
    assertThat(desk.told()).isEmpty();
  }

  @Test
  void whatTheStoreHasDamagedIsNotTakenForEvents() throws Exception {
    var desk = new Computer("desk");
    desk.tick("1", "2");
    desk.mirror.exchange();
    store.damage("desk", 2, store.log("desk").getFirst());
    var cart = new Computer("cart");
    cart.mirror.exchange();
    assertThat(cart.setups()).containsExactly("1");
    assertThat(cart.told()).contains("event 2 of desk is damaged");
  }

  @Test
  void aCopyOfALogUnderAnotherNameIsNotSent() throws Exception {
    var desk = new Computer("desk");
    desk.tick("1");
    Files.copy(desk.file(), desk.file().resolveSibling("desk-conflict.jsonl"));
    desk.mirror.exchange();
    assertThat(store.size()).isEqualTo(1);
    assertThat(store.heads().keySet()).containsExactly("desk");
  }

  @Test
  void theLogsOfDevicesTravelToo() throws Exception {
    var desk = new Computer("desk");
    var page =
        new Entry(1, new Stamp(1, 0, "page-00000001"), clock.instant(), EventLogContract.shot("7"));
    assertThat(desk.log.append(page)).isTrue();
    desk.mirror.exchange();
    var cart = new Computer("cart");
    cart.mirror.exchange();
    assertThat(cart.setups()).containsExactly("7");
  }

  @Test
  void aLineThatIsStillBeingWrittenWaits() throws Exception {
    var desk = new Computer("desk");
    desk.tick("1");
    Files.writeString(desk.file(), "{\"station\":\"desk\",", StandardOpenOption.APPEND);
    desk.mirror.exchange();
    assertThat(store.log("desk")).hasSize(1);
    desk.tick("2");
    desk.mirror.exchange();
    assertThat(store.log("desk")).hasSize(2);
    assertThat(desk.told()).isEmpty();
  }
}
