package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What a package's own manifests say of its files. Read by RFC 8493, sections 2 and 3, as far as
 * SHA-256 goes.
 *
 * @param files how many files were compared
 * @param missing files that a manifest names and that are not there
 * @param different files whose content is not what the manifest says
 * @param unlisted payload files that no manifest names
 */
public record BagCheck(
    int files, List<String> missing, List<String> different, List<String> unlisted) {

  /** Whether all files are there, are what they were, and are all that is there. */
  public boolean clean() {
    return missing.isEmpty() && different.isEmpty() && unlisted.isEmpty();
  }

  /** Whether a folder is a bag with a manifest that this check reads. */
  public static boolean isBag(Path folder) {
    return Files.isRegularFile(folder.resolve("bagit.txt"))
        && Files.isRegularFile(folder.resolve("manifest-sha256.txt"));
  }

  /** Reads every file of a bag again. */
  public static BagCheck of(Path bag) throws IOException {
    var listed = manifest(bag.resolve("manifest-sha256.txt"));
    var tags = bag.resolve("tagmanifest-sha256.txt");
    var payload = new TreeSet<>(listed.keySet());
    if (Files.exists(tags)) {
      listed.putAll(manifest(tags));
    }
    var missing = new ArrayList<String>();
    var different = new ArrayList<String>();
    for (var name : new TreeSet<>(listed.keySet())) {
      var file = bag.resolve(name).normalize();
      if (!file.startsWith(bag.normalize()) || !Files.isRegularFile(file)) {
        missing.add(name);
      } else if (!Checksum.of(file).equals(listed.get(name))) {
        different.add(name);
      }
    }
    var unlisted = new ArrayList<String>();
    if (Files.isDirectory(bag.resolve("data"))) {
      try (var files = Files.walk(bag.resolve("data"))) {
        for (var file : files.filter(Files::isRegularFile).collect(Collectors.toList())) {
          var name = bag.relativize(file).toString().replace('\\', '/');
          if (!payload.contains(name)) {
            unlisted.add(name);
          }
        }
      }
    }
    return new BagCheck(listed.size(), missing, different, unlisted);
  }

  private static Map<String, String> manifest(Path file) throws IOException {
    var checksums = new HashMap<String, String>();
    for (var line : Files.readAllLines(file)) {
      int space = line.indexOf(' ');
      if (space > 0) {
        checksums.put(
            line.substring(space)
                .strip()
                .replace("%0A", "\n")
                .replace("%0D", "\r")
                .replace("%25", "%"),
            line.substring(0, space));
      }
    }
    return checksums;
  }
}
