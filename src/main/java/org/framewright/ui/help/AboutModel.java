package org.framewright.ui.help;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.framewright.base.Program;

/**
 * What the program is, and what it is made of.
 *
 * @param version of the program
 * @param java that it runs on
 * @param toolkit the version of JavaFX
 * @param lines the program itself first
 */
public record AboutModel(String version, String java, String toolkit, List<Line> lines) {
  private static final String OURS = "LICENSE";

  /**
   * A line of the list.
   *
   * @param version may be empty
   * @param does what it does; empty for the program itself
   * @param text the licence, and what is to be said beside it
   */
  record Line(String name, String version, String does, String licence, String text) {}

  public AboutModel {
    lines = List.copyOf(lines);
  }

  /**
   * Reads it.
   *
   * @param licences the folder of licences
   * @param home the folder with the program's own licence
   * @param name what the program is called
   */
  public static AboutModel read(Path licences, Path home, String name) throws IOException {
    var ours = home.resolve(OURS);
    var jars = Jars.running();
    var credits = Credits.read(licences, ours);
    var lines = new ArrayList<Line>();
    lines.add(new Line(name, Program.VERSION, "", Credits.OURS, Files.readString(ours)));
    for (var part : credits.parts()) {
      var versions =
          part.files().stream().flatMap(file -> jars.version(file).stream()).distinct().toList();
      var notices = jars.notices(part.files());
      lines.add(
          new Line(
              part.name(),
              String.join(", ", versions),
              part.does(),
              part.licence(),
              notices.isEmpty() ? part.text() : part.text() + "\n\n\nNOTICE\n\n" + notices));
    }
    return new AboutModel(
        Program.VERSION,
        System.getProperty("java.version") + " (" + System.getProperty("java.vendor") + ")",
        System.getProperty("javafx.version", ""),
        lines);
  }
}
