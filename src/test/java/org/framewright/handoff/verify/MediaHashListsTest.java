package org.framewright.handoff.verify;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.TreeMap;
import org.framewright.Standards;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The worked examples of ASC MHL 1.0, as they are and after somebody changed something. */
class MediaHashListsTest {
  @TempDir private Path folder;

  /** A copy of an example. */
  private Path copy(String example) throws IOException {
    var from = Standards.mhl().resolve(example);
    var to = folder.resolve("copy");
    try (var all = Files.walk(from)) {
      for (var path : all.toList()) {
        Files.copy(path, to.resolve(from.relativize(path).toString()));
      }
    }
    return to;
  }

  private static PackageCheck check(Path where) throws IOException {
    return OpenPackage.check(where).orElseThrow();
  }

  private static String problems(Path where) throws IOException {
    return String.join("\n", PackageDescription.problems(check(where)));
  }

  /** By the README of scenario 4, the sidecar was changed on its way to the server. */
  @Test
  void everyExampleIsJudgedAsItsTextSays() throws Exception {
    var wrong = new TreeMap<String, String>();
    for (var history : Standards.histories()) {
      var name = Standards.mhl().relativize(history).toString().replace('\\', '/');
      var expected =
          name.equals("scenario_04/file_server/A002R2EC")
              ? "not what its list says: Sidecar.txt"
              : "";
      if (!problems(history).equals(expected)) {
        wrong.put(name, problems(history));
      }
      assertThat(check(history).kind()).isEqualTo(PackageCheck.Kind.MHL);
      assertThat(check(history).files()).as(name).isGreaterThan(2);
    }
    assertThat(wrong).isEmpty();
    assertThat(Standards.histories()).hasSizeGreaterThan(8);
  }

  @Test
  void oneByteOneFileLessAndOneFileMoreAreTold() throws Exception {
    var copy = copy("scenario_01/travel_01/A002R2EC");
    Files.writeString(copy.resolve("Clips/A002C006_141024_R2EC.mov"), "abcx\n");
    assertThat(problems(copy)).isEqualTo("not what its list says: Clips/A002C006_141024_R2EC.mov");
    Files.writeString(copy.resolve("Clips/A002C006_141024_R2EC.mov"), "abc\n");
    assertThat(check(copy).different()).as("of another size").hasSize(1);
    Files.delete(copy.resolve("Clips/A002C006_141024_R2EC.mov"));
    assertThat(problems(copy)).isEqualTo("in its list, not there: Clips/A002C006_141024_R2EC.mov");
    Files.writeString(copy.resolve("Clips/A002C006_141024_R2EC.mov"), "abcd\n");
    assertThat(check(copy).whole()).isTrue();
    Files.writeString(copy.resolve("Clips/more.mov"), "more");
    assertThat(problems(copy)).isEqualTo("there, not in its list: Clips/more.mov");
  }

  @Test
  void whatTheListsLeaveOutIsNotAskedFor() throws Exception {
    var copy = copy("scenario_01/travel_01/A002R2EC");
    Files.writeString(copy.resolve("Clips/.DS_Store"), "more");
    Files.writeString(copy.resolve("ascmhl/.DS_Store"), "more");
    assertThat(check(copy).whole()).isTrue();
  }

  @Test
  void aListThatWasChangedIsToldAndNotBelieved() throws Exception {
    var copy = copy("scenario_01/travel_01/A002R2EC");
    var list = copy.resolve("ascmhl/0001_A002R2EC_2020-01-16_091500Z.mhl");
    Files.writeString(list, Files.readString(list).replace("0ea03b369a463d9d", "1ea03b369a463d9d"));
    assertThat(problems(copy))
        .contains("this list is not what the chain of its history says")
        .contains("ascmhl: its lists name no file");
  }

  @Test
  void filesOfAHistoryFurtherInAreComparedToo() throws Exception {
    var copy = copy("scenario_05/file_server/Reels");
    assertThat(check(copy).whole()).isTrue();
    assertThat(check(copy).files()).as("and two lists that are referred to").isEqualTo(9);
    assertThat(check(copy).lists())
        .contains("A003R2EC/ascmhl/0002_A003R2EC_2020-01-17_143000Z.mhl");
    Files.writeString(copy.resolve("A003R2EC/Clips/A003C011_141024_R2EC.mov"), "xxxx\n");
    assertThat(problems(copy))
        .isEqualTo("not what its list says: A003R2EC/Clips/A003C011_141024_R2EC.mov");
  }

  @Test
  void aHistoryFurtherInThatIsGoneIsMissing() throws Exception {
    var copy = copy("scenario_05/file_server/Reels");
    try (var all = Files.walk(copy.resolve("A003R2EC"))) {
      for (var path : all.sorted((one, other) -> other.compareTo(one)).toList()) {
        Files.delete(path);
      }
    }
    assertThat(problems(copy))
        .isEqualTo("in its list, not there: A003R2EC/ascmhl/0002_A003R2EC_2020-01-17_143000Z.mhl");
  }

  /** A list without the hash of the whole says nothing of what it does not name. */
  @Test
  void onlyAListOfTheWholeIsClosed() throws Exception {
    var copy = copy("scenario_01/travel_01/A002R2EC");
    var list = copy.resolve("ascmhl/0001_A002R2EC_2020-01-16_091500Z.mhl");
    Files.writeString(list, Files.readString(list).replaceFirst("(?s)<roothash>.*</roothash>", ""));
    Files.delete(copy.resolve("ascmhl/ascmhl_chain.xml"));
    Files.writeString(copy.resolve("more.txt"), "more");
    assertThat(check(copy).unlisted()).containsExactly("more.txt");
    assertThat(check(copy).closed()).isFalse();
    assertThat(check(copy).whole()).isTrue();
  }
}
