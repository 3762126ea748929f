package org.framewright.renaming;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.framewright.disk.Wine;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The calls of Windows as Wine answers them, and its numbers as mingw-w64 has them in its headers:
 * what {@link WindowsRename}, {@link WindowsFolders} and the stand-ins of the tests take for
 * granted.
 */
@Tag("slow")
class WineTest {
  private static final Path FILE = Path.of("a.jpg");

  @TempDir private Path folder;

  private static MoveResult result(String answer) throws MoveFailure {
    var words = answer.split(" ", -1);
    return words[1].equals("1")
        ? MoveResult.MOVED
        : new WindowsRename().result(FILE, Integer.parseInt(words[2]));
  }

  @Test
  void renamesAreAnsweredAsTheMoverTakesIt() throws Exception {
    var wine = Wine.orSkip(folder);
    var program = folder.resolve("calls.exe");
    wine.compile("windows-calls.c", program);
    var work = Files.createDirectory(folder.resolve("work"));
    var said = wine.run(work, Map.of(), program.toString());
    assertThat(said.status()).as(said.toString()).isZero();
    var by =
        said.lines().stream()
            .collect(
                Collectors.toMap(
                    line -> line.substring(0, line.indexOf(' ')), Function.identity()));

    assertThat(result(by.get("free"))).isEqualTo(MoveResult.MOVED);
    assertThat(result(by.get("taken"))).isEqualTo(MoveResult.TAKEN);
    assertThat(by).containsEntry("a", "a a").containsEntry("b", "b b");
    assertThat(result(by.get("folder"))).isEqualTo(MoveResult.TAKEN);
    assertThat(by.get("nosource")).isEqualTo("nosource 0 2");
    assertThat(by.get("nofolder")).isEqualTo("nofolder 0 3");
    assertThat(by.get("badname")).isEqualTo("badname 0 123");
    assertThat(result(by.get("extended"))).isEqualTo(MoveResult.MOVED);
    assertThat(by.get("heldopen")).isEqualTo("heldopen 0 32");
    assertThat(new WindowsRename().failure(FILE, 32).mayPass()).isTrue();
    assertThat(result(by.get("shared"))).isEqualTo(MoveResult.MOVED);

    assertThat(by.get("flush")).isEqualTo("flush 1");
    assertThat(by.get("constants")).isEqualTo("constants 40000000 7 3 2000000");
    assertThat(by.get("awake")).isEqualTo("awake 80000003");
    assertThat(by.get("errors")).isEqualTo("errors 2 3 5 17 19 32 33 39 50 80 112 123 183");
    assertThat(by.get("more")).isEqualTo("more 1 21 23 27 31 1117 206 53 59 64 67");
  }
}
