package org.framewright.handoff;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.handoff.verify.PayloadName;

/** The JSON of a hand-off's record. Keys that it does not know it passes over. */
final class RecordText {
  private static final Pattern SHA_256 = Pattern.compile("[0-9a-f]{64}");
  private static final JsonMapper JSON =
      JsonMapper.builder()
          .enable(SerializationFeature.INDENT_OUTPUT)
          .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
          .build();

  private RecordText() {}

  /** A record that cannot be used. */
  static final class Damaged extends Exception {
    private static final long serialVersionUID = 1L;
    private final transient Problem problem;

    Damaged(Problem problem) {
      super(problem.sentence());
      this.problem = problem;
    }

    Problem problem() {
      return problem;
    }
  }

  @JsonInclude(JsonInclude.Include.NON_NULL)
  @JsonPropertyOrder({
    "handOff",
    "state",
    "at",
    "folder",
    "draft",
    "package",
    "chosenBy",
    "metadata",
    "to",
    "selects"
  })
  private record Document(
      Integer handOff,
      String state,
      String at,
      String folder,
      String draft,
      @JsonProperty("package") String digest,
      String chosenBy,
      String metadata,
      String to,
      List<Select> selects) {}

  @JsonInclude(JsonInclude.Include.NON_NULL)
  private record Select(
      String select,
      String setup,
      String original,
      List<Copy> files,
      List<Copy> added,
      Boolean slate) {
    Select {
      require(isLine(select), Text.of("it has a select without its name"));
      require(files != null, Text.of("it has the select {0} without files", select));
    }
  }

  @JsonInclude(JsonInclude.Include.NON_NULL)
  private record Copy(String name, String sha256, Long bytes, String original) {
    Copy {
      require(
          original == null || SHA_256.matcher(original).matches(),
          Text.of("it has the file {0} without the SHA-256 of its frame", name));
      require(
          isLine(name) && PayloadName.isFileName(name),
          Text.of("it has a file with a name that is none"));
      require(
          sha256 != null && SHA_256.matcher(sha256).matches(),
          Text.of("it has the file {0} without its SHA-256", name));
      require(
          bytes == null || bytes >= 0, Text.of("it has the file {0} with a size below 0", name));
    }
  }

  static byte[] write(HandOffRecord one) throws IOException {
    return JSON.writeValueAsBytes(
        new Document(
            one.number(),
            word(one.state()),
            one.at(),
            one.folder(),
            one.draft().orElse(null),
            one.digest().orElse(null),
            one.chosenBy(),
            one.metadata().orElse(null),
            one.to() == HandOffRecord.To.RETOUCHER ? null : word(one.to()),
            one.selects().stream()
                .map(
                    entry ->
                        new Select(
                            entry.select(),
                            entry.setup(),
                            entry.original(),
                            entry.files().stream().map(RecordText::copy).toList(),
                            entry.added().isEmpty()
                                ? null
                                : entry.added().stream().map(RecordText::copy).toList(),
                            entry.slate() ? Boolean.TRUE : null))
                .toList()));
  }

  private static Copy copy(HandOffRecord.Copy copy) {
    return new Copy(
        copy.name(),
        copy.sha256(),
        copy.bytes().isPresent() ? (Long) copy.bytes().getAsLong() : null,
        copy.original().orElse(null));
  }

  /**
   * Reads a record.
   *
   * @param number the number that its file is named by
   * @param file named in the problem
   */
  static HandOffRecord read(byte[] json, int number, String file) throws Damaged {
    Document document;
    try {
      document = JSON.readValue(json, Document.class);
    } catch (JsonProcessingException e) {
      var at = e.getLocation();
      throw damaged(said(e), at == null ? file : file + ", line " + at.getLineNr());
    } catch (IOException e) {
      throw damaged(Text.of("it is not UTF-8 text"), file);
    }
    if (document == null || document.handOff() == null) {
      throw damaged(Text.of("it does not say which hand-off it is"), file);
    }
    if (document.handOff() != number) {
      throw damaged(Text.of("it is of hand-off {0}", document.handOff()), file);
    }
    if (!isLine(document.folder())) {
      throw damaged(Text.of("it does not say where the package is"), file);
    }
    return new HandOffRecord(
        number,
        state(document.state(), file),
        orEmpty(document.at()),
        document.folder(),
        Optional.ofNullable(document.draft()).filter(RecordText::isLine),
        Optional.ofNullable(document.digest()).filter(sum -> SHA_256.matcher(sum).matches()),
        orEmpty(document.chosenBy()),
        document.selects() == null
            ? List.of()
            : document.selects().stream()
                .map(
                    select ->
                        new HandOffRecord.Entry(
                            select.select(),
                            orEmpty(select.setup()),
                            orEmpty(select.original()),
                            copies(select.files()),
                            select.added() == null ? List.of() : copies(select.added()),
                            Boolean.TRUE.equals(select.slate())))
                .collect(Collectors.toList()),
        Optional.ofNullable(document.metadata()).filter(RecordText::isLine),
        to(document.to(), file));
  }

  /** A record that does not say it is of the retoucher's. */
  private static HandOffRecord.To to(String word, String file) throws Damaged {
    if (word == null) {
      return HandOffRecord.To.RETOUCHER;
    }
    return Arrays.stream(HandOffRecord.To.values())
        .filter(to -> word(to).equals(word))
        .findFirst()
        .orElseThrow(
            () -> damaged(Text.of("it is for somebody who is not known: {0}", word), file));
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }

  private static List<HandOffRecord.Copy> copies(List<Copy> files) {
    return files.stream()
        .map(
            copy ->
                new HandOffRecord.Copy(
                    copy.name(),
                    copy.sha256(),
                    copy.bytes() == null ? OptionalLong.empty() : OptionalLong.of(copy.bytes()),
                    Optional.ofNullable(copy.original())))
        .toList();
  }

  /** A record without a state was written when the package was in its place. */
  private static HandOffRecord.State state(String word, String file) throws Damaged {
    if (word == null) {
      return HandOffRecord.State.DELIVERED;
    }
    return Arrays.stream(HandOffRecord.State.values())
        .filter(state -> word(state).equals(word))
        .findFirst()
        .orElseThrow(() -> damaged(Text.of("it has a state that is not known: {0}", word), file));
  }

  private static Text said(JsonProcessingException e) {
    if (e instanceof JsonMappingException && e.getCause() instanceof Lacking own) {
      return own.said;
    }
    return e instanceof JsonMappingException
        ? Text.of("it is no record of a hand-off")
        : Text.of("it is no JSON: {0}", e.getOriginalMessage().lines().findFirst().orElse(""));
  }

  static Damaged damaged(Text what, String where) {
    return new Damaged(
        new Problem(
            Text.of("the record of this hand-off cannot be used: {0}", what),
            where,
            "Bring it back from a copy of the job, or leave it; the package itself is not"
                + " touched."));
  }

  /** A part of a record that lacks something. */
  private static final class Lacking extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;
    private final transient Text said;

    Lacking(Text said) {
      super(said.english());
      this.said = said;
    }
  }

  private static void require(boolean holds, Text fault) {
    if (!holds) {
      throw new Lacking(fault);
    }
  }

  private static boolean isLine(String text) {
    return text != null && !text.isBlank() && text.indexOf('\0') < 0;
  }

  private static String orEmpty(String text) {
    return text == null ? "" : text;
  }
}
