package org.framewright.world;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What lies in folders, by what is in the files; a file that did not change is not read again. */
final class Contents {
  private record Known(Object key, long size, long modified, String sha256) {}

  private final Map<Path, Known> known = new HashMap<>();

  /** The SHA-256 of every file below a folder, by its path there, hidden ones left out. */
  Map<String, String> of(Path folder) throws IOException {
    var found = new TreeMap<String, String>();
    if (!Files.exists(folder)) {
      return found;
    }
    Files.walkFileTree(
        folder,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path at, BasicFileAttributes attributes) {
            return !at.equals(folder) && at.getFileName().toString().startsWith(".")
                ? FileVisitResult.SKIP_SUBTREE
                : FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            if (!file.getFileName().toString().startsWith(".")) {
              found.put(folder.relativize(file).toString(), sha256(file, attributes));
            }
            return FileVisitResult.CONTINUE;
          }
        });
    return found;
  }

  private String sha256(Path file, BasicFileAttributes attributes) throws IOException {
    var was = known.get(file);
    if (was != null
        && was.size == attributes.size()
        && was.modified == attributes.lastModifiedTime().toMillis()
        && was.key.equals(attributes.fileKey())) {
      return was.sha256;
    }
    var sha256 = sha256(Files.readAllBytes(file));
    known.put(
        file,
        new Known(
            attributes.fileKey(),
            attributes.size(),
            attributes.lastModifiedTime().toMillis(),
            sha256));
    return sha256;
  }

  /** Reads all files again. */
  void forget() {
    known.clear();
  }

  static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Copies a folder with the times of its files. */
  static void copy(Path from, Path to) throws IOException {
    Files.createDirectories(to);
    for (var path : all(from)) {
      var copy = to.resolve(from.relativize(path).toString());
      if (!Files.isDirectory(path)) {
        Files.copy(path, copy, StandardCopyOption.COPY_ATTRIBUTES);
      } else if (!Files.exists(copy)) {
        Files.createDirectory(copy);
      }
    }
  }

  /** A folder and all below it, each folder before what is in it. */
  static List<Path> all(Path folder) throws IOException {
    try (var paths = Files.walk(folder)) {
      return new ArrayList<>(paths.sorted().toList());
    }
  }

  static void delete(Path folder) throws IOException {
    if (Files.exists(folder)) {
      for (var path : all(folder).reversed()) {
        Files.delete(path);
      }
    }
  }

  /**
   * Makes a folder what a power cut left of it. A file that is there under another name is moved,
   * so that it stays the file that it is.
   */
  static void become(Path folder, Path left) throws IOException {
    var wanted = new TreeMap<String, byte[]>();
    for (var path : all(left)) {
      var name = left.relativize(path).toString();
      if (Files.isDirectory(path)) {
        Files.createDirectories(folder.resolve(name));
      } else {
        wanted.put(name, Files.readAllBytes(path));
      }
    }
    var homeless = new HashMap<String, List<Path>>();
    for (var path : all(folder).reversed()) {
      var name = folder.relativize(path).toString();
      if (Files.isDirectory(path)) {
        if (!Files.exists(left.resolve(name))) {
          // What was in it is moved or removed below.
          homeless.computeIfAbsent("", _ -> new ArrayList<>()).add(path);
        }
      } else if (!wanted.containsKey(name)) {
        homeless
            .computeIfAbsent(sha256(Files.readAllBytes(path)), _ -> new ArrayList<>())
            .add(path);
      }
    }
    for (var file : wanted.entrySet()) {
      var path = folder.resolve(file.getKey());
      if (!Files.exists(path)) {
        var same = homeless.get(sha256(file.getValue()));
        if (same != null && !same.isEmpty()) {
          var near =
              same.stream()
                  .filter(one -> one.getParent().equals(path.getParent()))
                  .findFirst()
                  .orElse(same.getFirst());
          same.remove(near);
          Files.move(near, path);
        } else {
          Files.write(path, file.getValue());
        }
      } else if (!Arrays.equals(Files.readAllBytes(path), file.getValue())) {
        Files.write(path, file.getValue());
      }
    }
    var folders = homeless.getOrDefault("", List.of());
    homeless.remove("");
    for (var paths : homeless.values()) {
      for (var path : paths) {
        Files.delete(path);
      }
    }
    for (var path : folders) {
      Files.delete(path);
    }
  }
}
