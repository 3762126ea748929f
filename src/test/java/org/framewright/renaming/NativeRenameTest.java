package org.framewright.renaming;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.lang.foreign.Arena;
import java.lang.foreign.ValueLayout;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the error numbers of the three systems mean, on any of them. */
class NativeRenameTest {
  private static final Path FILE = Path.of("folder", "a.jpg");

  private static NativeRename of(String system) {
    return switch (system) {
      case "linux" -> new LinuxRename();
      case "macos" -> new MacRename();
      default -> new WindowsRename();
    };
  }

  /**
   * Linux: errno(3); macOS: sys/errno.h; Windows: System Error Codes of Microsoft [from memory].
   */
  @ParameterizedTest
  @CsvSource({
    "linux, 17, TAKEN",
    "linux, 2, GONE",
    "linux, 22, UNSUPPORTED",
    "linux, 38, UNSUPPORTED",
    "linux, 95, UNSUPPORTED",
    "macos, 17, TAKEN",
    "macos, 2, GONE",
    "macos, 22, UNSUPPORTED",
    "macos, 45, UNSUPPORTED",
    "macos, 78, UNSUPPORTED",
    "macos, 102, UNSUPPORTED",
    "windows, 80, TAKEN",
    "windows, 183, TAKEN",
    "windows, 2, GONE",
    "windows, 3, GONE",
    "windows, 1, UNSUPPORTED",
    "windows, 50, UNSUPPORTED",
  })
  void someNumbersAreAnswers(String system, int error, MoveResult result) throws MoveFailure {
    assertThat(of(system).result(FILE, error)).isEqualTo(result);
  }

  /** The same sources. */
  @ParameterizedTest
  @CsvSource({
    "linux, 1, no permission",
    "linux, 13, no permission",
    "linux, 5, input/output error",
    "linux, 18, another volume",
    "linux, 28, no space",
    "linux, 122, no space",
    "linux, 30, read-only",
    "linux, 36, too long",
    "linux, 99, error 99",
    "macos, 1, no permission",
    "macos, 13, no permission",
    "macos, 5, input/output error",
    "macos, 18, another volume",
    "macos, 28, no space",
    "macos, 69, no space",
    "macos, 30, read-only",
    "macos, 63, too long",
    "macos, 20, became a file or a link",
    "macos, 62, became a file or a link",
    "macos, 16, holds it open",
    "macos, 60, does not answer",
    "macos, 64, does not answer",
    "macos, 65, does not answer",
    "macos, 92, does not take the new name",
    "macos, 99, error 99",
    "windows, 5, no permission",
    "windows, 17, another volume",
    "windows, 19, read-only",
    "windows, 32, holds it open",
    "windows, 33, holds it open",
    "windows, 39, no space",
    "windows, 112, no space",
    "windows, 21, input/output error",
    "windows, 23, input/output error",
    "windows, 27, input/output error",
    "windows, 31, input/output error",
    "windows, 1117, input/output error",
    "windows, 123, does not take the new name",
    "windows, 206, too long",
    "windows, 53, does not answer",
    "windows, 59, does not answer",
    "windows, 64, does not answer",
    "windows, 67, does not answer",
    "windows, 99, error 99",
  })
  void theOthersAreFailuresThatSayWhatWhereAndTheRemedy(String system, int error, String what) {
    assertThatThrownBy(() -> of(system).result(FILE, error))
        .isInstanceOfSatisfying(
            MoveFailure.class,
            failure -> {
              assertThat(failure.problem().what()).contains(what);
              assertThat(failure.problem().where()).isEqualTo("a.jpg");
              assertThat(failure.problem().remedy()).isNotBlank();
            });
  }

  @Test
  void theCallIsTheOneOfTheManualPage() {
    assertThat(of("linux").symbol()).isEqualTo("renameat2");
    assertThat(of("macos").symbol()).isEqualTo("renamex_np");
    assertThat(of("windows").symbol()).isEqualTo("MoveFileExW");
    assertThat(of("linux").errorName()).isEqualTo("errno");
    assertThat(of("macos").errorName()).isEqualTo("errno");
    assertThat(of("windows").errorName()).isEqualTo("GetLastError");
    assertThat(of("macos").descriptor()).isEqualTo(of("windows").descriptor());
  }

  /** Microsoft, "Naming Files, Paths, and Namespaces": the prefix, UTF-16, and a NUL behind it. */
  @Test
  void windowsIsGivenAWholePathInUtf16() {
    try (var arena = Arena.ofConfined()) {
      var path = Path.of("frames/é 🎞.jpg").toAbsolutePath();
      var text = new NativeText(arena);
      text.of(new byte[] {1, 2, 3});
      var bytes = new WindowsRename().written(path, text).toArray(ValueLayout.JAVA_BYTE);
      var expected = "\\\\?\\" + path + "\0";
      assertThat(new String(bytes, StandardCharsets.UTF_16LE)).startsWith(expected);
      var longer = Path.of("/", "x".repeat(5_000));
      assertThat(
              new String(
                  new WindowsRename().written(longer, text).toArray(ValueLayout.JAVA_BYTE),
                  StandardCharsets.UTF_16LE))
          .startsWith("\\\\?\\" + longer + "\0");
    }
  }

  /** The same source: of a share, server and name stand behind UNC. */
  @Test
  void windowsIsGivenTheLongFormOfAShareToo() {
    assertThat(WindowsRename.extended("\\\\nas\\jobs\\a.jpg"))
        .isEqualTo("\\\\?\\UNC\\nas\\jobs\\a.jpg");
    assertThat(WindowsRename.extended("C:\\jobs\\a.jpg")).isEqualTo("\\\\?\\C:\\jobs\\a.jpg");
  }

  @Test
  void aTextOfBytesEndsWithANul() {
    try (var arena = Arena.ofConfined()) {
      var text = new NativeText(arena);
      for (int length : new int[] {10_000, 4_095, 4_096, 3, 0}) {
        var bytes = new byte[length];
        Arrays.fill(bytes, (byte) 'x');
        var written = text.of(bytes);
        assertThat(written.getString(0)).isEqualTo("x".repeat(length));
      }
    }
  }
}
