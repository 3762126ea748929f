package org.framewright.ui.page;

import java.util.stream.Collectors;
import org.framewright.naming.Convention;
import org.framewright.naming.Reserved;

/** What the codes of views mean by the job's convention. */
public final class ViewWords {
  private final Convention convention;

  /** Words of a convention. */
  public ViewWords(Convention convention) {
    this.convention = convention;
  }

  /** What a code means; the code itself where it means nothing. */
  public String word(String code) {
    return convention.fields().values().stream()
        .flatMap(field -> field.choices().entrySet().stream())
        .filter(choice -> choice.getKey().equalsIgnoreCase(code))
        .map(choice -> choice.getValue().isBlank() ? code : choice.getValue())
        .findFirst()
        .orElse(code);
  }

  /** {@code F front, B back}: all codes of the convention; empty where it has none. */
  public String all() {
    var field = convention.fields().get(Reserved.VIEW);
    return field == null
        ? ""
        : field.choices().entrySet().stream()
            .map(choice -> (choice.getKey() + " " + choice.getValue()).strip())
            .collect(Collectors.joining(" · "));
  }
}
