package org.framewright.mhl;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import org.framewright.base.FileProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lists of other people, which may say anything. */
class HostileListsTest {
  private static final String HEAD =
      """
      <?xml version="1.0" encoding="UTF-8"?>
      <hashlist version="2.0" xmlns="urn:ASC:MHL:v2.0">
      """;
  private static final String HASH = "<xxh64 action=\"original\">0ea03b369a463d9d</xxh64>";

  private static Generation read(String text) throws FileProblemException {
    return GenerationReader.read(text.getBytes(StandardCharsets.UTF_8), "list.mhl");
  }

  private static String list(String path) {
    return HEAD + "<hashes><hash><path>" + path + "</path>" + HASH + "</hash></hashes></hashlist>";
  }

  private static void refused(String text) {
    assertThatThrownBy(() -> read(text))
        .isInstanceOfSatisfying(
            FileProblemException.class,
            e -> {
              assertThat(e.problem().where()).startsWith("list.mhl");
              assertThat(e.problem().remedy()).isNotEmpty();
            });
  }

  @Test
  void aPlainListIsRead() throws FileProblemException {
    var files = read(list("Clips/a &amp; b.mov")).files();
    assertThat(files).hasSize(1);
    assertThat(files.getFirst().path()).isEqualTo("Clips/a & b.mov");
    assertThat(files.getFirst().hashes()).containsKey(HashKind.XXH64);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "../a",
        "/a",
        "a/../../b",
        "a//b",
        "./a",
        "a/",
        "..",
        ".",
        "",
        "a/.",
        "&#47;etc&#47;passwd"
      })
  void aPathThatLeadsOutOfTheFolderIsRefused(String path) {
    refused(list(path));
  }

  @Test
  void noDoctypeIsRead(@TempDir Path temp) throws Exception {
    var secret = Files.writeString(temp.resolve("secret"), "Clips/secret");
    refused("<!DOCTYPE hashlist [<!ENTITY s SYSTEM \"" + secret.toUri() + "\">]>\n" + list("&s;"));
    refused("<!DOCTYPE hashlist [<!ENTITY a \"x\"><!ENTITY b \"&a;&a;\">]>\n" + list("&b;"));
    refused("<!DOCTYPE hashlist SYSTEM \"http://192.0.2.1/x.dtd\">\n" + list("a"));
    refused(list("&unknown;"));
    var utf16 = ("<!DOCTYPE hashlist []>" + list("a")).getBytes(StandardCharsets.UTF_16);
    assertThatThrownBy(() -> GenerationReader.read(utf16, "list.mhl"))
        .isInstanceOf(FileProblemException.class);
  }

  @Test
  void whatIsNoListOfThisVersionIsRefused() {
    refused("");
    refused("no XML at all");
    refused("<hashlist/>");
    refused("<hashlist version=\"2.0\"/>");
    refused(list("a").replace("2.0\" xmlns", "1.1\" xmlns"));
    refused(list("a").replace("urn:ASC:MHL:v2.0", "urn:other"));
    refused(list("a").replace("original", "perhaps"));
    refused(list("a").replace("0ea03b369a463d9d", "0ea03b369a463d"));
    refused(list("a").replace("<path>", "<path size=\"x\">"));
    refused(list("a").replace("<path>a</path>", ""));
    refused(list("a").replace("</hash>", "</hash><hash><path>a</path>" + HASH + "</hash>"));
  }

  @Test
  void whatIsTooDeepOrTooLongIsRefused() {
    refused(
        HEAD + "<metadata>" + "<x>".repeat(5000) + "</x>".repeat(5000) + "</metadata></hashlist>");
    refused(list("a".repeat(1 << 20)));
    refused(list("a/".repeat(10_000) + "a"));
  }

  @Test
  void metadataOfOthersIsPassedOverWhereverItStands() throws FileProblemException {
    var metadata = "<metadata><a xmlns=\"urn:x\"><path>../x</path></a></metadata>";
    var text = list("a").replace("<hashes>", metadata + "<hashes>").replace(HASH, HASH + metadata);
    assertThat(read(text).files()).hasSize(1);
  }

  @Test
  void aChainNamesOnlyFilesBesideItInTheirOrder() throws FileProblemException {
    var c4 = Chain.c4(new byte[0]);
    var good =
        "<ascmhldirectory xmlns=\"urn:ASC:MHL:DIRECTORY:v2.0\"><hashlist"
            + " sequencenr=\"1\"><path>0001_a_2020-01-16_091500Z.mhl</path><c4>"
            + c4
            + "</c4></hashlist></ascmhldirectory>";
    assertThat(Chain.read(good.getBytes(StandardCharsets.UTF_8), "c").links()).hasSize(1);
    for (var bad :
        new String[] {
          good.replace("0001_a", "../0001_a"),
          good.replace("0001_a", "x/0001_a"),
          good.replace("0001_a", "..\\0001_a"),
          good.replace("0001_a_2020-01-16_091500Z.mhl", ".."),
          good.replace("nr=\"1\"", "nr=\"2\""),
          good.replace(c4, c4.substring(1)),
          good.replace(
              "</hashlist>", "</hashlist><hashlist sequencenr=\"2\"><path>x.mhl</path></hashlist>")
        }) {
      assertThatThrownBy(() -> Chain.read(bad.getBytes(StandardCharsets.UTF_8), "c"))
          .as(bad)
          .isInstanceOf(FileProblemException.class);
    }
  }

  @Test
  void whatIsCutOrBrokenAnywhereIsReadOrRefusedAndNothingElse() {
    var bytes = list("Clips/a.mov").getBytes(StandardCharsets.UTF_8);
    var random = new Random(3);
    int refused = 0;
    for (int i = 0; i < 2000; i++) {
      var broken = Arrays.copyOf(bytes, i % 2 == 0 ? random.nextInt(bytes.length) : bytes.length);
      for (int k = 0; k < 3 && broken.length > 0; k++) {
        broken[random.nextInt(broken.length)] = (byte) random.nextInt();
      }
      try {
        assertThat(GenerationReader.read(broken, "list.mhl")).isNotNull();
      } catch (FileProblemException e) {
        refused++;
      }
    }
    assertThat(refused).isGreaterThan(1000);
  }
}
