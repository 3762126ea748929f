package org.framewright.renaming;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import org.framewright.base.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConflictsTest {
  private static PlannedRename rename(String names, Status status) {
    var pair = names.split(">", 2);
    return new PlannedRename(
        Path.of(pair[0]), Path.of(pair[1]), "", status, Text.NONE, Text.NONE, Seen.NOTHING);
  }

  @ParameterizedTest
  @CsvSource({
    "a>b c>d, {}",
    "a>b b>c, '{0, 1}'",
    "a>b b>a, '{0, 1}'",
    "a>b c>d b>e, '{0, 2}'",
    "a>A c>d, {0}",
    "a>b B>c, '{0, 1}'",
    "one/a>one/b two/b>two/c, {}",
    "one/a>two/b two/b>one/c, '{0, 1}'",
    "one/a>one/b ONE/b>one/c, '{0, 1}'",
    "a>one/b b>c, {}",
    "a>one/b one/b>c, '{0, 1}'",
  })
  void renamesThatMeetInANameAreConflicted(String renames, String conflicted) {
    var all = new ArrayList<PlannedRename>();
    for (var names : renames.split(" ", -1)) {
      all.add(rename(names, Status.READY));
    }
    assertThat(Conflicts.of(all)).hasToString(conflicted);
  }

  @Test
  void whatIsNotRenamedMeetsNothing() {
    var all = new ArrayList<PlannedRename>();
    all.add(rename("a>b", Status.READY));
    all.add(rename("b>c", Status.BLOCKED));
    assertThat(Conflicts.of(all).isEmpty()).isTrue();
  }

  /** Names whose hashes fall together are still told apart. */
  @Test
  void ofManyRenamesOnlyThoseThatMeetAreConflicted() {
    var all = new ArrayList<PlannedRename>();
    for (int i = 0; i < 3_000; i++) {
      all.add(rename("Aa" + i + ">x" + i, Status.READY));
      all.add(rename("BB" + i + ">y" + i, Status.READY)); // "Aa" and "BB" have one hash.
    }
    all.add(rename("x7>z", Status.READY));
    assertThat(Conflicts.of(all)).hasToString("{14, 6000}");
  }
}
