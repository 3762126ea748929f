package org.framewright.share;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.OutputStream;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.framewright.base.PlainText;
import org.framewright.base.Text;
import org.framewright.day.DayHours;
import org.framewright.frames.Frame;
import org.framewright.job.Scanned;
import org.framewright.live.JobView;
import org.framewright.live.LiveJob;
import org.framewright.live.LostFolder;
import org.framewright.live.ShownToClient;
import org.framewright.shotlist.Setup;

/** What pages are served with, whatever carries it. Safe from any thread. */
final class Service implements AutoCloseable {
  private static final int LONGEST_NAME = 60;
  private static final int BEATS_OF_A_LOOK = 5;
  private static final int BEATS_OF_A_RECKONING = 15;

  /** What became of a device's wish to pair. */
  sealed interface Pairing {
    /** It is paired. */
    record Paired(Role role, String job, long last) implements Pairing {}

    /** It is not, for this reason: {@code spent}, {@code old} or {@code taken}. */
    record Not(String why) implements Pairing {}
  }

  private final LiveJob live;
  private final Devices devices;
  private final Clock clock;
  private final DayHours hours;
  private final PictureTokens tokens;
  private final Pictures pictures = new Pictures();
  private final Codes codes;
  private final Folds folds;
  private final Ticks ticks;
  private final Moments moments;
  private final AutoCloseable following;
  private final Map<String, LiveStream> streams = new ConcurrentHashMap<>();
  private final Map<String, Instant> seen = new ConcurrentHashMap<>();
  private final List<Runnable> listeners = new CopyOnWriteArrayList<>();

  /** One device after the other: an invitation is for one. */
  private final Object pairing = new Object();

  /** Touched under the lock {@link #pairing} only. */
  private final Invitations invitations;

  private long beats;

  Service(LiveJob live, Devices devices, DayHours hours, Clock clock, SecureRandom random) {
    this.live = live;
    this.devices = devices;
    this.hours = hours;
    this.clock = clock;
    this.tokens = new PictureTokens(devices.pictureKey());
    this.codes = new Codes(live.job());
    this.folds = new Folds(live.job(), tokens, codes, this::isClient);
    this.ticks = new Ticks(live, tokens);
    this.moments = new Moments(live.now(), isLost(live.failures()));
    this.invitations = new Invitations(random);
    this.following =
        live.listen(
            new LiveJob.Listener() {
              @Override
              public void shown(JobView view) {
                moments.show(view);
              }

              @Override
              public void failing(List<Throwable> failures) {
                moments.lost(isLost(failures));
              }
            });
    moments.show(live.now()); // What came between the two.
  }

  private static boolean isLost(List<Throwable> failures) {
    return failures.stream().anyMatch(LostFolder.class::isInstance);
  }

  private boolean isClient(String station) {
    return devices.known(station).filter(one -> one.role() == Role.CLIENT).isPresent();
  }

  Instant now() {
    return clock.instant();
  }

  // Devices

  /** A device that is paired. */
  Optional<Devices.Known> device(String id) {
    return devices.known(id).filter(Devices.Known::isPaired);
  }

  /** A device that proved who it is. */
  void heard(String id) {
    seen.put(id, now());
  }

  Secret invite(Role role, Instant until) {
    synchronized (pairing) {
      return invitations.invite(role, until);
    }
  }

  /** Whether an invitation can still be used. */
  boolean holds(String secret) {
    synchronized (pairing) {
      return invitations.holds(secret, now());
    }
  }

  void withdraw(String secret) {
    synchronized (pairing) {
      invitations.withdraw(secret);
    }
  }

  /**
   * Pairs a device that was invited. One that is paired already and asks again, since it missed the
   * answer, gets the same answer.
   *
   * @param signed whether the request was signed with a key
   * @throws IOException if it cannot be kept, here or in the job; the invitation holds on
   */
  Pairing pair(String id, String name, Predicate<byte[]> signed)
      throws IOException, InterruptedException {
    synchronized (pairing) {
      var before = device(id);
      if (before.flatMap(Devices.Known::key).filter(signed).isPresent()) {
        return paired(id, before.get().role());
      }
      return switch (invitations.find(id, signed, now())) {
        case Invitations.Found.Spent _ -> new Pairing.Not("spent");
        case Invitations.Found.Old _ -> new Pairing.Not("old");
        case Invitations.Found.Open(var role, var secret) -> {
          if (before.isPresent()) {
            // Else whoever is invited could go on as somebody who is there.
            yield new Pairing.Not("taken");
          }
          var called = called(name, role);
          ticks.name(id, called);
          devices.pair(id, called, role, secret.key(id), now());
          invitations.spend(secret);
          heard(id);
          changed();
          yield paired(id, role);
        }
      };
    }
  }

  private Pairing paired(String id, Role role) {
    return new Pairing.Paired(role, moments.newest().view().name(), ticks.last(id));
  }

  private static String called(String name, Role role) {
    var line = PlainText.line(name.strip());
    var called = line.isBlank() ? role.word() : line;
    return called
        .codePoints()
        .limit(LONGEST_NAME)
        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
        .toString();
  }

  List<PairedDevice> devices() {
    return devices.paired().stream()
        .map(
            one ->
                new PairedDevice(
                    one.id(),
                    one.name(),
                    one.role(),
                    streams.containsKey(one.id()),
                    seen.getOrDefault(one.id(), one.seen())))
        .toList();
  }

  void unpair(String id) throws IOException {
    try {
      devices.unpair(id, seen.getOrDefault(id, now()));
    } finally {
      var stream = streams.get(id);
      if (stream != null) {
        stream.end(LiveStream.End.UNPAIRED);
        moments.wake();
      }
      changed();
    }
  }

  AutoCloseable listen(Runnable listener) {
    listeners.add(listener);
    return () -> listeners.remove(listener);
  }

  private void changed() {
    listeners.forEach(Runnable::run);
  }

  // What devices ask for

  /** Tells a device of the job until it is unpaired, opens another stream, or reads no more. */
  void follow(
      Devices.Known device, Function<Text, String> say, OutputStream out, WriteWatch.Guard guard)
      throws IOException, InterruptedException {
    var id = device.id();
    var stream = new LiveStream(id, device.role(), say, () -> ticks.last(id), clock);
    var before = streams.put(id, stream);
    try {
      if (before != null) {
        before.end(LiveStream.End.REPLACED);
        moments.wake();
      } else {
        changed();
      }
      if (device(id).isEmpty()) {
        stream.end(LiveStream.End.UNPAIRED); // Between the look at its key and now.
      }
      stream.run(moments, folds, out, guard);
    } finally {
      if (streams.remove(id, stream)) {
        seen.put(id, now());
        changed();
      }
    }
  }

  Ticks.Answer receive(Devices.Known device, List<RequestJson.Sent> events)
      throws IOException, InterruptedException {
    return ticks.receive(device.id(), device.role(), events);
  }

  /** What a scanned code finds. */
  ObjectNode code(String typed) {
    var json = JsonNodeFactory.instance.objectNode();
    switch (codes.of(moments.newest().view().list()).find(typed)) {
      case Scanned.One(var setup) -> json.putArray("setups").add(setup.code());
      case Scanned.Several(var setups) -> {
        var array = json.putArray("setups");
        setups.stream().map(Setup::code).forEach(array::add);
      }
      case Scanned.StraySlate(var setup, var ofAnotherJob) ->
          json.put("stray", setup).put("ofAnotherJob", ofAnotherJob);
      case Scanned.Unknown(var code, var checked) ->
          json.put("unknown", code).put("checked", checked);
    }
    return json;
  }

  /** A picture that a role may see just now; nothing where there is none of this token. */
  Optional<byte[]> picture(Role role, String token, int edge)
      throws IOException, InterruptedException {
    var view = moments.newest().view();
    var frames =
        switch (role) {
          case ASSISTANT -> view.latest().values().stream().flatMap(List::stream);
          case CLIENT ->
              view
                  .latest()
                  .getOrDefault(ShownToClient.of(view, Optional.empty()).code(), List.of())
                  .stream();
          case VIEWER -> Stream.<Frame>empty();
        };
    var frame = frames.filter(one -> tokens.of(one.id()).equals(token)).findFirst();
    return frame.isEmpty() ? Optional.empty() : pictures.of(frame.get(), edge);
  }

  // Time

  /** Once a second, always from the same thread. */
  void beat() {
    if (streams.isEmpty()) {
      beats = 0; // Nobody looks; whoever comes is told at the next.
      return;
    }
    if (beats % BEATS_OF_A_LOOK == 0) {
      boolean lost = live.lookWhetherLost();
      if (!lost && moments.newest().lost()) {
        live.refresh(); // It is back, which only reading it finds out.
      }
    }
    if (beats % BEATS_OF_A_RECKONING == 0) {
      moments.show(DayNow.of(live.job(), moments.newest().view(), hours));
    }
    beats++;
  }

  @Override
  public void close() {
    try {
      following.close();
    } catch (Exception e) {
      throw new IllegalStateException(e); // It takes us off a list.
    }
    streams.values().forEach(stream -> stream.end(LiveStream.End.REPLACED));
    moments.wake();
  }
}
