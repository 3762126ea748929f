package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;

/**
 * A small folder for the volumes of any system: a swap, accents, a change of case, a group, a move.
 * The content of each file is its first name.
 *
 * @param root the folder
 */
record AccentedScene(Path root) {
  private static final String[][] RENAMES = {
    {"a.jpg", "b.jpg", ""},
    {"b.jpg", "a.jpg", ""},
    {"Caf\u00e9_1.JPG", "Caf\u00e9_2.JPG", ""},
    {"Umlaut.JPG", "umlaut.jpg", ""},
    {"IMG_1.CR3", "\u00c4rmel_1.CR3", "1"},
    {"IMG_1.xmp", "\u00c4rmel_1.xmp", "1"},
    {"out.jpg", "day 2/\u00fcber.jpg", ""},
  };

  /**
   * Makes the files.
   *
   * @param spelled a name as the volume spells it
   */
  static AccentedScene make(Path root, UnaryOperator<String> spelled) throws IOException {
    Files.createDirectories(root.resolve("day 2"));
    for (var rename : RENAMES) {
      Files.writeString(root.resolve(spelled.apply(rename[0])), rename[0]);
    }
    return new AccentedScene(root);
  }

  List<RenameRequest> requests() {
    var requests = new ArrayList<RenameRequest>();
    for (var rename : RENAMES) {
      requests.add(new RenameRequest(Path.of(rename[0]), Path.of(rename[1]), rename[2]));
    }
    return requests;
  }

  static Map<String, String> before() {
    return named(0);
  }

  static Map<String, String> after() {
    return named(1);
  }

  private static Map<String, String> named(int column) {
    var names = new TreeMap<String, String>();
    for (var rename : RENAMES) {
      names.put(rename[0], Path.of(rename[column]).toString());
    }
    return names;
  }

  /** Content to composed name, without our own files. */
  Map<String, String> now() throws IOException {
    var files = new TreeMap<String, String>();
    try (var paths = Files.walk(root)) {
      for (var path : paths.toList()) {
        var name = root.relativize(path).toString();
        if (Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS)
            && !name.startsWith(Folders.OURS)) {
          var composed = Normalizer.normalize(name, Normalizer.Form.NFC);
          if (files.put(Files.readString(path), composed) != null) {
            throw new AssertionError("two files with the content of " + name);
          }
        }
      }
    }
    return files;
  }
}
