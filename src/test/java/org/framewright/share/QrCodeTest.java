package org.framewright.share;

import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assumptions.assumeThat;
import static org.framewright.AssertThat.assertThat;

import java.awt.image.BufferedImage;
import java.io.File;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class QrCodeTest {
  private static final String LINK = "http://192.168.178.120:8470/#ABCDEFGHIJKLMNOPQRSTUVWXYZ.a";

  /** ISO/IEC 18004, section 6.3: a finder pattern in three corners, dark 7 by 7 around light. */
  @Test
  void hasThreeFinders() {
    var code = QrCode.of(LINK);
    int far = code.size() - 7;
    for (int[] at : new int[][] {{0, 0}, {far, 0}, {0, far}}) {
      assertThat(code.module(at[0], at[1])).isTrue();
      assertThat(code.module(at[0] + 1, at[1] + 1)).isFalse();
      assertThat(code.module(at[0] + 3, at[1] + 3)).isTrue();
    }
    assertThat(code.module(code.size() - 1, code.size() - 1) && code.module(-1, 0)).isFalse();
  }

  /** ISO/IEC 18004, table 7: version 4-M holds 62 bytes, and has 33 modules. */
  @Test
  void aLinkTakes33Modules() {
    assertThat(QrCode.of(LINK).size()).isEqualTo(33);
  }

  @Test
  void outsideNothingIsDark() {
    var code = QrCode.of(LINK);
    assertThat(code.module(-1, 0)).isFalse();
    assertThat(code.module(0, -1)).isFalse();
    assertThat(code.module(code.size(), 0)).isFalse();
    assertThat(code.module(0, code.size())).isFalse();
  }

  @Test
  void asTextHasTheQuietZoneAndEveryModule() {
    var code = QrCode.of(LINK);
    var lines = code.halfBlocks().lines().toList();
    assertThat(lines).hasSize(21);
    for (int y = 0; y < lines.size(); y++) {
      assertThat(lines.get(y)).hasSize(41);
      for (int x = 0; x < 41; x++) {
        assertThat("▀█".indexOf(lines.get(y).charAt(x)) >= 0)
            .isEqualTo(code.module(x - 4, 2 * y - 4));
        assertThat("▄█".indexOf(lines.get(y).charAt(x)) >= 0)
            .isEqualTo(code.module(x - 4, 2 * y - 3));
      }
    }
    assertThat(lines.getFirst()).isBlank();
  }

  @Test
  void tooLongATextIsRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> QrCode.of("a".repeat(3000)));
  }

  @Tag("slow")
  @Test
  void anotherReaderReadsItAsAPicture(@TempDir Path folder) throws Exception {
    var code = QrCode.of(LINK);
    int side = code.size() + 2 * QrCode.QUIET;
    var image = new BufferedImage(side * 6, side * 6, BufferedImage.TYPE_BYTE_GRAY);
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        boolean dark = code.module(x / 6 - QrCode.QUIET, y / 6 - QrCode.QUIET);
        image.setRGB(x, y, dark ? 0 : 0xFFFFFF);
      }
    }
    assertThat(byZbarimg(image, folder)).isEqualTo(LINK);
  }

  /** A terminal's letter is about twice as high as it is wide. */
  @Tag("slow")
  @Test
  void anotherReaderReadsItAsText(@TempDir Path folder) throws Exception {
    var lines = QrCode.of(LINK).halfBlocks().lines().toList();
    var image =
        new BufferedImage(
            lines.getFirst().length() * 8, lines.size() * 17, BufferedImage.TYPE_BYTE_GRAY);
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        char letter = lines.get(y / 17).charAt(x / 8);
        boolean dark = letter == '█' || letter == (y % 17 < 8 ? '▀' : '▄');
        image.setRGB(x, y, dark ? 0 : 0xFFFFFF);
      }
    }
    assertThat(byZbarimg(image, folder)).isEqualTo(LINK);
  }

  private static String byZbarimg(BufferedImage image, Path folder) throws Exception {
    assumeThat(
            Arrays.stream(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
                .anyMatch(place -> Files.isExecutable(Path.of(place, "zbarimg"))))
        .as("zbarimg is not installed")
        .isTrue();
    var file = folder.resolve("code.png").toFile();
    ImageIO.write(image, "png", file);
    var process =
        new ProcessBuilder(
                List.of(
                    "zbarimg",
                    "-q",
                    "--raw",
                    "--nodbus",
                    "-Sdisable",
                    "-Sqrcode.enable",
                    file + ""))
            .start();
    var said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    process.waitFor();
    return said.strip();
  }
}
