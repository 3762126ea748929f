package org.framewright.handoff;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SequencedMap;
import java.util.TreeMap;
import org.framewright.base.DurableFiles;
import org.framewright.base.Sha256;

/**
 * A package in the making: a bag as RFC 8493 describes it. Payload lies below {@code data/};
 * everything else describes it and is covered by the tag manifest. {@code SHA256SUMS} says the same
 * for people who have {@code sha256sum} and no bag tool.
 */
final class Bag {
  private static final String DECLARATION =
      "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n";

  private static final int PIECE = 1 << 16;

  private static final String TAG_MANIFEST = "tagmanifest-sha256.txt";

  private final Path folder;
  private final TreeMap<String, String> payload = new TreeMap<>();
  private final TreeMap<String, String> tags = new TreeMap<>();
  private final Map<String, HandOffRecord.Copy> copies = new HashMap<>();
  private long octets;

  /** Begins a package in a folder that must not exist yet. */
  Bag(Path folder) throws IOException {
    this.folder = folder;
    Files.createDirectory(folder);
    Files.createDirectory(data(folder));
  }

  /**
   * Copies a file into the payload and reads the copy again.
   *
   * @return whether the copy is what was read
   */
  boolean add(Path file, String name) throws IOException {
    return taken(name, Checksum.copy(file, data(name)), Optional.empty());
  }

  /**
   * Writes a file into the payload and reads it again.
   *
   * @return whether it is what was written
   */
  boolean addNew(String name, byte[] bytes) throws IOException {
    DurableFiles.writeFlushed(data(name), bytes);
    return taken(name, Sha256.of(bytes), Optional.empty());
  }

  /**
   * Writes other bytes in the place of a file that was added, and reads them again. Its time stays.
   *
   * @return whether it is what was written
   */
  boolean rewrite(String name, byte[] bytes) throws IOException {
    DurableFiles.writeFlushed(rewritten(), bytes);
    return replaced(name) && copies.get(name).sha256().equals(Sha256.of(bytes));
  }

  /** Where another file for the place of one that was added is made; nothing lies there. */
  Path rewritten() {
    return folder.resolve("rewritten.part");
  }

  /**
   * Gives {@link #rewritten} the place of a file that was added. Its time stays.
   *
   * @return whether it is there as it was made
   */
  boolean replaced(String name) throws IOException {
    var made = Checksum.of(rewritten());
    Files.setLastModifiedTime(rewritten(), Files.getLastModifiedTime(data(name)));
    // A kill between the two leaves a draft, which is removed.
    Files.delete(data(name));
    Files.move(rewritten(), data(name));
    var before = copies.get(name);
    octets -= before.bytes().orElse(0);
    return taken(name, made, Optional.of(before.original().orElse(before.sha256())));
  }

  /**
   * Takes a file that lies on the same volume into the payload, as the copy of another one. If it
   * is not, it is removed.
   *
   * @return whether it is the copy
   */
  boolean takeOver(Path leftover, Path file, String name) throws IOException {
    var checksum = Checksum.of(file);
    Files.move(leftover, data(name));
    if (isWhole(name, file, checksum)) {
      return true;
    }
    Files.delete(data(name));
    return false;
  }

  /** A leftover that cannot be read is none; whoever wrote it may not have flushed it. */
  private boolean isWhole(String name, Path file, String checksum) {
    try {
      DurableFiles.syncFile(data(name));
      Files.setLastModifiedTime(
          data(name), Files.getLastModifiedTime(file, LinkOption.NOFOLLOW_LINKS));
      return taken(name, checksum, Optional.empty());
    } catch (IOException e) {
      return false;
    }
  }

  private boolean taken(String name, String checksum, Optional<String> original)
      throws IOException {
    if (!Checksum.of(data(name)).equals(checksum)) {
      return false;
    }
    long size = Files.size(data(name));
    octets += size;
    payload.put("data/" + name, checksum);
    copies.put(name, new HandOffRecord.Copy(name, checksum, OptionalLong.of(size), original));
    return true;
  }

  /** Where a file of the payload lies. */
  Path data(String name) {
    return data(folder).resolve(name);
  }

  /** Where the payload of a package lies. */
  static Path data(Path folder) {
    return folder.resolve("data");
  }

  /** A file that was added, by its name below {@code data/}. */
  HandOffRecord.Copy copy(String name) {
    return copies.get(name);
  }

  long octets() {
    return octets;
  }

  /** Writes a file that describes the payload. */
  void tag(String name, String text) throws IOException {
    var bytes = text.getBytes(StandardCharsets.UTF_8);
    DurableFiles.writeFlushed(folder.resolve(name), bytes);
    tags.put(name, Sha256.of(bytes));
  }

  /**
   * Writes a file that describes the payload piece by piece, and reads it again.
   *
   * @return whether it is what was written
   */
  boolean tag(String name, DurableFiles.Content content) throws IOException {
    var file = folder.resolve(name);
    var digest = Sha256.digest();
    DurableFiles.writeFlushed(
        file,
        out -> {
          var listed = new BufferedOutputStream(new DigestOutputStream(out, digest), PIECE);
          content.writeTo(listed);
          listed.flush();
        });
    var checksum = Sha256.hex(digest);
    tags.put(name, checksum);
    return Checksum.of(file).equals(checksum);
  }

  /**
   * Writes the bag's own files and flushes all names; nothing may be added afterwards.
   *
   * @return the SHA-256 of the tag manifest, which covers all else
   */
  String close(SequencedMap<String, String> info) throws IOException {
    tag("bagit.txt", DECLARATION);
    var about = new StringBuilder();
    info.forEach((label, value) -> about.append(label).append(": ").append(value).append('\n'));
    about.append("Payload-Oxum: ").append(octets).append('.').append(payload.size()).append('\n');
    tag("bag-info.txt", about.toString());
    var manifest = new StringBuilder();
    payload.forEach((name, checksum) -> manifest.append(Checksum.bagLine(checksum, name)));
    tag("manifest-sha256.txt", manifest.toString());
    var sums = new StringBuilder();
    payload.forEach((name, checksum) -> sums.append(Sha256.sumLine(checksum, name)));
    tag("SHA256SUMS", sums.toString());
    var tagManifest = new StringBuilder();
    tags.forEach((name, checksum) -> tagManifest.append(Checksum.bagLine(checksum, name)));
    var last = tagManifest.toString().getBytes(StandardCharsets.UTF_8);
    DurableFiles.writeFlushed(folder.resolve(TAG_MANIFEST), last);
    DurableFiles.syncFolder(data(folder));
    DurableFiles.syncFolder(folder);
    return Sha256.of(last);
  }

  /** Whether a folder is the package with this tag manifest, by its SHA-256. */
  static boolean isAt(Path folder, String tagManifest) throws IOException {
    var file = folder.resolve(TAG_MANIFEST);
    return Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)
        && Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
        && Checksum.of(file).equals(tagManifest);
  }
}
