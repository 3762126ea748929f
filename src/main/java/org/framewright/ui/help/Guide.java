package org.framewright.ui.help;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The guide, read from its folder.
 *
 * @param folder where its pages lie; pictures are found from there
 * @param pages in the order in which the index names them, the index first
 */
public record Guide(Path folder, List<GuidePage> pages) {
  /** The page that leads to all others. */
  static final String INDEX = "index";

  private static final String ENDING = ".md";

  public Guide {
    pages = List.copyOf(pages);
  }

  /** Reads every page; a folder that is not there has none. */
  public static Guide read(Path folder) throws IOException {
    var index = folder.resolve(INDEX + ENDING);
    if (!Files.exists(index)) {
      return new Guide(folder, List.of());
    }
    var pages = new ArrayList<GuidePage>();
    pages.add(page(index));
    for (var link : pages.getFirst().links()) {
      var file = folder.resolve(name(link) + ENDING);
      if (Files.exists(file)) {
        pages.add(page(file));
      }
    }
    return new Guide(folder, pages);
  }

  private static GuidePage page(Path file) throws IOException {
    return GuidePage.of(name(String.valueOf(file.getFileName())), Files.readString(file));
  }

  /** The page that a link leads to: {@code copies.md#decide} to {@code copies}. */
  static String name(String link) {
    var file = link.contains("#") ? link.substring(0, link.indexOf('#')) : link;
    return file.endsWith(ENDING) ? file.substring(0, file.length() - ENDING.length()) : file;
  }

  /** The heading that a link leads to; empty for the top of the page. */
  static String anchor(String link) {
    return link.contains("#") ? link.substring(link.indexOf('#') + 1) : "";
  }

  /** The page of that name. */
  Optional<GuidePage> page(String name) {
    return pages.stream().filter(page -> page.name().equals(name)).findFirst();
  }

  /** The page that helps with a page or a question of the app; else the index. */
  Optional<GuidePage> about(String topic) {
    return pages.stream()
        .filter(page -> page.topics().contains(topic))
        .findFirst()
        .or(() -> page(INDEX));
  }
}
