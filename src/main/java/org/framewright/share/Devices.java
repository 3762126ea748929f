package org.framewright.share;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;
import org.framewright.base.DurableFiles;
import org.framewright.base.LockFile;
import org.framewright.base.OwnFolder;
import org.framewright.base.Sha256;
import org.framewright.base.SmallFiles;
import org.framewright.job.Device;

/**
 * The devices that were ever paired for one job, kept in the settings of whoever uses this
 * computer, never in the job's folder: their keys are nobody else's. Safe from any thread.
 */
final class Devices {
  private static final JsonMapper JSON =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();
  private static final String FOLDER = "share";
  private static final int LARGEST_FILE = 1 << 20;
  private static final int KEY = 32;

  /** More than a studio has; those that were unpaired first are forgotten first. */
  private static final int MOST_KEPT = 500;

  /**
   * A device.
   *
   * @param key nothing once it was unpaired
   * @param seen when it was heard of last, as of when this was kept
   */
  record Known(String id, String name, Role role, Optional<byte[]> key, Instant seen) {
    boolean isPaired() {
      return key.isPresent();
    }
  }

  private final Path file;
  private final String job;
  private final byte[] pictures;
  private final SequencedMap<String, Known> known = new LinkedHashMap<>();
  private int port;

  private Devices(Path file, String job, byte[] pictures) {
    this.file = file;
    this.job = job;
    this.pictures = pictures;
  }

  /**
   * Those of a job.
   *
   * @param settings the folder of the user's settings, which need not exist
   * @param job what tells the job from every other one
   * @throws IOException if they cannot be read
   */
  static Devices of(Path settings, String job, SecureRandom random) throws IOException {
    var file = file(settings, job, ".json");
    try {
      var json = JSON.readTree(SmallFiles.read(file, LARGEST_FILE));
      return read(file, job, json).orElseGet(() -> empty(file, job, random));
    } catch (NoSuchFileException e) {
      return empty(file, job, random);
    } catch (JsonProcessingException e) {
      // It was damaged from outside, since it is written whole: all pair again.
      return empty(file, job, random);
    }
  }

  /**
   * Keeps other programs of this computer from serving a job meanwhile: each has the devices in
   * memory, and would forget those that another one paired.
   *
   * @return nothing where one does already
   */
  static Optional<LockFile> hold(Path settings, String job) throws IOException {
    var file = file(settings, job, ".lock");
    OwnFolder.createPrivate(file.getParent());
    return LockFile.hold(file);
  }

  private static Path file(Path settings, String job, String ending) {
    var name = Sha256.of(job.getBytes(StandardCharsets.UTF_8)).substring(0, 32);
    return settings.resolve(FOLDER).resolve(name + ending);
  }

  private static Devices empty(Path file, String job, SecureRandom random) {
    var key = new byte[KEY];
    random.nextBytes(key);
    return new Devices(file, job, key);
  }

  private static Optional<Devices> read(Path file, String job, JsonNode json) {
    var pictures = bytes(json.path("pictures"));
    if (pictures.isEmpty()) {
      return Optional.empty();
    }
    var devices = new Devices(file, job, pictures.get());
    devices.port = json.path("port").asInt();
    for (var one : json.path("devices")) {
      var id = one.path("id").asText();
      var role = Role.of(one.path("role").asText());
      if (Device.isLegal(id) && role.isPresent()) {
        devices.known.put(
            id,
            new Known(
                id,
                one.path("name").asText(),
                role.get(),
                bytes(one.path("key")),
                Instant.ofEpochMilli(one.path("seen").asLong())));
      }
    }
    return Optional.of(devices);
  }

  private static Optional<byte[]> bytes(JsonNode hex) {
    return hex.asText().matches("[0-9a-f]{" + 2 * KEY + "}")
        ? Optional.of(HexFormat.of().parseHex(hex.asText()))
        : Optional.empty();
  }

  /** A key of the job, of which the tokens of its pictures are made. */
  byte[] pictureKey() {
    return pictures.clone();
  }

  /** The port that the job was served at last; 0 if it never was. */
  synchronized int port() {
    return port;
  }

  synchronized void keepPort(int now) throws IOException {
    if (now != port) {
      port = now;
      write();
    }
  }

  /** A device, whether it is still paired or was once. */
  synchronized Optional<Known> known(String id) {
    return Optional.ofNullable(known.get(id));
  }

  /** Those that are paired, in the order in which they were. */
  synchronized List<Known> paired() {
    return known.values().stream().filter(Known::isPaired).toList();
  }

  /**
   * Keeps a device; it is on the disk when this returns.
   *
   * @throws IOException if it is not certain that it is; then it is not paired
   */
  synchronized void pair(String id, String name, Role role, byte[] key, Instant now)
      throws IOException {
    var before = known.remove(id);
    known.put(id, new Known(id, name, role, Optional.of(key.clone()), now));
    try {
      write();
    } catch (IOException e) {
      known.remove(id);
      if (before != null) {
        known.put(id, before);
      }
      throw e;
    }
  }

  /**
   * Unpairs a device at once, and keeps that.
   *
   * @param seen when it was heard of last
   * @throws IOException if it is not certain that a server which is started again knows of it
   */
  synchronized void unpair(String id, Instant seen) throws IOException {
    var one = known.get(id);
    if (one != null && one.isPaired()) {
      known.remove(id);
      known.put(id, new Known(id, one.name(), one.role(), Optional.empty(), seen));
      write();
    }
  }

  /** Keeps when the devices were seen last. */
  synchronized void keepSeen(List<PairedDevice> now) throws IOException {
    boolean news = false;
    for (var one : now) {
      var before = known.get(one.id());
      if (before != null && before.isPaired() && one.lastSeen().isAfter(before.seen())) {
        known.put(
            one.id(),
            new Known(one.id(), before.name(), before.role(), before.key(), one.lastSeen()));
        news = true;
      }
    }
    if (news) {
      write();
    }
  }

  private void write() throws IOException {
    var gone = new ArrayList<>(known.values().stream().filter(one -> !one.isPaired()).toList());
    while (known.size() > MOST_KEPT && !gone.isEmpty()) {
      known.remove(gone.removeFirst().id());
    }
    var json = JSON.createObjectNode();
    json.put("job", job);
    json.put("port", port);
    json.put("pictures", HexFormat.of().formatHex(pictures));
    var devices = json.putArray("devices");
    for (var one : known.values()) {
      var device = devices.addObject();
      device.put("id", one.id());
      device.put("name", one.name());
      device.put("role", one.role().word());
      one.key().ifPresent(key -> device.put("key", HexFormat.of().formatHex(key)));
      device.put("seen", one.seen().toEpochMilli());
    }
    OwnFolder.createPrivate(file.getParent());
    DurableFiles.replace(file, JSON.writeValueAsBytes(json));
  }
}
