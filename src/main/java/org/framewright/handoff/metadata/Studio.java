package org.framewright.handoff.metadata;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.framewright.base.FileProblems;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.base.SmallFiles;
import org.framewright.base.Text;

/** What a person said once of the own studio, in the settings of this computer. */
public final class Studio {
  /** Nothing is said. */
  public static final Studio NOTHING = new Studio(Map.of());

  private static final int LARGEST_FILE = 1 << 20;
  private static final int LONGEST = 1000;
  private static final Pattern PICTURE =
      Pattern.compile("\\.(png|jpe?g)$", Pattern.CASE_INSENSITIVE);
  private static final TypeReference<Map<String, Object>> SHAPE = new TypeReference<>() {};

  /** What is said, each under its key in the settings' file. */
  public enum Detail {
    PHOTOGRAPHER,
    POSITION,
    STUDIO,
    MAIL,
    PHONE,
    WEBSITE,
    CREDIT,
    SOURCE,
    COPYRIGHT,
    OWNER,
    TERMS,
    STATEMENT,
    LOGO,
    MINING;

    /** Under which key it is kept. */
    public String key() {
      return "studio." + name().toLowerCase(Locale.ROOT);
    }

    /** What is wrong with a text as that; nothing where it may stand there. */
    public Optional<Problem> problem(String text) {
      return text.isBlank()
          ? Optional.empty()
          : fault(this, text)
              .map(fault -> new Problem(fault, "Write it otherwise, or leave it empty."));
    }
  }

  /** What came of reading the settings. */
  public sealed interface Reading {
    /** They hold. */
    record Sound(Studio studio) implements Reading {}

    /** One of them does not. */
    record Faulty(Problem problem) implements Reading {}
  }

  private final Map<Detail, String> details;

  private Studio(Map<Detail, String> details) {
    this.details = Map.copyOf(details);
  }

  /** Reads the settings' file; where there is none, nothing is said. */
  public static Reading read(Path file) {
    if (!Files.exists(file)) {
      return new Reading.Sound(NOTHING);
    }
    try {
      var kept = new JsonMapper().readValue(SmallFiles.read(file, LARGEST_FILE), SHAPE);
      return of(kept == null ? Map.of() : kept, file.toString());
    } catch (JsonProcessingException e) {
      return new Reading.Faulty(
          new Problem(
              "these settings cannot be read, and the studio's names and rights stand in them",
              file.toString(),
              "Set them anew on the page of settings, or hand off with --metadata none."));
    } catch (IOException e) {
      return new Reading.Faulty(FileProblems.of(e));
    }
  }

  /**
   * What settings say.
   *
   * @param kept by the keys of the settings' file; those of other settings are passed over
   * @param where the file, for a problem
   */
  public static Reading of(Map<String, Object> kept, String where) {
    var details = new EnumMap<Detail, String>(Detail.class);
    for (var detail : Detail.values()) {
      var value = kept.get(detail.key());
      if (value == null || value.equals("")) {
        continue;
      }
      var fault = fault(detail, value);
      if (fault.isPresent()) {
        return new Reading.Faulty(
            new Problem(
                Text.of("the setting {0} cannot be used: {1}", detail.key(), fault.get()),
                where,
                "Correct it on the page of settings, or hand off with --metadata none."));
      }
      details.put(detail, ((String) value).strip());
    }
    return new Reading.Sound(new Studio(details));
  }

  private static Optional<Text> fault(Detail detail, Object value) {
    if (!(value instanceof String text)) {
      return Optional.of(Text.of("it is no text"));
    }
    if (text.codePointCount(0, text.length()) > LONGEST) {
      return Optional.of(Text.of("it has more than {0} characters", LONGEST));
    }
    if (!PlainText.line(text).equals(text)) {
      return Optional.of(Text.of("it has a line break or a character that cannot be shown"));
    }
    return switch (detail) {
      case MAIL ->
          text.strip().matches("[^@\\s]+@[^@\\s]+")
              ? Optional.empty()
              : Optional.of(Text.of("it is no mail address"));
      case WEBSITE, STATEMENT ->
          isAddress(text.strip())
              ? Optional.empty()
              : Optional.of(Text.of("it is no address that begins with https:// or http://"));
      case LOGO ->
          isPicture(text.strip())
              ? Optional.empty()
              : Optional.of(Text.of("it is no whole path of a PNG or JPEG"));
      case COPYRIGHT -> Notice.fault(text).map(part -> Text.of("{0} does not name a field", part));
      case MINING ->
          DataMining.ofWord(text).isPresent()
              ? Optional.empty()
              : Optional.of(
                  Text.of(
                      "it is none of {0}",
                      String.join(
                          ", ",
                          Arrays.stream(DataMining.values()).map(DataMining::word).toList())));
      default -> Optional.empty();
    };
  }

  private static boolean isPicture(String text) {
    try {
      return Path.of(text).isAbsolute() && PICTURE.matcher(text).find();
    } catch (InvalidPathException e) {
      return false;
    }
  }

  private static boolean isAddress(String text) {
    try {
      var address = new URI(text);
      return address.getHost() != null
          && ("https".equalsIgnoreCase(address.getScheme())
              || "http".equalsIgnoreCase(address.getScheme()));
    } catch (URISyntaxException e) {
      return false;
    }
  }

  /** What is said as that; nothing where nothing is. */
  public Optional<String> get(Detail detail) {
    return Optional.ofNullable(details.get(detail));
  }

  /** What stands between the braces of the copyright notice and names no field of a convention. */
  public Optional<Problem> problemIn(FieldWords fields, String where) {
    return get(Detail.COPYRIGHT)
        .flatMap(notice -> Notice.unknown(notice, fields))
        .map(
            part ->
                new Problem(
                    Text.of(
                        "the copyright notice of the settings shows {0}, a field that the"
                            + " convention of this job does not have",
                        part),
                    where,
                    "Correct it on the page of settings, or hand off with --metadata none."));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Studio studio && studio.details.equals(details);
  }

  @Override
  public int hashCode() {
    return details.hashCode();
  }

  @Override
  public String toString() {
    return new TreeMap<>(details).toString();
  }
}
