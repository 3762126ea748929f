package org.framewright.naming;

import java.util.ArrayList;
import java.util.List;
import org.framewright.base.Text;

/**
 * Names that a studio uses now, as a person gives them: one a line, empty lines between them. What
 * is longer than any file's name, and what comes after very many, is left out and told.
 *
 * @param names those that are looked at
 * @param tooLong how many lines are longer than {@value #LONGEST} characters, their folders
 *     included
 * @param tooMany how many lines come after the first {@value #MOST} names
 */
public record ExampleNames(List<String> names, int tooLong, int tooMany) {
  /** Names that are read back; far fewer show how they are made. */
  public static final int MOST = 10_000;

  /** Characters of a path, where a name is given with its folders. */
  public static final int LONGEST = 1024;

  public ExampleNames {
    names = List.copyOf(names);
  }

  /** The lines of a text. */
  public static ExampleNames of(String text) {
    return of(text.lines().toList());
  }

  /** Lines, each a name. */
  public static ExampleNames of(List<String> lines) {
    var names = new ArrayList<String>();
    int tooLong = 0;
    int tooMany = 0;
    for (var line : lines) {
      if (line.isBlank()) {
        continue;
      }
      if (line.length() > LONGEST) {
        tooLong++;
      } else if (names.size() == MOST) {
        tooMany++;
      } else {
        names.add(line.strip());
      }
    }
    return new ExampleNames(names, tooLong, tooMany);
  }

  /** What was left out, in words. */
  public List<Text> remarks() {
    var remarks = new ArrayList<Text>();
    if (tooLong > 0) {
      remarks.add(
          Text.counted(
              "{0} line is longer than any file’s name and left out",
              "{0} lines are longer than any file’s name and left out", tooLong));
    }
    if (tooMany > 0) {
      remarks.add(
          Text.of("only the first {0} names are looked at; {1} are left out", MOST, tooMany));
    }
    return List.copyOf(remarks);
  }
}
