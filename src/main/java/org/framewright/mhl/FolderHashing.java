package org.framewright.mhl;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SequencedMap;
import java.util.TreeMap;

/**
 * The hashes of folders, of one kind: of what they hold, and of what they hold under which names.
 * Each is the hash of sorted parts: of the hashes of files and the content hashes of folders; and
 * of the hashes of a name with the hash of that file, or the structure hash of that folder.
 */
final class FolderHashing {
  /** The name of the top among the folders. */
  static final String TOP = "";

  private final HashKind kind;
  private final Map<String, byte[]> files = new TreeMap<>();
  private final Map<String, List<String>> inside = new TreeMap<>();

  FolderHashing(HashKind kind) {
    this.kind = kind;
    inside.put(TOP, new ArrayList<>());
  }

  /** The hashes of one folder. */
  static final class Both {
    private final byte[] content;
    private final byte[] structure;

    private Both(byte[] content, byte[] structure) {
      this.content = content;
      this.structure = structure;
    }

    byte[] content() {
      return content.clone();
    }

    byte[] structure() {
      return structure.clone();
    }
  }

  void file(String path, byte[] hash) {
    files.put(path, hash);
    folder(parent(path)).add(path);
  }

  /** A folder, which may be empty. */
  List<String> folder(String path) {
    var known = inside.get(path);
    if (known == null) {
      known = new ArrayList<>();
      inside.put(path, known);
      folder(parent(path)).add(path);
    }
    return known;
  }

  private static String parent(String path) {
    int slash = path.lastIndexOf('/');
    return slash < 0 ? TOP : path.substring(0, slash);
  }

  /** Of each folder, what is further in first, the top last. */
  SequencedMap<String, Both> hashes() {
    var done = new LinkedHashMap<String, Both>();
    var deepestFirst = new ArrayList<>(inside.keySet());
    deepestFirst.sort(
        (one, other) -> {
          int deeper = Integer.compare(depth(other), depth(one));
          return deeper == 0 ? one.compareTo(other) : deeper;
        });
    for (var folder : deepestFirst) {
      var content = new ArrayList<byte[]>();
      var structure = new ArrayList<byte[]>();
      for (var path : inside.get(folder)) {
        var both = done.get(path);
        var hash = files.get(path);
        content.add(both == null ? hash : both.content());
        var name = path.substring(path.lastIndexOf('/') + 1).getBytes(StandardCharsets.UTF_8);
        structure.add(of(List.of(name, both == null ? hash : both.structure())));
      }
      content.sort(Arrays::compareUnsigned);
      structure.sort(Arrays::compareUnsigned);
      done.put(folder, new Both(of(content), of(structure)));
    }
    return done;
  }

  private static int depth(String path) {
    return path.equals(TOP) ? 0 : 1 + (int) path.chars().filter(one -> one == '/').count();
  }

  private byte[] of(List<byte[]> parts) {
    var hash = kind.begin();
    parts.forEach(part -> hash.update(ByteBuffer.wrap(part)));
    return hash.value();
  }
}
