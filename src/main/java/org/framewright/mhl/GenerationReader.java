package org.framewright.mhl;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.framewright.base.FileProblemException;

/** Reads one list. */
final class GenerationReader {
  static final String NAMESPACE = "urn:ASC:MHL:v2.0";
  static final String VERSION = "2.0";
  private static final int MOST_ENTRIES = 2_000_000;
  private static final int MOST_REFERENCES = 10_000;
  private static final int MOST_PATTERNS = 1_000;

  private final Elements xml;
  private String process = "";
  private final List<String> ignored = new ArrayList<>();
  private Optional<Generation.FolderHashes> root = Optional.empty();
  private final List<Generation.FileEntry> files = new ArrayList<>();
  private final List<Generation.FolderEntry> folders = new ArrayList<>();
  private final List<Generation.Reference> references = new ArrayList<>();
  private final Set<String> paths = new HashSet<>();

  private GenerationReader(Elements xml) {
    this.xml = xml;
  }

  /**
   * Reads a list.
   *
   * @param file what to call it before a person
   */
  static Generation read(byte[] document, String file) throws FileProblemException {
    return new GenerationReader(new Elements(document, file, NAMESPACE, "hashlist")).hashlist();
  }

  private Generation hashlist() throws FileProblemException {
    if (xml.attribute("version").filter(VERSION::equals).isEmpty()) {
      throw xml.wrong("it is no list of the version " + VERSION);
    }
    // The standard's text and its schema differ in the order, so any is read.
    for (var element = xml.next(); element.isPresent(); element = xml.next()) {
      switch (element.get()) {
        case "processinfo" -> processInfo();
        case "hashes" -> hashes();
        case "references" -> references();
        default -> xml.skip();
      }
    }
    return new Generation(process, ignored, root, files, folders, references);
  }

  private void processInfo() throws FileProblemException {
    for (var element = xml.next(); element.isPresent(); element = xml.next()) {
      switch (element.get()) {
        case "process" -> process = xml.text().strip();
        case "roothash" -> root = Optional.of(rootHashes());
        case "ignore" -> ignore();
        default -> xml.skip();
      }
    }
  }

  private void ignore() throws FileProblemException {
    for (var element = xml.next(); element.isPresent(); element = xml.next()) {
      if (!element.get().equals("pattern")) {
        xml.skip();
        continue;
      }
      ignored.add(xml.text().strip());
      if (ignored.size() > MOST_PATTERNS) {
        throw xml.wrong("it leaves out more than " + MOST_PATTERNS + " patterns");
      }
    }
  }

  private Generation.FolderHashes rootHashes() throws FileProblemException {
    Map<HashKind, String> content = Map.of();
    Map<HashKind, String> structure = Map.of();
    for (var element = xml.next(); element.isPresent(); element = xml.next()) {
      switch (element.get()) {
        case "content" -> content = plainHashes();
        case "structure" -> structure = plainHashes();
        default -> xml.skip();
      }
    }
    return new Generation.FolderHashes(content, structure);
  }

  private void hashes() throws FileProblemException {
    for (var element = xml.next(); element.isPresent(); element = xml.next()) {
      switch (element.get()) {
        case "hash" -> files.add(file());
        case "directoryhash" -> folders.add(folder());
        default -> xml.skip();
      }
      if (files.size() + folders.size() > MOST_ENTRIES) {
        throw xml.wrong("it has more than " + MOST_ENTRIES + " entries");
      }
    }
  }

  private Generation.FileEntry file() throws FileProblemException {
    var path = "";
    var size = OptionalLong.empty();
    Optional<String> previous = Optional.empty();
    var hashes = new EnumMap<HashKind, Generation.Hash>(HashKind.class);
    for (var element = xml.next(); element.isPresent(); element = xml.next()) {
      switch (element.get()) {
        case "path" -> {
          size = size();
          path = newPath();
        }
        case "previousPath" -> previous = Optional.of(path());
        default -> {
          var kind = HashKind.of(element.get());
          if (kind.isPresent()) {
            hashes.put(kind.get(), hash(kind.get()));
          } else {
            xml.skip();
          }
        }
      }
    }
    requirePath(path);
    return new Generation.FileEntry(path, size, previous, hashes);
  }

  private OptionalLong size() throws FileProblemException {
    var text = xml.attribute("size");
    if (text.isEmpty()) {
      return OptionalLong.empty();
    }
    try {
      return OptionalLong.of(Long.parseLong(text.get().strip()));
    } catch (NumberFormatException e) {
      throw xml.wrong("a size in it is no number");
    }
  }

  private Generation.FolderEntry folder() throws FileProblemException {
    var path = "";
    Map<HashKind, String> content = Map.of();
    Map<HashKind, String> structure = Map.of();
    for (var element = xml.next(); element.isPresent(); element = xml.next()) {
      switch (element.get()) {
        case "path" -> path = newPath();
        case "content" -> content = plainHashes();
        case "structure" -> structure = plainHashes();
        default -> xml.skip();
      }
    }
    requirePath(path);
    return new Generation.FolderEntry(path, new Generation.FolderHashes(content, structure));
  }

  private void requirePath(String path) throws FileProblemException {
    if (path.isEmpty()) {
      throw xml.wrong("an entry in it has no path");
    }
  }

  private String newPath() throws FileProblemException {
    var path = path();
    if (!paths.add(path)) {
      throw xml.wrong("it names a path twice");
    }
    return path;
  }

  private String path() throws FileProblemException {
    var path = xml.text();
    if (!MhlPath.isSafe(path)) {
      throw xml.wrong("a path in it leads out of the folder that it is about");
    }
    return path;
  }

  private Generation.Hash hash(HashKind kind) throws FileProblemException {
    var said = xml.attribute("action").orElse("original");
    var action =
        switch (said) {
          case "original" -> Generation.Action.ORIGINAL;
          case "verified" -> Generation.Action.VERIFIED;
          case "failed" -> Generation.Action.FAILED;
          default -> throw xml.wrong("a hash in it has an action that the standard has not");
        };
    return new Generation.Hash(value(kind), action);
  }

  private Map<HashKind, String> plainHashes() throws FileProblemException {
    var hashes = new EnumMap<HashKind, String>(HashKind.class);
    for (var element = xml.next(); element.isPresent(); element = xml.next()) {
      var kind = HashKind.of(element.get());
      if (kind.isPresent()) {
        hashes.put(kind.get(), value(kind.get()));
      } else {
        xml.skip();
      }
    }
    return hashes;
  }

  /** A value in the one way to write it. */
  private String value(HashKind kind) throws FileProblemException {
    var bytes = kind.bytes(xml.text().strip());
    if (bytes.isEmpty()) {
      throw xml.wrong("a hash in it is no " + kind.element());
    }
    return kind.text(bytes.get());
  }

  private void references() throws FileProblemException {
    for (var element = xml.next(); element.isPresent(); element = xml.next()) {
      if (!element.get().equals("hashlistreference")) {
        xml.skip();
        continue;
      }
      var path = "";
      var c4 = "";
      for (var part = xml.next(); part.isPresent(); part = xml.next()) {
        switch (part.get()) {
          case "path" -> path = path();
          case "c4" -> c4 = value(HashKind.C4);
          default -> xml.skip();
        }
      }
      requirePath(path);
      references.add(new Generation.Reference(path, c4));
      if (references.size() > MOST_REFERENCES) {
        throw xml.wrong("it has more than " + MOST_REFERENCES + " references");
      }
    }
  }
}
