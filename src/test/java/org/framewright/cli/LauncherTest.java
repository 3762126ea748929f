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
    for (var jar :
        List.of("another one.jar", "framewright-1.jar", "javafx-base.jar", "picocli-4.jar")) {
      Files.createFile(lib.resolve(jar));
    }
  }

  private void program(String path, String... lines) throws IOException {
    var file = folder.resolve(path);
    Files.createDirectories(file.getParent());
    Files.write(file, Stream.concat(Stream.of("#!/bin/sh"), Stream.of(lines)).toList());
    assertThat(file.toFile().setExecutable(true)).isTrue();
  }

  /** A Java that only says what it got, and its version as a JDK's own file has it. */
  private void java(String home, String version) throws IOException {
    program(home + "/bin/java", "echo \"# $0\"", "for word in \"$@\"; do echo \"$word\"; done");
    Files.writeString(
        folder.resolve(home + "/release"),
        "JAVA_RUNTIME_VERSION=\"25.9\"\nJAVA_VERSION=\"" + version + "\"\n");
  }

  private List<String> given(String system, String... words) throws Exception {
    java("java 25", "25.0.1");
    return launched(system, words);
  }

  private List<String> launched(String system, String... words) throws Exception {
    program("tools/uname", "echo " + system);
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
  void theCompilerForLongRunsIsForLongCommandsOnly() throws Exception {
    assertThat(given("Linux", "mark", "a job")).contains("-XX:TieredStopAtLevel=1");
    assertThat(given("Linux", "deliver", "a job")).doesNotContain("-XX:TieredStopAtLevel=1");
    assertThat(given("Linux", "open")).doesNotContain("-XX:TieredStopAtLevel=1");
  }

  @Test
  void whatEveryCommandLoadsComesFirst() throws Exception {
    var given = given("Linux", "day");
    var classes = given.get(given.indexOf("-cp") + 1).split(":", -1);
    assertThat(classes).hasSize(3);
    assertThat(classes[0]).endsWith("/lib/framewright-1.jar");
    assertThat(classes[1]).endsWith("/lib/picocli-4.jar");
    assertThat(classes[2]).endsWith("/lib/another one.jar");
    assertThat(given).doesNotContain("--module-path");
  }

  @Test
  void javaFxIsModulesForTheApp() throws Exception {
    var given = given("Linux", "open", "a job");
    assertThat(given.get(given.indexOf("--module-path") + 1))
        .endsWith("/lib/javafx-base.jar")
        .doesNotContain(":");
    assertThat(given.get(given.indexOf("-cp") + 1)).doesNotContain("javafx");
    assertThat(given).endsWith("org.framewright.cli.Framewright", "open", "a job");
  }

  @Test
  void anOlderJavaIsNotTakenAndAnotherIsLookedFor() throws Exception {
    java("java 25", "24.0.2");
    java("new java", "25");
    Files.createDirectories(folder.resolve("tools"));
    Files.createSymbolicLink(folder.resolve("tools/java"), folder.resolve("new java/bin/java"));
    assertThat(launched("Linux", "day").getFirst()).endsWith("/new java/bin/java");
  }

  @Test
  void theJavaThatCameWithTheProgramIsTakenWithWhatItMadeOfTheClasses() throws Exception {
    java("app/runtime", "25.0.1");
    assertThat(given("Linux", "day").getFirst()).endsWith("/app/runtime/bin/java");
    assertThat(given("Linux", "day")).noneMatch(word -> word.startsWith("-XX:AOTCache"));
    Files.createFile(folder.resolve("app/lib/commands.aot"));
    Files.createFile(folder.resolve("app/lib/app.aot"));
    assertThat(given("Linux", "day"))
        .anyMatch(word -> word.matches("-XX:AOTCache=.*/app/lib/commands.aot"));
    assertThat(given("Linux", "open"))
        .anyMatch(word -> word.matches("-XX:AOTCache=.*/app/lib/app.aot"))
        .doesNotContain("--module-path", "-XX:+AutoCreateSharedArchive");
    for (var word : List.of("--version", "-V", "--help", "-h")) {
      assertThat(given("Linux", word)).noneMatch(option -> option.startsWith("-XX:AOTCache"));
    }
  }

  @Test
  void aLinkToItLeadsToItsFolder() throws Exception {
    var link = Files.createSymbolicLink(folder.resolve("framewright"), launcher);
    var at = launcher;
    launcher = link;
    var given = given("Linux", "day");
    assertThat(given).contains("-Dframewright.home=" + at.getParent().getParent().toRealPath());
  }
}
