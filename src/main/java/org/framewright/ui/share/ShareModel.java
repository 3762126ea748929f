package org.framewright.ui.share;

import java.io.IOException;
import java.net.URI;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.share.DeviceNews;
import org.framewright.share.Invitation;
import org.framewright.share.PairedDevice;
import org.framewright.share.Role;
import org.framewright.share.ShareException;
import org.framewright.ui.task.Tasks;

/** The page for phones and tablets without its controls. On the interface thread. */
public final class ShareModel implements AutoCloseable {
  /** How it stands. */
  public sealed interface State {
    /** No device can reach the job. */
    record Off() implements State {}

    /** It is being turned on. */
    record Starting() implements State {}

    /** Devices that are paired reach the job at this address. */
    record On(URI address) implements State {}

    /** It could not be turned on. */
    record Failed(Problem why) implements State {}
  }

  private final Sharing sharing;
  private final Tasks tasks;
  private final Consumer<DeviceNews> heard;
  private final Consumer<Throwable> failed;
  private final ReadOnlyObjectWrapper<State> state = new ReadOnlyObjectWrapper<>(new State.Off());
  private final ReadOnlyObjectWrapper<Optional<Invitation>> code =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<List<PairedDevice>> devices =
      new ReadOnlyObjectWrapper<>(List.of());
  private final ObjectProperty<Role> role = new SimpleObjectProperty<>(Role.ASSISTANT);
  private final StringProperty chosen = new SimpleStringProperty("");
  private Optional<Sharing.Page> page = Optional.empty();
  private AutoCloseable listening = () -> {};
  private boolean closed;

  /**
   * Turned off.
   *
   * @param heard hears what became of devices
   * @param failed hears of what nobody foresaw
   */
  public ShareModel(
      Sharing sharing, Tasks tasks, Consumer<DeviceNews> heard, Consumer<Throwable> failed) {
    this.sharing = sharing;
    this.tasks = tasks;
    this.heard = heard;
    this.failed = failed;
    // A code for another role would be taken for the one that is asked for now.
    role.addListener((_, _, _) -> putCodeAway());
  }

  /** How it stands. */
  public ReadOnlyObjectProperty<State> state() {
    return state.getReadOnlyProperty();
  }

  /** Whether devices reach the job. */
  public boolean isOn() {
    return page.isPresent();
  }

  /** The code that is shown; nothing while none is. */
  ReadOnlyObjectProperty<Optional<Invitation>> code() {
    return code.getReadOnlyProperty();
  }

  /** Every device that is paired, those that are connected first; none while it is off. */
  public ReadOnlyObjectProperty<List<PairedDevice>> devices() {
    return devices.getReadOnlyProperty();
  }

  /** How many devices are connected. */
  public int connected() {
    return (int) devices.get().stream().filter(PairedDevice::connected).count();
  }

  /** As what the next device is paired. */
  ObjectProperty<Role> role() {
    return role;
  }

  /** The id of the device that is chosen; empty for none. */
  StringProperty chosen() {
    return chosen;
  }

  /** The device that is chosen. */
  Optional<PairedDevice> chosenDevice() {
    return devices.get().stream().filter(one -> one.id().equals(chosen.get())).findFirst();
  }

  /** Turns it on, or off. */
  void turn() {
    switch (state.get()) {
      case State.Starting _ -> {}
      case State.On _ -> turnOff();
      case State.Off _, State.Failed _ -> turnOn();
    }
  }

  private void turnOn() {
    state.set(new State.Starting());
    tasks.quietly(sharing::begin, this::began, this::notBegun);
  }

  private void began(Sharing.Page begun) {
    if (closed) {
      end(begun);
      return;
    }
    page = Optional.of(begun);
    listening = begun.listen(() -> tasks.ui().execute(() -> look(begun)));
    devices.set(inOrder(begun.devices()));
    state.set(new State.On(begun.address()));
  }

  private void notBegun(Throwable failure) {
    switch (failure) {
      case ShareException e -> state.set(new State.Failed(e.problem()));
      case IOException e -> state.set(new State.Failed(FileProblems.of(e)));
      default -> {
        state.set(new State.Off());
        failed.accept(failure);
      }
    }
  }

  private void turnOff() {
    putCodeAway();
    page.ifPresent(this::end);
    page = Optional.empty();
    devices.set(List.of());
    chosen.set("");
    state.set(new State.Off());
  }

  private void end(Sharing.Page begun) {
    try {
      listening.close();
    } catch (Exception e) {
      failed.accept(e);
    }
    listening = () -> {};
    tasks.quietly(
        () -> {
          begun.close();
          return begun;
        },
        _ -> {},
        failed);
  }

  /** Makes a code for one device in the chosen role; the one that is shown holds no more. */
  void showCode() {
    putCodeAway();
    page.ifPresent(begun -> code.set(Optional.of(begun.invite(role.get()))));
  }

  /** Shows the code no more; it holds no more. */
  void putCodeAway() {
    code.get().ifPresent(shown -> page.ifPresent(begun -> begun.withdraw(shown)));
    code.set(Optional.empty());
  }

  /** The code goes when its time is over. */
  void lookAtTheTime(Instant now) {
    if (code.get().filter(one -> !now.isBefore(one.until())).isPresent()) {
      putCodeAway();
    }
  }

  /** Sends the chosen device away; the one in its place is chosen. */
  void unpair() {
    var gone = chosenDevice();
    if (gone.isEmpty() || page.isEmpty()) {
      return;
    }
    var begun = page.get();
    int place = devices.get().indexOf(gone.get());
    tasks.quietly(
        () -> {
          begun.unpair(gone.get().id());
          return begun;
        },
        _ -> chooseFrom(begun, place),
        failure -> {
          chooseFrom(begun, place);
          failed.accept(failure);
        });
  }

  /** A device is gone; the one in its place is chosen. */
  private void chooseFrom(Sharing.Page begun, int place) {
    look(begun);
    var left = devices.get();
    if (chosen.get().isEmpty() && !left.isEmpty()) {
      chosen.set(left.get(Math.min(place, left.size() - 1)).id());
    }
  }

  /** Sees who is there, and tells what changed. */
  private void look(Sharing.Page begun) {
    if (!page.equals(Optional.of(begun))) {
      return;
    }
    var now = inOrder(begun.devices());
    var news = DeviceNews.between(devices.get(), now);
    devices.set(now);
    if (chosenDevice().isEmpty()) {
      chosen.set("");
    }
    for (var one : news) {
      if (one instanceof DeviceNews.Paired(var device)
          && code.get().filter(shown -> shown.role() == device.role()).isPresent()) {
        putCodeAway();
      }
      heard.accept(one);
    }
  }

  /** Those that are there come first, each in the order in which they were paired. */
  private static List<PairedDevice> inOrder(List<PairedDevice> devices) {
    return Stream.concat(
            devices.stream().filter(PairedDevice::connected),
            devices.stream().filter(device -> !device.connected()))
        .toList();
  }

  /** Turns it off for good: the job is closed. */
  @Override
  public void close() {
    closed = true;
    turnOff();
  }
}
