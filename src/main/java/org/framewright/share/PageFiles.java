package org.framewright.share;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.Sha256;

/**
 * The files of the page, which lie beside this class: a fixed list, read once, so that no path of a
 * request ever becomes one of a disk.
 */
final class PageFiles {
  private static final String FIRST = "index.html";

  /** What the first file says that it is, by which the program in the browser goes. */
  private static final String OF_A_JOB = "data-page=\"job\"";

  private static final String OF_ALL_SETS = "data-page=\"sets\"";

  /** All of them; a test compares it with the folder. */
  static final List<String> NAMES =
      List.of(
          FIRST,
          "app.js",
          "assistant.js",
          "client.js",
          "comments.js",
          "connection.js",
          "details.js",
          "dom.js",
          "head.js",
          "icon.svg",
          "live.js",
          "marks.js",
          "model.js",
          "more.js",
          "pairing.js",
          "pictures.js",
          "questions.js",
          "queue.js",
          "scan.js",
          "session.js",
          "sets-model.js",
          "sets.js",
          "sha256.js",
          "signing.js",
          "store.js",
          "style.css",
          "tabs.js",
          "texts-de.json",
          "texts-en.json",
          "texts-fr.json",
          "texts.js",
          "viewer.js");

  /**
   * A file as it is sent.
   *
   * @param tag an entity tag with its quotation marks (RFC 9110, section 8.8.3)
   */
  @SuppressWarnings("ArrayRecordComponent") // Never compared, and nobody changes it.
  record PageFile(byte[] bytes, String type, String tag) {}

  private final Map<String, PageFile> files;

  private PageFiles(Map<String, PageFile> files) {
    this.files = Map.copyOf(files);
  }

  /** The page of a job. */
  static PageFiles ofAJob() throws IOException {
    return read(OF_A_JOB);
  }

  /** The page of all sets of a studio. */
  static PageFiles ofAllSets() throws IOException {
    return read(OF_ALL_SETS);
  }

  private static PageFiles read(String page) throws IOException {
    var files = new HashMap<String, PageFile>();
    for (var name : NAMES) {
      try (var in = PageFiles.class.getResourceAsStream(name)) {
        if (in != null) {
          boolean isFirst = name.equals(FIRST);
          var bytes = isFirst ? as(page, in.readAllBytes()) : in.readAllBytes();
          var tag = '"' + Sha256.of(bytes).substring(0, 32) + '"';
          files.put(isFirst ? "/" : "/" + name, new PageFile(bytes, type(name), tag));
        }
      }
    }
    return new PageFiles(files);
  }

  private static byte[] as(String page, byte[] first) {
    return new String(first, StandardCharsets.UTF_8)
        .replace(OF_A_JOB, page)
        .getBytes(StandardCharsets.UTF_8);
  }

  /** The file of this path, letter by letter. */
  Optional<PageFile> at(String path) {
    return Optional.ofNullable(files.get(path));
  }

  private static String type(String name) {
    return switch (name.substring(name.lastIndexOf('.') + 1)) {
      case "html" -> "text/html; charset=utf-8";
      case "js" -> "text/javascript; charset=utf-8";
      case "css" -> "text/css; charset=utf-8";
      case "svg" -> "image/svg+xml";
      case "json" -> "application/json";
      default -> throw new IllegalArgumentException(name);
    };
  }
}
