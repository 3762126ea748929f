package org.framewright.mhl;

import static org.framewright.AssertThat.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import org.framewright.Standards;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;

/** The worked examples of ASC MHL 1.0. */
class MhlExamplesTest {
  private static byte[] of(HashKind kind, byte[] bytes) {
    var hash = kind.begin();
    hash.update(ByteBuffer.wrap(bytes));
    return hash.value();
  }

  /**
   * Scenario 2, {@code 0001_A002R2EC_2020-01-16_091500Z.mhl}, and scenario 3 for MD5: the files'
   * texts, and the hashes of the folder Clips and of the whole.
   */
  @Test
  void theHashesOfFoldersAreThoseOfTheExample() {
    Map<HashKind, String[]> values =
        Map.of(
            HashKind.XXH64,
            new String[] {
              "4c226b42e27d7af3", "906faa843d591a9f", "8d02114c32e28cbe", "f557f8ca8e5a88ef"
            },
            HashKind.MD5,
            new String[] {
              "202a2d71b56b080d9b089c1f4f29a4ba",
              "4a739024fd19d928e9dea6bb5c480200",
              "6fae2da9bc6dca45486cb91bfea6db70",
              "be1f2eaed208efbed061845a64cacdfa"
            });
    values.forEach(
        (kind, expected) -> {
          var hashing = new FolderHashing(kind);
          file(hashing, kind, "Clips/A002C006_141024_R2EC.mov", "abcd\n");
          file(hashing, kind, "Clips/A002C007_141024_R2EC.mov", "def\n");
          file(
              hashing,
              kind,
              "Sidecar.txt",
              "BLOREM ipsum dolor sit amet, consetetur sadipscing elitr.\n");
          var hashes = hashing.hashes();
          assertThat(kind.text(hashes.get("Clips").content())).isEqualTo(expected[0]);
          assertThat(kind.text(hashes.get("Clips").structure())).isEqualTo(expected[1]);
          assertThat(kind.text(hashes.get("").content())).isEqualTo(expected[2]);
          assertThat(kind.text(hashes.get("").structure())).isEqualTo(expected[3]);
        });
  }

  private static void file(FolderHashing hashing, HashKind kind, String path, String text) {
    hashing.file(path, of(kind, text.getBytes(StandardCharsets.UTF_8)));
  }

  /** Every list of every example, against the files as they lie there. */
  @Test
  void everyValueOfTheExamplesIsComeToAgain(TestReporter reporter) throws Exception {
    int lists = 0;
    int values = 0;
    for (var folder : Standards.histories()) {
      var history = MhlHistory.read(folder).orElseThrow();
      for (var generation : history.generations()) {
        lists++;
        boolean last = generation.equals(history.generations().getLast());
        values += last ? compare(folder, generation) : 0;
      }
      values += history.chain().links().size(); // Read only where each fits.
    }
    reporter.publishEntry("lists", lists + ", values come to again: " + values);
    assertThat(lists).isGreaterThan(10);
    assertThat(values).isGreaterThan(80);
  }

  private static int compare(Path folder, Generation generation) throws IOException {
    int values = 0;
    var hashings = new HashMap<HashKind, FolderHashing>();
    for (var kind : HashKind.values()) {
      hashings.put(kind, new FolderHashing(kind));
    }
    for (var entry : generation.files()) {
      var bytes = Files.readAllBytes(folder.resolve(entry.path()));
      assertThat(entry.size()).hasValue(bytes.length);
      for (var kind : HashKind.values()) {
        hashings.get(kind).file(entry.path(), of(kind, bytes));
      }
      for (var hash : entry.hashes().entrySet()) {
        assertThat(hash.getKey().text(of(hash.getKey(), bytes))).isEqualTo(hash.getValue().value());
        values++;
      }
    }
    // What a history further in covers is part of the folders further out.
    for (var reference : generation.references()) {
      var list = folder.resolve(reference.path());
      assertThat(Chain.c4(Files.readAllBytes(list))).isEqualTo(reference.c4());
      values++;
      var inside = list.getParent().getParent();
      for (var claim : MhlHistory.read(inside).orElseThrow().claims().keySet()) {
        var bytes = Files.readAllBytes(inside.resolve(claim));
        var path = folder.relativize(inside.resolve(claim)).toString().replace('\\', '/');
        for (var kind : HashKind.values()) {
          hashings.get(kind).file(path, of(kind, bytes));
        }
      }
    }
    for (var entry : generation.folders()) {
      values += compare(hashings, entry.path(), entry.hashes());
    }
    if (generation.root().isPresent()) {
      values += compare(hashings, "", generation.root().get());
    }
    return values;
  }

  private static int compare(
      Map<HashKind, FolderHashing> hashings, String path, Generation.FolderHashes said) {
    said.content()
        .forEach(
            (kind, value) ->
                assertThat(kind.text(hashings.get(kind).hashes().get(path).content()))
                    .as(path)
                    .isEqualTo(value));
    said.structure()
        .forEach(
            (kind, value) ->
                assertThat(kind.text(hashings.get(kind).hashes().get(path).structure()))
                    .as(path)
                    .isEqualTo(value));
    return said.content().size() + said.structure().size();
  }

  /** Scenario 4: a file that was changed between two generations. */
  @Test
  void whatFailedOnceIsNeverAClaim() throws Exception {
    for (var folder : Standards.histories()) {
      if (folder.toString().contains("scenario_04/file_server".replace('/', File.separatorChar))) {
        var history = MhlHistory.read(folder).orElseThrow();
        assertThat(history.claims().get("Sidecar.txt").hashes())
            .containsEntry(HashKind.XXH64, "3ab5a4166b9bde44");
        return;
      }
    }
    throw new AssertionError("scenario 4 is not among the examples");
  }
}
