package org.framewright.ui.renaming;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.framewright.base.Progress;
import org.framewright.renaming.RenameRequest;
import org.framewright.renaming.Renamer;

/**
 * A rename in a process of its own that dies half-way, as in a power cut: {@code FOLDER STEPS FROM
 * TO FROM TO ...}. The virtual machine is halted before a step, with no time to tidy up.
 */
public final class CrashedRename {
  private static final int HALTED = 99;

  private CrashedRename() {}

  /** Leaves a batch interrupted after some steps. */
  public static void leaveIn(Path folder, int steps, List<RenameRequest> requests)
      throws IOException, InterruptedException {
    var path =
        Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator, -1))
            .filter(entry -> !entry.isEmpty())
            .collect(Collectors.joining(File.pathSeparator));
    var command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "--enable-native-access=ALL-UNNAMED",
                "-cp",
                path,
                CrashedRename.class.getName(),
                folder.toString(),
                String.valueOf(steps)));
    for (var request : requests) {
      command.add(request.from().toString());
      command.add(request.to().toString());
    }
    var log = Files.createTempFile("crashed-rename", ".log");
    var process =
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(log.toFile()).start();
    var status = process.waitFor();
    if (status != HALTED) {
      throw new IllegalStateException("it ended with " + status + ": " + Files.readString(log));
    }
    Files.delete(log);
  }

  public static void main(String[] args) throws IOException {
    var steps = Integer.parseInt(args[1]);
    var requests = new ArrayList<RenameRequest>();
    for (var i = 2; i < args.length; i += 2) {
      requests.add(new RenameRequest(Path.of(args[i]), Path.of(args[i + 1])));
    }
    var renamer = Renamer.in(Path.of(args[0]));
    renamer.apply(
        renamer.plan(requests),
        new Progress() {
          private int asked;

          @Override
          public void step(int done, int total) {}

          @Override
          public boolean cancelled() {
            if (++asked > steps) {
              Runtime.getRuntime().halt(HALTED);
            }
            return false;
          }
        });
  }
}
