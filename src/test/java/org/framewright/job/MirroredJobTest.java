package org.framewright.job;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.naming.Convention;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Jobs whose computers meet in a store. */
class MirroredJobTest {
  private static final Station DESK = new Station("desk");
  private static final Station CART = new Station("cart");

  @TempDir private Path root;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private final MemoryLogs store = new MemoryLogs();
  private Path folder;

  @BeforeEach
  void aJobOfTwoSetups() throws Exception {
    var yaml = Files.readString(Path.of("templates/fashion-days.yaml"));
    var convention = ((Convention.Parsed.Sound) Convention.parse(yaml, "test.yaml")).convention();
    var values = Map.of("day", "2026-11-23", "client", "Kvo", "title", "Winter");
    var desk = Files.createDirectory(root.resolve("desk"));
    var started = (Started.Opened) Job.start(convention, desk, values, clock, DESK);
    folder = started.job().folder();
    started
        .job()
        .importList(
            new ShotList(List.of(JobTest.setup("1", "Coat", "F"), JobTest.setup("2", "Hat", "F"))));
  }

  private Path copied() throws Exception {
    var copy = root.resolve("cart").resolve(folder.getFileName());
    try (var files = Files.walk(folder)) {
      for (var file : files.toList()) {
        var to = copy.resolve(folder.relativize(file).toString());
        Files.createDirectories(to.getParent());
        Files.copy(file, to);
      }
    }
    return copy;
  }

  private static List<Path> listed(Path folder) throws Exception {
    try (var files = Files.list(folder)) {
      return files.toList();
    }
  }

  @Test
  void twoCopiesOfOneFolderShowOneBoard() throws Exception {
    var copy = copied();
    var deskMirror = JobMirror.of(folder, clock, DESK, store);
    var cartMirror = JobMirror.of(copy, clock, CART, store);
    var desk = Job.open(folder, clock, DESK, deskMirror.logs());
    var cart = Job.open(copy, clock, CART, cartMirror.logs());
    assertThat(cart.identity()).isEqualTo(desk.identity());
    desk.mark("1", SetupState.SHOT, MarkDetails.NONE);
    clock.pass(Duration.ofMinutes(1));
    cart.mark(
        "1",
        SetupState.SIGNED_OFF,
        new MarkDetails(Optional.of("Odette"), Optional.empty(), Optional.empty()));
    cart.mark("2", SetupState.ON_SET, MarkDetails.NONE);
    deskMirror.exchange();
    cartMirror.exchange();
    deskMirror.exchange();
    assertThat(desk.refresh()).isTrue();
    assertThat(cart.refresh()).isTrue();
    assertThat(desk.state()).isEqualTo(cart.state());
    assertThat(desk.state().of("1").signedOffBy()).contains("Odette");
    assertThat(desk.elsewhere().orElseThrow().station()).isEqualTo("cart");
    assertThat(desk.events()).isEqualTo(store.size()).isEqualTo(5);
    assertThat(desk.warnings()).isEmpty();
    var proof = desk.signOffs(desk.scan()).getFirst().proof().orElseThrow();
    assertThat(proof.file()).isEqualTo(".framewright/log/from-store/desk/cart.jsonl");
  }

  @Test
  void aComputerWithoutTheFolderBringsTheJobFromTheStore() throws Exception {
    var desk = Job.open(folder, clock, DESK);
    desk.mark("1", SetupState.SHOT, MarkDetails.NONE);
    JobMirror.of(folder, clock, DESK, store).exchange();
    var parent = Files.createDirectory(root.resolve("cart"));
    var brought = Job.bring(desk.convention(), parent, store, clock, CART);
    assertThat(brought).isEqualTo(parent.resolve(folder.getFileName()));
    var cart = Job.open(brought, clock, CART);
    assertThat(cart.state()).isEqualTo(desk.state());
    assertThat(cart.identity()).isEqualTo(desk.identity());
    assertThat(cart.framesFolder()).isDirectory();
    assertThat(cart.warnings()).isEmpty();
    assertThat(listed(parent)).containsExactly(brought);
    assertThatThrownBy(() -> Job.bring(desk.convention(), parent, store, clock, CART))
        .hasMessageContaining("this job exists already");
  }

  /** Its folder was lost: what this computer wrote is its own log again. */
  @Test
  void theComputerThatLostItsFolderGoesOnWithItsOwnLog() throws Exception {
    var desk = Job.open(folder, clock, DESK);
    JobMirror.of(folder, clock, DESK, store).exchange();
    var parent = Files.createDirectory(root.resolve("again"));
    var again = Job.open(Job.bring(desk.convention(), parent, store, clock, DESK), clock, DESK);
    again.mark("1", SetupState.SHOT, MarkDetails.NONE);
    var mirror = JobMirror.of(again.folder(), clock, DESK, store);
    assertThat(mirror.exchange()).isEqualTo(new JobMirror.Exchanged(1, 0));
    assertThat(mirror.told()).isEmpty();
    assertThat(store.log("desk")).hasSize(3);
  }

  @Test
  void aStoreWithoutTheBeginningOfAJobLeavesNoFolder() throws Exception {
    var parent = Files.createDirectory(root.resolve("cart"));
    var convention = Job.open(folder, clock, DESK).convention();
    assertThatThrownBy(() -> Job.bring(convention, parent, store, clock, CART))
        .hasMessageContaining("does not have the beginning of this job");
    assertThat(listed(parent)).isEmpty();
  }

  @Test
  void whatTheMirrorTellsIsAWarningOfTheJob() throws Exception {
    var mirror = JobMirror.of(folder, clock, DESK, store);
    store.append("desk", List.of(StoredLines.line("desk", 1, "other")));
    mirror.exchange();
    var job = Job.open(folder, clock, DESK, mirror.logs());
    assertThat(job.warnings()).singleElement().asString().startsWith("Event 1 of desk");
  }

  @Test
  void aTickTellsTheMirror() throws Exception {
    var mirror = JobMirror.of(folder, clock, DESK, store);
    var heard = new java.util.concurrent.atomic.AtomicInteger();
    mirror.onAppend(heard::incrementAndGet);
    var job = Job.open(folder, clock, DESK, mirror.logs());
    job.mark("1", SetupState.SHOT, MarkDetails.NONE);
    var device = new Device("page-00000001");
    job.receive(device, new Numbered(1, clock.instant(), new Asked.Named("a phone")));
    assertThat(heard.get()).isEqualTo(2);
  }

  @Test
  void aJobIsOpenedOnAStoreAlone() throws Exception {
    JobMirror.of(folder, clock, DESK, store).exchange();
    var job = Job.open(folder, clock, CART, JobLogs.stored(store));
    job.mark("2", SetupState.SHOT, MarkDetails.NONE);
    assertThat(store.log("cart")).hasSize(1);
    assertThat(Job.open(folder, clock, CART, JobLogs.stored(store)).state().of("2").state())
        .isEqualTo(SetupState.SHOT);
    assertThat(Job.open(folder, clock, DESK).state().of("2").state())
        .isEqualTo(SetupState.TO_SHOOT);
    assertThat(job.values()).isEqualTo(new LinkedHashMap<>(Job.open(folder, clock).values()));
  }
}
