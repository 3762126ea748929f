package org.framewright.handoff;

import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RecordTextTest {
  private static final String SUM = "0123456789abcdef".repeat(4);

  private static HandOffRecord read(String json) throws RecordText.Damaged {
    return RecordText.read(json.replace('\'', '"').getBytes(StandardCharsets.UTF_8), 1, "1.json");
  }

  private static String damage(String json) {
    var damaged = catchThrowableOfType(RecordText.Damaged.class, () -> read(json));
    assertThat(damaged).isNotNull();
    assertThat(damaged).hasMessage(damaged.problem().sentence());
    assertThat(damaged.problem().where()).startsWith("1.json");
    return damaged.problem().what().replace("the record of this hand-off cannot be used: ", "");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "null | it does not say which hand-off it is",
        "{} | it does not say which hand-off it is",
        "{'handOff': 2, 'folder': '/x'} | it is of hand-off 2",
        "{'handOff': 1} | it does not say where the package is",
        "{'handOff': 1, 'folder': ' '} | it does not say where the package is",
        "{'handOff': 1, 'folder': '/x\\u0000'} | it does not say where the package is",
        "{'handOff': 1, 'folder': '\\u0000x'} | it does not say where the package is",
        "{'handOff': 1, 'folder': '/x', 'state': 'odd'} | it has a state that is not known: odd",
        "{'handOff': 1, 'folder': '/x', 'to': 'me'} | it is for somebody who is not known: me",
        "{'handOff': 1, 'folder': '/x', 'selects': 7} | it is no record of a hand-off",
        "[] | it is no record of a hand-off",
      })
  void saysWhatIsWrong(String json, String what) {
    assertThat(damage(json)).isEqualTo(what);
  }

  @Test
  void whomAPackageIsForIsKeptAndIsTheRetoucherWhereNothingIsSaid() throws Exception {
    var record = read("{'handOff': 1, 'folder': '/x'}");
    assertThat(record.to()).isEqualTo(HandOffRecord.To.RETOUCHER);
    assertThat(record.mayComeBack()).isTrue();
    assertThat(new String(RecordText.write(record), StandardCharsets.UTF_8))
        .doesNotContain("\"to\"");
    var client = record.addressed(HandOffRecord.To.CLIENT);
    assertThat(RecordText.read(RecordText.write(client), 1, "1.json")).isEqualTo(client);
    assertThat(client.mayComeBack()).isFalse();
  }

  @Test
  void saysThatItIsNoJson() {
    assertThat(damage("{'handOff': oops}")).startsWith("it is no JSON: ").doesNotContain("\n");
  }

  private static String select(String select) {
    return "{'handOff': 1, 'folder': '/x', 'selects': [" + select + "]}";
  }

  @Test
  void saysWhatASelectLacks() {
    assertThat(damage(select("{}"))).isEqualTo("it has a select without its name");
    assertThat(damage(select("{'select': ' '}"))).isEqualTo("it has a select without its name");
    assertThat(damage(select("{'select': 'S'}"))).isEqualTo("it has the select S without files");
    var file = "{'select': 'S', 'files': [{%s}]}";
    assertThat(damage(select(file.formatted(""))))
        .isEqualTo("it has a file with a name that is none");
    assertThat(damage(select(file.formatted("'name': 'a/b', 'sha256': '" + SUM + "'"))))
        .isEqualTo("it has a file with a name that is none");
    assertThat(damage(select(file.formatted("'name': 'S.JPG'"))))
        .isEqualTo("it has the file S.JPG without its SHA-256");
    assertThat(
            damage(select(file.formatted("'name': 'S.JPG', 'sha256': '" + SUM.substring(1) + "'"))))
        .isEqualTo("it has the file S.JPG without its SHA-256");
    assertThat(
            damage(select(file.formatted("'name': 'S.JPG', 'sha256': '" + SUM + "', 'bytes': -1"))))
        .isEqualTo("it has the file S.JPG with a size below 0");
  }

  @Test
  void takesWhatIsNotSaidForNothing() throws Exception {
    var record =
        read(
            select(
                "{'select': 'S', 'files': [{'name': 'a', 'sha256': '%s', 'bytes': 0},"
                        .formatted(SUM)
                    + "{'name': 'b', 'sha256': '%s'}]}".formatted(SUM)));
    assertThat(record.at()).isEmpty();
    assertThat(record.chosenBy()).isEmpty();
    assertThat(record.draft()).isEmpty();
    assertThat(record.digest()).isEmpty();
    var select = record.selects().getFirst();
    assertThat(select.setup()).isEmpty();
    assertThat(select.original()).isEmpty();
    assertThat(select.files())
        .extracting(HandOffRecord.Copy::bytes)
        .containsExactly(OptionalLong.of(0), OptionalLong.empty());
    assertThat(read("{'handOff': 1, 'folder': '/x'}").selects()).isEmpty();
  }

  @Test
  void passesOverADraftAndAChecksumThatAreNone() throws Exception {
    var record = read("{'handOff': 1, 'folder': '/x', 'draft': ' ', 'package': 'short'}");
    assertThat(record.draft()).isEmpty();
    assertThat(record.digest()).isEmpty();
    record = read("{'handOff': 1, 'folder': '/x', 'draft': 'd', 'package': '" + SUM + "'}");
    assertThat(record.draft()).contains("d");
    assertThat(record.digest()).contains(SUM);
  }

  @Test
  void readsEveryStateByItsWord() throws Exception {
    for (var state : HandOffRecord.State.values()) {
      var word = state.name().toLowerCase(java.util.Locale.ROOT);
      assertThat(read("{'handOff': 1, 'folder': '/x', 'state': '" + word + "'}").state())
          .isEqualTo(state);
    }
  }
}
