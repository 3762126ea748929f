package org.framewright.copies;

import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import org.framewright.base.Sha256;

/**
 * The state of a card that an answer holds for.
 *
 * @param files how many files lie on it
 * @param bytes how large they are together
 * @param digest SHA-256 over a line for each file, {@code path NUL size NUL sha256 LF}, sorted by
 *     path; empty where not every file could be read
 */
public record CardState(int files, long bytes, String digest) {
  static CardState of(List<FileFacts> files) {
    long bytes = files.stream().mapToLong(FileFacts::size).sum();
    if (files.stream().anyMatch(file -> file.read().isEmpty())) {
      return new CardState(files.size(), bytes, "");
    }
    var digest = Sha256.digest();
    files.stream()
        .sorted(Comparator.comparing(FileFacts::path))
        .forEach(
            file ->
                digest.update(
                    (file.path() + '\0' + file.size() + '\0' + file.read().get().sha256() + '\n')
                        .getBytes(StandardCharsets.UTF_8)));
    return new CardState(files.size(), bytes, Sha256.hex(digest));
  }
}
