package org.framewright.installer;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.framewright.base.OperatingSystem;
import org.framewright.base.OwnFolder;

/** Makes the packages of this system, and says what came of it and how large it is. */
final class Installer {
  private final Release release;
  private final PrintStream out;

  private Installer(Release release, PrintStream out) {
    this.release = release;
    this.out = out;
  }

  /** Given are the built program, the project's folder, the output's, the version and the time. */
  public static void main(String[] args) throws IOException {
    var release =
        new Release(
            Path.of(args[0]).toAbsolutePath(),
            Path.of(args[1]).toAbsolutePath(),
            Path.of(args[2]).toAbsolutePath(),
            args[3],
            Instant.parse(args[4]).truncatedTo(ChronoUnit.SECONDS));
    new Installer(release, new PrintStream(System.out, true, StandardCharsets.UTF_8)).run();
  }

  private void run() throws IOException {
    Folders.empty(release.output());
    var home = Home.lay(release);
    Training.run(release, home);
    tell("installed form", home.size("."), release.output().relativize(home.folder()).toString());
    for (var part : List.of("runtime", "lib", "lib/commands.aot", "lib/app.aot")) {
      tell("  " + part, home.size(part), "");
    }
    var made = new ArrayList<Path>();
    for (var format : Format.of(OperatingSystem.current())) {
      switch (format.make(release, home)) {
        case Outcome.Made(var file) -> {
          made.add(file);
          tell(format.name(), Files.size(file), file.getFileName().toString());
        }
        case Outcome.LeftOut(var why) -> out.printf("%-18s is left out: %s%n", format.name(), why);
      }
    }
    var bill = home.bill().file();
    if (Files.exists(bill)) {
      made.add(Files.copy(bill, release.output().resolve(BillOfMaterials.NAME)));
    } else {
      out.printf("%s is left out: Maven was offline%n", BillOfMaterials.NAME);
    }
    Checksums.write(release.output(), made);
    OwnFolder.remove(release.output().resolve("work"));
  }

  private void tell(String what, long bytes, String where) {
    if (bytes > 0) {
      out.printf(Locale.ROOT, "%-18s %7.1f MB  %s%n", what, bytes / 1e6, where);
    }
  }
}
