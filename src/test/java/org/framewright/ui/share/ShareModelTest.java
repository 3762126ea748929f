package org.framewright.ui.share;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.net.URI;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.framewright.base.FileProblemException;
import org.framewright.base.Problem;
import org.framewright.share.DeviceNews;
import org.framewright.share.Invitation;
import org.framewright.share.PairedDevice;
import org.framewright.share.Role;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.Test;

class ShareModelTest {
  private static final Instant NOON = Instant.parse("2026-11-23T12:00:00Z");
  private static final URI ADDRESS = URI.create("http://192.0.2.20:8470");

  private final Studio studio = new Studio();
  private final List<DeviceNews> heard = new ArrayList<>();
  private final List<Throwable> failed = new ArrayList<>();
  private final ShareModel model =
      new ShareModel(studio::begin, Tasks.immediate(), heard::add, failed::add);

  /** A network on which devices come and go as a test says. */
  private static final class Studio implements Sharing.Page {
    private final List<PairedDevice> devices = new ArrayList<>();
    private final List<Role> invited = new ArrayList<>();
    private final List<Invitation> withdrawn = new ArrayList<>();
    private Runnable changed = () -> {};
    private IOException refusal;
    private int begun;
    private int closed;

    Sharing.Page begin() throws IOException {
      if (refusal != null) {
        throw refusal;
      }
      begun++;
      return this;
    }

    void pairs(String id, String name, Role role) {
      devices.add(new PairedDevice(id, name, role, true, NOON));
      changed.run();
    }

    void sleeps(String id) {
      devices.replaceAll(
          one ->
              one.id().equals(id)
                  ? new PairedDevice(id, one.name(), one.role(), false, NOON)
                  : one);
      changed.run();
    }

    @Override
    public URI address() {
      return ADDRESS;
    }

    @Override
    public Invitation invite(Role role) {
      invited.add(role);
      return new Invitation(
          URI.create(ADDRESS + "/#SECRET" + invited.size()), role, NOON.plusSeconds(600));
    }

    @Override
    public void withdraw(Invitation code) {
      withdrawn.add(code);
    }

    @Override
    public List<PairedDevice> devices() {
      return List.copyOf(devices);
    }

    @Override
    public void unpair(String id) {
      devices.removeIf(one -> one.id().equals(id));
      changed.run();
    }

    @Override
    public AutoCloseable listen(Runnable listener) {
      changed = listener;
      return () -> changed = () -> {};
    }

    @Override
    public void close() {
      closed++;
    }
  }

  private List<String> names() {
    return model.devices().get().stream().map(PairedDevice::name).toList();
  }

  @Test
  void nobodyIsLetInUntilSomebodySaysSo() {
    assertThat(model.state().get()).isEqualTo(new ShareModel.State.Off());
    assertThat(studio.begun).isZero();
    model.turn();
    assertThat(model.state().get()).isEqualTo(new ShareModel.State.On(ADDRESS));
    model.turn();
    assertThat(model.state().get()).isEqualTo(new ShareModel.State.Off());
    assertThat(studio.closed).isEqualTo(1);
  }

  @Test
  void itEndsWithTheJob() {
    model.turn();
    model.close();
    assertThat(studio.closed).isEqualTo(1);
    assertThat(model.isOn()).isFalse();
  }

  @Test
  void whatIsReadyOnlyAfterTheJobWasClosedEndsAtOnce() {
    var waiting = new ArrayList<Runnable>();
    var late =
        new ShareModel(
            studio::begin, new Tasks(waiting::add, Runnable::run), heard::add, failed::add);
    late.turn();
    assertThat(late.state().get()).isEqualTo(new ShareModel.State.Starting());
    late.turn();
    late.close();
    while (!waiting.isEmpty()) {
      waiting.removeFirst().run();
    }
    assertThat(studio.begun).isEqualTo(1);
    assertThat(studio.closed).isEqualTo(1);
    assertThat(late.isOn()).isFalse();
  }

  @Test
  void whatKeepsItFromBeingTurnedOnIsSaidAndItCanBeTriedAgain() {
    var problem = new Problem("port 8470 is taken", "Close the other program.");
    studio.refusal = new FileProblemException(problem);
    model.turn();
    assertThat(model.state().get()).isEqualTo(new ShareModel.State.Failed(problem));
    studio.refusal = null;
    model.turn();
    assertThat(model.isOn()).isTrue();
    assertThat(failed).isEmpty();
  }

  @Test
  void aCodeIsShownOnRequestOnlyAndInTheChosenRole() {
    model.turn();
    assertThat(model.code().get()).isEmpty();
    model.role().set(Role.CLIENT);
    model.showCode();
    assertThat(model.code().get().orElseThrow().role()).isEqualTo(Role.CLIENT);
    assertThat(studio.invited).containsExactly(Role.CLIENT);
    model.role().set(Role.VIEWER);
    assertThat(model.code().get()).isEmpty();
  }

  @Test
  void aCodeGoesWhenItsTimeIsOver() {
    model.turn();
    model.showCode();
    model.lookAtTheTime(NOON.plusSeconds(599));
    assertThat(model.code().get()).isPresent();
    model.lookAtTheTime(NOON.plusSeconds(600));
    assertThat(model.code().get()).isEmpty();
  }

  @Test
  void aCodeThatIsNotShownAnyMoreHoldsNoMore() {
    model.turn();
    model.showCode();
    var first = model.code().get().orElseThrow();
    model.showCode();
    var second = model.code().get().orElseThrow();
    assertThat(studio.withdrawn).containsExactly(first);
    model.putCodeAway();
    assertThat(studio.withdrawn).containsExactly(first, second);
  }

  @Test
  void aCodeGoesWhenItWasUsedAndWhoCameIsTold() {
    model.turn();
    model.showCode();
    studio.pairs("page-00000001", "Ines' phone", Role.ASSISTANT);
    assertThat(model.code().get()).isEmpty();
    assertThat(names()).containsExactly("Ines' phone");
    assertThat(heard).singleElement().isInstanceOf(DeviceNews.Paired.class);
  }

  @Test
  void aCodeStaysWhenADeviceOfAnotherRoleComes() {
    model.turn();
    model.showCode();
    studio.pairs("page-00000001", "Ada's tablet", Role.CLIENT);
    assertThat(model.code().get()).isPresent();
  }

  @Test
  void aCodeGoesWhenNobodyIsLetInAnyMore() {
    model.turn();
    model.showCode();
    model.turn();
    assertThat(model.code().get()).isEmpty();
    model.showCode();
    assertThat(model.code().get()).isEmpty();
  }

  @Test
  void thoseThatAreThereComeFirst() {
    model.turn();
    studio.pairs("page-00000001", "Ines' phone", Role.ASSISTANT);
    studio.pairs("page-00000002", "Ada's tablet", Role.CLIENT);
    studio.sleeps("page-00000001");
    assertThat(names()).containsExactly("Ada's tablet", "Ines' phone");
    assertThat(model.connected()).isEqualTo(1);
  }

  @Test
  void theChosenDeviceIsSentAwayAndTheOneInItsPlaceIsChosen() {
    model.turn();
    studio.pairs("page-00000001", "Ines' phone", Role.ASSISTANT);
    studio.pairs("page-00000002", "Ada's tablet", Role.CLIENT);
    model.unpair();
    assertThat(names()).hasSize(2);
    model.chosen().set("page-00000001");
    model.unpair();
    assertThat(names()).containsExactly("Ada's tablet");
    assertThat(model.chosenDevice().map(PairedDevice::name)).contains("Ada's tablet");
    model.unpair();
    assertThat(model.chosen().get()).isEmpty();
    assertThat(heard.stream().filter(DeviceNews.Unpaired.class::isInstance)).hasSize(2);
  }

  @Test
  void devicesThatAreKnownAlreadyAreNoNews() {
    studio.devices.add(
        new PairedDevice("page-00000001", "Ines' phone", Role.ASSISTANT, false, NOON));
    model.turn();
    assertThat(names()).containsExactly("Ines' phone");
    assertThat(heard).isEmpty();
  }
}
