package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import org.framewright.disk.DiskOp;
import org.framewright.disk.Fault;
import org.framewright.disk.Killed;
import org.framewright.disk.Recording;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Every command that writes, killed and failed at each change that it makes to the disk. Afterwards
 * the job opens, nothing is half-made, and the same command does its work.
 */
@DisabledOnOs(OS.WINDOWS)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Tag("slow")
class CommandsUnderFaultsTest {
  private CommandScene scene;

  @BeforeAll
  void aJob(@TempDir Path scratch) throws IOException {
    scene = new CommandScene(scratch);
  }

  private static Ran run(CommandScene.Case command, Recording disk) {
    var folder = disk.real(disk.root());
    var system = disk.root().getFileSystem();
    return Ran.on(text -> system.getPath(text), command.in(folder));
  }

  private int changes(CommandScene.Case command) throws IOException {
    var disk = Recording.on(scene.place(command));
    var ran = run(command, disk);
    assertThat(ran.status()).as(ran.err()).isIn(0, 1);
    assertThat(disk.ops().size())
        .as(command + " changes something on the disk")
        .isGreaterThan(command == CommandScene.Case.RETURNS ? -1 : 1);
    return disk.ops().size();
  }

  @ParameterizedTest
  @EnumSource
  void aCommandKilledAtAnyChangeCanBeRunAgain(CommandScene.Case command, TestReporter reporter)
      throws Exception {
    int points = changes(command);
    for (int point = 0; point < points; point++) {
      var place = scene.place(command);
      var before = CommandScene.contents(place);
      var disk = Recording.on(place);
      disk.killWithin(point);
      try {
        run(command, disk);
        throw new AssertionError("not killed at " + point);
      } catch (Killed e) {
        CommandScene.endsWhole(
            command, place, before, command + " killed at change " + point + ": " + e);
      }
    }
    reporter.publishEntry(command + ": kill points", "" + points);
  }

  @ParameterizedTest
  @EnumSource
  void aCommandWhoseDiskFailsAtAnyChangeSaysSoAndCanBeRunAgain(
      CommandScene.Case command, TestReporter reporter) throws Exception {
    int points = changes(command);
    int failed = 0;
    for (var failure :
        List.<Function<DiskOp, IOException>>of(
            Fault::noSpace, Fault::inputOutput, Fault::readOnly)) {
      for (int point = 0; point < points; point++) {
        var place = scene.place(command);
        var before = CommandScene.contents(place);
        var disk = Recording.on(place);
        disk.fail(Fault.onceAt(point, failure).afterHalfTheBytes());
        var ran = run(command, disk);
        var said = command + " failed at change " + point + ": " + ran;
        assertThat(ran.err())
            .as(said)
            .doesNotContain("fault of the program")
            .doesNotContain("Exception")
            .doesNotContain("\tat ");
        failed += ran.status() > 1 ? 1 : 0;
        CommandScene.endsWhole(command, place, before, said);
      }
    }
    reporter.publishEntry(command + ": failures", failed + " of " + 3 * points + " reported");
  }
}
