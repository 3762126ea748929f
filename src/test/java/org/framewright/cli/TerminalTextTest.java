package org.framewright.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.nio.charset.Charset;
import org.framewright.base.OperatingSystem;
import org.junit.jupiter.api.Test;

/** Texts on a console of Windows. The bytes are those of code page 850 (IBM, by the JDK). */
class TerminalTextTest {
  private static String printed(Charset charset, String text) {
    var bytes = new ByteArrayOutputStream();
    TerminalText.to(bytes, charset).println(text);
    return new String(bytes.toByteArray(), charset).strip();
  }

  @Test
  void whatACodePageHasIsWrittenInItAndTheRestAsNearAsCanBe() {
    assumeTrue(Charset.isSupported("IBM850"), "this runtime does not know code page 850");
    var page = Charset.forName("IBM850");
    assertThat(printed(page, "\u201CFLX\u201D \u2013 \u00E9\u2026 Gr\u00F6\u00DFe"))
        .isEqualTo("\"FLX\" - \u00E9... Gr\u00F6\u00DFe");
    assertThat(printed(page, "it\u2019s \u00D7 \u2192 \u6587")).isEqualTo("it's \u00D7 -> ?");
  }

  @Test
  void filesAndOtherProgramsGetUtf8() {
    assertThat(printed(UTF_8, "\u201CFLX\u201D \u6587")).isEqualTo("\u201CFLX\u201D \u6587");
    var page = Charset.forName("windows-1252");
    assertThat(TerminalText.charset(OperatingSystem.WINDOWS, false, page)).isEqualTo(UTF_8);
    assertThat(TerminalText.charset(OperatingSystem.LINUX, true, page)).isEqualTo(UTF_8);
    assertThat(TerminalText.charset(OperatingSystem.WINDOWS, true, page)).isEqualTo(page);
  }

  @Test
  void aSingleSignIsWrittenAsAWholeTextIs() {
    var bytes = new ByteArrayOutputStream();
    var out = TerminalText.to(bytes, Charset.forName("US-ASCII"));
    out.write('\u2013');
    out.write(new char[] {'a', '\u2026', 'b'}, 1, 1);
    out.flush();
    assertThat(bytes.toString(UTF_8)).isEqualTo("-...");
  }
}
