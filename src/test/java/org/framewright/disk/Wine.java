package org.framewright.disk;

import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * Programs for Windows, compiled by mingw-w64 and run by Wine; a test that needs them is skipped
 * with a message where one is absent.
 */
public final class Wine {
  private static final List<String> COMPILERS =
      List.of("/usr/bin/x86_64-w64-mingw32-gcc", "/usr/bin/x86_64-w64-mingw32-gcc-win32");
  private static final List<String> RUNNERS = List.of("/usr/lib/wine/wine64", "/usr/bin/wine64");

  private final Path folder;
  private final String compiler;
  private final String runner;

  /**
   * What a program said and ended with.
   *
   * @param lines of its output
   */
  public record Said(List<String> lines, int status) {}

  private Wine(Path folder, String compiler, String runner) {
    this.folder = folder;
    this.compiler = compiler;
    this.runner = runner;
  }

  /** With its own settings in a folder; skips the test where there is none. */
  public static Wine orSkip(Path folder) {
    var compiler = first(COMPILERS);
    var runner = first(RUNNERS);
    assumeTrue(
        compiler.isPresent() && runner.isPresent(),
        "wine64 and gcc-mingw-w64-x86-64 are not here; the calls of Windows are not tried");
    return new Wine(folder, compiler.get(), runner.get());
  }

  private static Optional<String> first(List<String> places) {
    return places.stream().filter(place -> Files.isExecutable(Path.of(place))).findFirst();
  }

  /** The path of a file as a program for Windows writes it. */
  public static String path(Path file) {
    return "Z:" + file.toString().replace('/', '\\');
  }

  /** Compiles one of the tests' own programs. */
  public void compile(String source, Path program) throws IOException, InterruptedException {
    var made =
        new ProcessBuilder(compiler, "-o", program.toString(), "src/test/resources/" + source)
            .redirectErrorStream(true);
    var process = made.start();
    var told = text(process);
    assertThat(process.waitFor()).as(told).isZero();
  }

  /** Runs a program. */
  public Said run(Path in, Map<String, String> environment, String... command)
      throws IOException, InterruptedException {
    var whole = new ArrayList<>(List.of(runner));
    whole.addAll(List.of(command));
    var builder =
        new ProcessBuilder(whole)
            .directory(in.toFile())
            .redirectError(ProcessBuilder.Redirect.DISCARD);
    builder.environment().put("WINEPREFIX", folder.resolve("wine").toString());
    builder.environment().put("WINEDEBUG", "-all");
    builder.environment().remove("DISPLAY");
    builder.environment().putAll(environment);
    var process = builder.start();
    process.getOutputStream().close();
    var said = text(process);
    assertThat(process.waitFor(2, TimeUnit.MINUTES)).isTrue();
    return new Said(said.lines().filter(line -> !line.isEmpty()).toList(), process.exitValue());
  }

  private static String text(Process process) throws IOException {
    return new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
  }
}
