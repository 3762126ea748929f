package org.framewright.studio;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.function.ToIntFunction;
import java.util.regex.Pattern;
import org.framewright.base.Text;

/**
 * The programs of a PostgreSQL that is installed on this computer.
 *
 * @param folder with {@code initdb} and {@code pg_ctl}
 * @param version its major version, such as 15
 */
record ServerPrograms(Path folder, int version) {
  private static final Pattern SAID = Pattern.compile("\\(PostgreSQL\\) (\\d{1,4})");

  /**
   * The first that is new enough.
   *
   * @throws StoreException if there is none
   */
  static ServerPrograms find(ServerPlaces places) throws StoreException {
    return find(places, ServerPrograms::versionIn);
  }

  static ServerPrograms find(ServerPlaces places, ToIntFunction<Path> versions)
      throws StoreException {
    var newest = new ServerPrograms(Path.of(""), 0);
    for (var folder : places.withPrograms()) {
      var found = new ServerPrograms(folder, versions.applyAsInt(folder));
      if (found.version >= Store.OLDEST) {
        return found;
      }
      newest = found.version > newest.version ? found : newest;
    }
    if (newest.version > 0) {
      throw new StoreException(
          Text.of("this computer has PostgreSQL {0} only", newest.version),
          newest.folder.toString(),
          Text.of("Take PostgreSQL {0} or newer.", Store.OLDEST));
    }
    throw new StoreException(
        Text.of("no PostgreSQL is installed on this computer"),
        places.said(),
        Text.of(
            "Install PostgreSQL {0} or newer, which need not run, or put the folder with its initdb"
                + " and pg_ctl on the PATH.",
            Store.OLDEST));
  }

  /** What its initdb says, or 0. */
  private static int versionIn(Path folder) {
    try {
      var initdb = ServerPlaces.program(folder, "initdb").orElseThrow().toString();
      var run = new ProcessBuilder(initdb, "--version").redirectErrorStream(true).start();
      run.getOutputStream().close();
      return version(new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      // It is there and does not run: as good as none.
      return 0;
    }
  }

  /** The version in such as {@code initdb (PostgreSQL) 15.18 (Debian 15.18-0+deb12u1)}, or 0. */
  static int version(String said) {
    var found = SAID.matcher(said);
    return found.find() ? Integer.parseInt(found.group(1)) : 0;
  }
}
