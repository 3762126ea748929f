package org.framewright.job;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SequencedMap;
import org.framewright.base.NameKey;
import org.framewright.base.Text;
import org.framewright.naming.Built;
import org.framewright.naming.Convention;

/** The folders that a convention gives a job, by what each is for. */
final class RoleFolders {
  private RoleFolders() {}

  /**
   * The folders of all roles, absolute, in the convention's order.
   *
   * @param root the job folder, absolute and without dots
   * @throws JobException if one has no name, or lies outside of the job or among the program's own
   *     files
   */
  static SequencedMap<String, Path> of(Path root, Convention convention, Map<String, String> values)
      throws JobException {
    var folders = new LinkedHashMap<String, Path>();
    for (var role : convention.folders().keySet()) {
      folders.put(role, inside(root, role, convention, values));
    }
    return Collections.unmodifiableSequencedMap(folders);
  }

  private static Path inside(
      Path root, String role, Convention convention, Map<String, String> values)
      throws JobException {
    return switch (convention.buildFolder(role, values)) {
      case Built.Name name -> inside(root, role, name.text());
      case Built.Refused refused ->
          throw new JobException(
              Text.of(
                  "the folder for {0} has no name: {1}",
                  role, refused.findings().getFirst().said()),
              root.toString(),
              refused.findings().getFirst().fix().orElse(Text.of("Fix the convention.")));
    };
  }

  private static Path inside(Path root, String role, String name) throws JobException {
    try {
      var path = root.resolve(name).normalize();
      if (path.startsWith(root) && !isOwn(root.relativize(path))) {
        return path;
      }
    } catch (InvalidPathException e) {
      // Said below: no folder can have this name.
    }
    throw new JobException(
        Text.of("the folder for {0} lies outside of the job: {1}", role, name),
        root.toString(),
        Text.of("Fix folders.{0} in the convention.", role));
  }

  private static boolean isOwn(Path path) {
    return NameKey.of(path.getName(0).toString()).equals(NameKey.of(JobLayout.OWN));
  }
}
