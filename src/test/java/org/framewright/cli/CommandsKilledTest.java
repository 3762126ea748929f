package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.framewright.disk.Strace;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Every command that writes, as a process of its own on a real file system, killed by strace(1) at
 * each system call that changes a name or puts a file on the disk. What it writes into files is
 * killed and failed in {@link CommandsUnderFaultsTest}, at every change.
 */
@Tag("slow")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class CommandsKilledTest {
  private static final List<String> CALLS =
      List.of(
          "mkdir", "rename", "renameat2", "link", "unlink", "rmdir", "fsync", "fdatasync", "chmod");

  private CommandScene scene;
  private Strace strace;

  @BeforeAll
  void aJob(@TempDir Path scratch) throws IOException, InterruptedException {
    strace = Strace.in(scratch);
    scene = new CommandScene(scratch);
  }

  private static List<String> program(CommandScene.Case command, Path place) {
    var program = new ArrayList<String>();
    program.add("-Dframewright.settings=" + place.resolveSibling("settings"));
    program.add(Framewright.class.getName());
    Arrays.stream(command.in(place)).map(Object::toString).forEach(program::add);
    return program;
  }

  @ParameterizedTest
  @EnumSource
  void aProcessKilledAtAnyCallLeavesNothingHalfMade(
      CommandScene.Case command, TestReporter reporter) throws Exception {
    var killed = new TreeMap<String, Integer>();
    var whole = scene.place(command);
    strace.run(program(command, whole), String.join(",", CALLS));
    var calls = new ArrayList<String>();
    for (var call : CALLS) {
      if (strace.met(call)) {
        calls.add(call);
      }
    }
    for (var call : calls) {
      for (int point = 1; killedAt(command, call, point); point++) {
        killed.put(call, point);
      }
    }
    reporter.publishEntry(command + ": processes killed", killed.toString());
    assertThat(killed.values().stream().mapToInt(Integer::intValue).sum())
        .as(command + " changes something on the disk")
        .isGreaterThan(command == CommandScene.Case.RETURNS ? -1 : 1);
  }

  private boolean killedAt(CommandScene.Case command, String call, int point)
      throws IOException, InterruptedException {
    var place = scene.place(command);
    Map<String, String> before = CommandScene.contents(place);
    var run = strace.run(program(command, place), call + ":signal=SIGKILL:when=" + point);
    if (!run.killed()) {
      assertThat(run.status()).as(command + ": " + run.output()).isLessThanOrEqualTo(1);
      return false;
    }
    CommandScene.endsWhole(command, place, before, command + " killed at " + call + " " + point);
    return true;
  }
}
