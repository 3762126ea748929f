package org.framewright.handoff.verify;

import static org.framewright.AssertThat.assertThat;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import com.google.common.jimfs.PathNormalization;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.framewright.base.Sha256;
import org.junit.jupiter.api.Test;

/** A package on a volume that lists letters with accents in two parts, as HFS+ does. */
class DecomposedBagTest {
  private static final Configuration HFS =
      Configuration.osX().toBuilder()
          .setNameDisplayNormalization(PathNormalization.NFD)
          .setNameCanonicalNormalization(PathNormalization.NFD)
          .build();

  private static Path bag(Path bag, String listed, String there) throws IOException {
    Files.createDirectories(bag.resolve("data"));
    Files.writeString(
        bag.resolve("bagit.txt"), "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n");
    Files.writeString(bag.resolve("data").resolve(there), "a frame");
    Files.writeString(
        bag.resolve("manifest-sha256.txt"),
        Sha256.of("a frame".getBytes(StandardCharsets.UTF_8)) + "  data/" + listed + "\n");
    return bag;
  }

  @Test
  void aNameThatIsListedOtherwiseThanItWasWrittenIsNoExtraFile() throws IOException {
    try (var volume = Jimfs.newFileSystem(HFS)) {
      var bag = bag(volume.getPath("/work/bag"), "Caf\u00e9.jpg", "Caf\u00e9.jpg");
      var check = OpenPackage.check(bag).orElseThrow();
      assertThat(check.unlisted()).isEmpty();
      assertThat(check.whole()).isTrue();
      assertThat(check.warnings()).isNotEmpty();
    }
  }

  @Test
  void whereTwoSpellingsAreTwoFilesTheOtherOneIsExtra() throws IOException {
    try (var volume = Jimfs.newFileSystem(Configuration.unix())) {
      var bag = bag(volume.getPath("/work/bag"), "Caf\u00e9.jpg", "Caf\u00e9.jpg");
      Files.writeString(bag.resolve("data/Cafe\u0301.jpg"), "another");
      assertThat(OpenPackage.check(bag).orElseThrow().unlisted())
          .containsExactly("data/Cafe\u0301.jpg");
    }
  }
}
