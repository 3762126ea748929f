package org.framewright.share;

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
import org.framewright.base.PlainText;
import org.framewright.base.Text;

/** What pages are served with, whatever carries it. Safe from any thread. */
final class Service implements AutoCloseable {
  private static final int LONGEST_NAME = 60;

  /** What became of a device's wish to pair. */
  sealed interface Pairing {
    /** It is paired. */
    record Paired(Role role, String job, long last) implements Pairing {}

    /** It is not, for this reason: {@code spent}, {@code old} or {@code taken}. */
    record Not(String why) implements Pairing {}
  }

  private final Content content;
  private final Devices devices;
  private final Clock clock;
  private final Map<String, LiveStream> streams = new ConcurrentHashMap<>();
  private final Map<String, Instant> seen = new ConcurrentHashMap<>();
  private final List<Runnable> listeners = new CopyOnWriteArrayList<>();

  /** One device after the other: an invitation is for one. */
  private final Object pairing = new Object();

  /** Touched under the lock {@link #pairing} only. */
  private final Invitations invitations;

  Service(Content content, Devices devices, Clock clock, SecureRandom random) {
    this.content = content;
    this.devices = devices;
    this.clock = clock;
    this.invitations = new Invitations(random);
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
          content.named(id, called);
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
    return new Pairing.Paired(role, content.name(), content.last(id));
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
        content.wake();
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

  /**
   * Tells a device what there is to tell until it is unpaired, opens another stream, or reads no
   * more.
   */
  void follow(
      Devices.Known device, Function<Text, String> say, OutputStream out, WriteWatch.Guard guard)
      throws IOException, InterruptedException {
    var id = device.id();
    var stream = new LiveStream();
    var before = streams.put(id, stream);
    try {
      if (before != null) {
        before.end(LiveStream.End.REPLACED);
        content.wake();
      } else {
        changed();
      }
      if (device(id).isEmpty()) {
        stream.end(LiveStream.End.UNPAIRED); // Between the look at its key and now.
      }
      stream.run(content.hearing(device, say), out, guard);
    } finally {
      if (streams.remove(id, stream)) {
        seen.put(id, now());
        changed();
      }
    }
  }

  /** Whether a role may ask for this path. */
  boolean allows(Role role, String path) {
    return content.allows(role, path);
  }

  Ticks.Answer receive(Devices.Known device, List<RequestJson.Sent> events)
      throws IOException, InterruptedException {
    return content.receive(device, events);
  }

  /** What a scanned code finds. */
  ObjectNode code(String typed) {
    return content.code(typed);
  }

  /** A picture that a role may see just now; nothing where there is none of this token. */
  Optional<byte[]> picture(Role role, String token, int edge)
      throws IOException, InterruptedException {
    return content.picture(role, token, edge);
  }

  // Time

  /** Once a second, always from the same thread. */
  void beat() {
    content.beat(!streams.isEmpty());
  }

  @Override
  public void close() {
    content.close();
    streams.values().forEach(stream -> stream.end(LiveStream.End.REPLACED));
    content.wake();
  }
}
