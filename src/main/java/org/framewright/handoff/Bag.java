package org.framewright.handoff;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.SequencedMap;
import java.util.TreeMap;

/**
 * A package in the making: a bag as RFC 8493 describes it. Payload lies below {@code data/};
 * everything else describes it and is covered by the tag manifest. {@code SHA256SUMS} says the same
 * for people who have {@code sha256sum} and no bag tool.
 */
final class Bag {
  private static final String DECLARATION =
      "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n";

  private final Path folder;
  private final TreeMap<String, String> payload = new TreeMap<>();
  private final TreeMap<String, String> tags = new TreeMap<>();
  private long octets;

  Bag(Path folder) throws IOException {
    this.folder = folder;
    Files.createDirectories(folder.resolve("data"));
  }

  /**
   * Copies a file into the payload and reads the copy again.
   *
   * @return the checksum, or nothing where the copy is not what was read
   */
  boolean add(Path file, String name) throws IOException {
    var copy = folder.resolve("data").resolve(name);
    var checksum = Checksum.copy(file, copy);
    if (!Checksum.of(copy).equals(checksum)) {
      return false;
    }
    octets += Files.size(copy);
    payload.put("data/" + name, checksum);
    return true;
  }

  /** The checksum of a payload file by its name below {@code data/}. */
  String checksum(String name) {
    return payload.get("data/" + name);
  }

  long octets() {
    return octets;
  }

  /** Writes a file that describes the payload. */
  void tag(String name, String text) throws IOException {
    var bytes = text.getBytes(StandardCharsets.UTF_8);
    write(folder.resolve(name), bytes);
    tags.put(name, Checksum.of(bytes));
  }

  /** Writes the bag's own files; nothing may be added afterwards. */
  void close(SequencedMap<String, String> info) throws IOException {
    tag("bagit.txt", DECLARATION);
    var about = new StringBuilder();
    info.forEach((label, value) -> about.append(label).append(": ").append(value).append('\n'));
    about.append("Payload-Oxum: ").append(octets).append('.').append(payload.size()).append('\n');
    tag("bag-info.txt", about.toString());
    var manifest = new StringBuilder();
    payload.forEach((name, checksum) -> manifest.append(Checksum.bagLine(checksum, name)));
    tag("manifest-sha256.txt", manifest.toString());
    var sums = new StringBuilder();
    payload.forEach((name, checksum) -> sums.append(Checksum.sumLine(checksum, name)));
    tag("SHA256SUMS", sums.toString());
    var tagManifest = new StringBuilder();
    tags.forEach((name, checksum) -> tagManifest.append(Checksum.bagLine(checksum, name)));
    write(
        folder.resolve("tagmanifest-sha256.txt"),
        tagManifest.toString().getBytes(StandardCharsets.UTF_8));
  }

  private static void write(Path file, byte[] bytes) throws IOException {
    try (var out =
        FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      var rest = ByteBuffer.wrap(bytes);
      while (rest.hasRemaining()) {
        out.write(rest);
      }
      out.force(true);
    }
  }
}
