package org.framewright.copies.device;

import java.io.IOException;
import java.nio.channels.Channels;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.framewright.base.SmallFiles;

/** What a program of the system says of its disks. */
@FunctionalInterface
interface Answers {
  /** What it wrote; empty where it failed, said too much, or took too long. */
  Optional<byte[]> to(List<String> command);

  /** Runs them; a disk that does not answer must not hold us up. */
  static Answers ofPrograms() {
    return Answers::run;
  }

  private static Optional<byte[]> run(List<String> command) {
    int most = 1 << 20;
    int seconds = 15;
    try {
      var process =
          new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
      try (var in = Channels.newChannel(process.getInputStream())) {
        process.getOutputStream().close();
        var timer =
            Thread.ofVirtual()
                .start(
                    () -> {
                      try {
                        if (!process.waitFor(seconds, TimeUnit.SECONDS)) {
                          process.destroyForcibly();
                        }
                      } catch (InterruptedException e) {
                        Thread.currentThread().interrupt();
                      }
                    });
        var said = SmallFiles.rest(in, most);
        boolean ended = process.waitFor(seconds, TimeUnit.SECONDS);
        timer.interrupt();
        return ended && process.exitValue() == 0 ? said : Optional.empty();
      } finally {
        process.destroyForcibly();
      }
    } catch (IOException e) {
      return Optional.empty();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    }
  }
}
