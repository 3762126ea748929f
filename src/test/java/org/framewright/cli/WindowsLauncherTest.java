package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.framewright.disk.Wine;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What framewright.cmd gives to Java, by the command processor of Wine. */
@Tag("slow")
class WindowsLauncherTest {
  @TempDir private Path folder;
  private Wine wine;
  private Path app;
  private Path jdk;

  @BeforeEach
  void anAppAndAJdk() throws Exception {
    wine = Wine.orSkip(folder);
    app = Files.createDirectory(folder.resolve("the app"));
    var bin = Files.createDirectory(app.resolve("bin"));
    for (var file : List.of("framewright.cmd", "app.options", "linux.options")) {
      Files.copy(Path.of("src/main/launch", file), bin.resolve(file));
    }
    var lib = Files.createDirectory(app.resolve("lib"));
    for (var jar :
        List.of(
            "commons.jar",
            "framewright-0.1.0.jar",
            "javafx-base-win.jar",
            "javafx-graphics-win.jar",
            "picocli-4.jar")) {
      Files.createFile(lib.resolve(jar));
    }
    jdk = folder.resolve("jdk");
    Files.createDirectories(jdk.resolve("bin"));
    wine.compile("says-its-arguments.c", jdk.resolve("bin/java.exe"));
    version("25.0.1");
  }

  /** As the JDK's own file has it. */
  private void version(String version) throws Exception {
    Files.writeString(
        jdk.resolve("release"),
        "IMPLEMENTOR=\"x\"\nJAVA_RUNTIME_VERSION=\"25.0.1+8\"\nJAVA_VERSION=\"" + version + "\"\n");
  }

  private Wine.Said launched(String... words) throws Exception {
    // Wine's command processor loses the quotation marks of a path with a blank.
    var batch = folder.resolve("run.bat");
    Files.writeString(
        batch, "@call \"" + Wine.path(app.resolve("bin/framewright.cmd")) + "\" %*\r\n");
    var command = new ArrayList<>(List.of("cmd", "/c", Wine.path(batch)));
    command.addAll(List.of(words));
    return wine.run(folder, Map.of("JAVA_HOME", Wine.path(jdk)), command.toArray(new String[0]));
  }

  @Test
  void whatEveryCommandLoadsComesFirstAndTheWordsStayWhole() throws Exception {
    var given = launched("day", "a job", "--json").lines();
    var lib = Wine.path(app.resolve("lib"));
    assertThat(given.get(given.indexOf("-cp") + 1))
        .isEqualTo(lib + "\\framewright-0.1.0.jar;" + lib + "\\picocli-4.jar;" + lib + "\\*");
    assertThat(given)
        .contains("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1")
        .doesNotContain("--module-path")
        .endsWith("org.framewright.cli.Framewright", "day", "a job", "--json");
  }

  @Test
  void longCommandsHaveTheCompilerForLongRuns() throws Exception {
    assertThat(launched("copies", "a job (1)").lines())
        .contains("-XX:+UseSerialGC")
        .doesNotContain("-XX:TieredStopAtLevel=1")
        .endsWith("copies", "a job (1)");
  }

  @Test
  void javaFxIsModulesForTheApp() throws Exception {
    var given = launched("open", "a job").lines();
    var lib = Wine.path(app.resolve("lib"));
    assertThat(given.get(given.indexOf("--module-path") + 1))
        .isEqualTo(lib + "\\javafx-base-win.jar;" + lib + "\\javafx-graphics-win.jar");
    assertThat(given).endsWith("open", "a job");
  }

  @Test
  void theJavaThatCameWithTheProgramIsTakenWithWhatItMadeOfTheClasses() throws Exception {
    var own = Files.createDirectories(app.resolve("runtime/bin"));
    Files.copy(jdk.resolve("bin/java.exe"), own.resolve("java.exe"));
    Files.createFile(app.resolve("lib/commands.aot"));
    version("24");
    var lib = Wine.path(app.resolve("lib"));
    assertThat(launched("day").lines()).contains("-XX:AOTCache=" + lib + "\\commands.aot");
    assertThat(launched("--version").lines()).noneMatch(word -> word.startsWith("-XX:AOTCache"));
    assertThat(launched("open").lines())
        .doesNotContain("--module-path")
        .noneMatch(word -> word.startsWith("-XX:AOTCache"));
  }

  @Test
  void theAppHasItsOptionsButNotThePrioritiesOfLinux() throws Exception {
    for (var given : List.of(launched().lines(), launched("open").lines())) {
      assertThat(given).anyMatch(word -> word.endsWith("\\app.options"));
      assertThat(given).noneMatch(word -> word.endsWith("linux.options"));
    }
  }

  @Test
  void anOlderJavaIsNotTaken() throws Exception {
    version("24.0.2");
    assertThat(launched("day").lines()).isEmpty();
    version("25");
    assertThat(launched("day").lines()).endsWith("day");
  }

  @Test
  void theLinesEndAsWindowsWantsThem() throws Exception {
    var text = Files.readString(Path.of("src/main/launch/framewright.cmd"));
    assertThat(text.replace("\r\n", "")).doesNotContain("\n").doesNotContain("\r");
    assertThat(text.chars().boxed()).allMatch(c -> c < 128);
  }
}
