package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the launcher gives to Java, with a Java and a {@code uname} that only say what they got. */
class LauncherTest {
  @TempDir private Path folder;
  private Path launcher;

  @BeforeEach
  void aLauncherInItsFolder() throws IOException {
    assumeTrue(Files.isExecutable(Path.of("/bin/sh")), "no /bin/sh is here");
    var bin = Files.createDirectories(folder.resolve("app/bin"));
    try (var files = Files.list(Path.of("src/main/launch"))) {
      for (var file : files.toList()) {
        Files.copy(file, bin.resolve(file.getFileName()));
      }
    }
    launcher = bin.resolve("framewright");
    var lib = Files.createDirectories(folder.resolve("app/lib"));
    for (var jar : List.of("javafx-base.jar", "framewright.jar", "other one.jar")) {
      Files.createFile(lib.resolve(jar));
    }
  }

  private void program(String path, String... lines) throws IOException {
    var file = folder.resolve(path);
    Files.createDirectories(file.getParent());
    Files.write(file, Stream.concat(Stream.of("#!/bin/sh"), Stream.of(lines)).toList());
    assertThat(file.toFile().setExecutable(true)).isTrue();
  }

  private List<String> given(String system, String... words) throws Exception {
    program("tools/uname", "echo " + system);
    program(
        "java 25/bin/java",
        "[ \"$1\" = -version ] && { echo 'openjdk version \"25.0.1\"' >&2; exit; }",
        "for word in \"$@\"; do echo \"$word\"; done");
    var command = new ArrayList<>(List.of("/bin/sh", launcher.toString()));
    command.addAll(List.of(words));
    var builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().put("JAVA_HOME", folder.resolve("java 25").toString());
    builder
        .environment()
        .merge("PATH", folder.resolve("tools").toString(), (path, own) -> own + ":" + path);
    builder.environment().put("HOME", folder.toString());
    builder.environment().remove("FRAMEWRIGHT_JAVA_OPTIONS");
    var process = builder.start();
    var lines =
        new String(
            process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(lines).isZero();
    return lines.lines().toList();
  }

  private static List<String> optionFiles(List<String> given) {
    return given.stream()
        .filter(word -> word.startsWith("@"))
        .map(word -> word.substring(word.lastIndexOf('/') + 1))
        .toList();
  }

  @ParameterizedTest
  @CsvSource({"Linux, open", "Linux, ''"})
  void theAppHasPrioritiesOfItsOwnOnLinux(String system, String command) throws Exception {
    var given = command.isEmpty() ? given(system) : given(system, command);
    assertThat(optionFiles(given)).containsExactly("app.options", "linux.options");
  }

  /** On macOS 0 is the lowest priority of all. Source: xnu, osfmk/kern/sched.h. */
  @Test
  void theAppHasNoSuchPrioritiesOnOtherSystems() throws Exception {
    var given = given("Darwin", "open");
    assertThat(optionFiles(given)).containsExactly("app.options");
    assertThat(given).contains("-Xdock:name=Framewright");
    assertThat(Files.readString(Path.of("src/main/launch/app.options"))).doesNotContain("Priority");
  }

  @Test
  void aCommandHasNoneOfTheAppsOptions() throws Exception {
    var given = given("Linux", "day", "a job", "--json");
    assertThat(optionFiles(given)).isEmpty();
    assertThat(given).contains("-XX:+UseSerialGC").endsWith("day", "a job", "--json");
  }

  @Test
  void javaFxIsModulesAndTheRestIsClasses() throws Exception {
    var given = given("Linux", "day");
    var modules = given.get(given.indexOf("--module-path") + 1);
    assertThat(modules).endsWith("javafx-base.jar").doesNotContain(":");
    var classes = given.get(given.indexOf("-cp") + 1);
    assertThat(classes).contains("framewright.jar", "other one.jar").doesNotContain("javafx");
  }
}
