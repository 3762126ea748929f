package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * A small folder and the renames that are hardest to interrupt: a swap, a cycle of three, a chain,
 * changes of case, groups with a sidecar, a move into another folder and plain renames. The content
 * of each file is its first name, so that a loss or a mix-up shows.
 */
final class Scene {
  private static final String[][] RENAMES = {
    {"swap1.jpg", "swap2.jpg", ""},
    {"swap2.jpg", "swap1.jpg", ""},
    {"cycle1.jpg", "cycle2.jpg", ""},
    {"cycle2.jpg", "cycle3.jpg", ""},
    {"cycle3.jpg", "cycle1.jpg", ""},
    {"chain1.jpg", "chain2.jpg", ""},
    {"chain2.jpg", "chain3.jpg", ""},
    {"case.jpg", "CASE.jpg", ""},
    {"Umlaut.JPG", "umlaut.jpg", ""},
    {"IMG_0001.raw", "A_F_0001.raw", "1"},
    {"IMG_0001.jpg", "A_F_0001.jpg", "1"},
    {"IMG_0001.xmp", "A_F_0001.xmp", "1"},
    {"plain.jpg", "A_B_0002.jpg", ""},
    {"out.jpg", "day 2/in.jpg", ""},
    {"day 2/back.jpg", "out.jpg", ""},
  };

  private final Path root;

  private Scene(Path root) {
    this.root = root;
  }

  /** Makes the files in an empty folder. */
  static Scene make(Path root) throws IOException {
    Files.createDirectories(root.resolve("day 2"));
    for (var rename : RENAMES) {
      Files.writeString(root.resolve(rename[0]), rename[0]);
    }
    Files.writeString(root.resolve("bystander.jpg"), "bystander.jpg");
    return new Scene(root);
  }

  static Scene at(Path root) {
    return new Scene(root);
  }

  Path root() {
    return root;
  }

  List<RenameRequest> requests() {
    var requests = new ArrayList<RenameRequest>();
    for (var rename : RENAMES) {
      requests.add(new RenameRequest(Path.of(rename[0]), Path.of(rename[1]), rename[2]));
    }
    return requests;
  }

  /** Path to content, as it was. */
  Map<String, String> before() {
    var files = new TreeMap<String, String>();
    for (var rename : RENAMES) {
      files.put(rename[0], rename[0]);
    }
    files.put("bystander.jpg", "bystander.jpg");
    return files;
  }

  /** Path to content, as it shall be. */
  Map<String, String> after() {
    var files = new TreeMap<String, String>();
    for (var rename : RENAMES) {
      files.put(rename[1], rename[0]);
    }
    files.put("bystander.jpg", "bystander.jpg");
    return files;
  }

  /** Path to content, as it is; without this program's own files. */
  Map<String, String> now() throws IOException {
    var files = new TreeMap<String, String>();
    try (var all = Files.walk(root)) {
      for (var file : all.filter(path -> Files.isRegularFile(path)).toList()) {
        var path = root.relativize(file);
        if (!path.startsWith(Folders.OURS)) {
          files.put(path.toString(), Files.readString(file));
        }
      }
    }
    return files;
  }
}
