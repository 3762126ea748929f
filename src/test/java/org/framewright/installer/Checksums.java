package org.framewright.installer;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.util.List;
import org.framewright.base.Sha256;

/** The file that a release is signed by: a line for each package, as {@code sha256sum} reads it. */
final class Checksums {
  static final String NAME = "SHA256SUMS";

  private Checksums() {}

  static void write(Path folder, List<Path> packages) throws IOException {
    var lines = new StringBuilder();
    for (var file : packages.stream().sorted().toList()) {
      lines.append(Sha256.sumLine(of(file), file.getFileName().toString()));
    }
    Files.writeString(folder.resolve(NAME), lines);
  }

  private static String of(Path file) throws IOException {
    var digest = Sha256.digest();
    try (var in = new DigestInputStream(Files.newInputStream(file), digest)) {
      in.transferTo(OutputStream.nullOutputStream());
    }
    return Sha256.hex(digest);
  }
}
