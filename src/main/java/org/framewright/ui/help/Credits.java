package org.framewright.ui.help;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What the program is made of: itself, and each library and font of others, with its licence. It is
 * read from the list that lies beside the texts of the licences, so there is one list.
 */
record Credits(List<Part> parts) {
  private static final Pattern GROUP = Pattern.compile("\\(([^)]*)\\)");
  private static final Pattern FILE = Pattern.compile("[\\w.-]+\\.txt");

  /** The licence of the program itself, which is that of many libraries, too. */
  static final String OURS = "Apache 2.0";

  private static final String LIST = "README.md";

  /**
   * A library or a font.
   *
   * @param name as people call it
   * @param files the names of its files in {@code lib} as far as their versions
   * @param does what it does here
   * @param licence in a few words
   * @param text the whole licence
   */
  record Part(String name, List<String> files, String does, String licence, String text) {
    Part {
      files = List.copyOf(files);
    }
  }

  Credits {
    parts = List.copyOf(parts);
  }

  /**
   * Reads them.
   *
   * @param folder with the list and the texts
   * @param ours the licence of the program itself
   */
  static Credits read(Path folder, Path ours) throws IOException {
    var parts = new ArrayList<Part>();
    for (var block : Markdown.blocks(Files.readString(folder.resolve(LIST)))) {
      if (block instanceof Block.Table(_, var rows)) {
        for (var row : rows) {
          parts.add(part(row, folder, ours));
        }
      }
    }
    return new Credits(parts);
  }

  private static Part part(List<List<Run>> row, Path folder, Path ours) throws IOException {
    var names = Run.plain(row.get(0));
    var group = GROUP.matcher(names);
    var files =
        Stream.of(GROUP.matcher(names).replaceAll("").split(",", -1))
            .map(String::strip)
            .filter(name -> !name.isEmpty())
            .toList();
    var licence = Run.plain(row.get(2));
    return new Part(
        group.find() ? group.group(1) : files.getFirst(),
        files,
        Run.plain(row.get(1)),
        licence.contains(":") ? licence.substring(0, licence.indexOf(':')) : licence,
        text(licence, folder, ours));
  }

  private static String text(String licence, Path folder, Path ours) throws IOException {
    var texts = new ArrayList<String>();
    for (var name : FILE.matcher(licence).results().map(found -> found.group()).toList()) {
      texts.add(Files.readString(folder.resolve(name)).stripTrailing());
    }
    if (texts.isEmpty() && licence.startsWith(OURS)) {
      texts.add(Files.readString(ours).stripTrailing());
    }
    return String.join("\n\n\n", texts);
  }
}
