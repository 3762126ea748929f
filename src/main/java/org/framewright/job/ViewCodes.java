package org.framewright.job;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.framewright.naming.Convention;
import org.framewright.naming.Reserved;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;

/** The codes of views: as the list has them, as the convention has them, and as people say them. */
final class ViewCodes {
  /** The field of a convention that is the view; its choices say what each code means. */
  static final String FIELD = Reserved.VIEW;

  private final Map<String, String> meanings;

  ViewCodes(Convention convention) {
    var field = convention.fields().get(FIELD);
    this.meanings = field == null ? Map.of() : field.choices();
  }

  /**
   * The code of the view that a person means: one that the setup wants, else one of the convention.
   *
   * @throws JobException if it is none of these, and there are any
   */
  String code(Setup setup, String view) throws JobException {
    var requested = setup.view(view);
    if (requested.isPresent()) {
      return requested.get().code();
    }
    for (var choice : meanings.entrySet()) {
      if (choice.getKey().equalsIgnoreCase(view) || choice.getValue().equalsIgnoreCase(view)) {
        return setup
            .view(choice.getKey())
            .or(() -> setup.view(choice.getValue()))
            .map(same -> same.code())
            .orElse(choice.getKey());
      }
    }
    var known = new LinkedHashSet<String>();
    setup.views().forEach(one -> known.add(one.code()));
    known.addAll(meanings.keySet());
    if (known.isEmpty()) {
      return view.strip();
    }
    throw new JobException(
        "there is no view \"" + view + "\"",
        "setup " + setup.code(),
        "Its views are " + String.join(", ", known) + ".");
  }

  /** What a code means in words; itself where the convention does not say. */
  String label(String code) {
    return meanings.getOrDefault(code, code);
  }

  /** The view of each setup of which only one is wanted. */
  static Function<String, Optional<String>> onlyOnes(ShotList list) {
    var only = new HashMap<String, String>();
    for (var setup : list.setups()) {
      if (setup.views().size() == 1) {
        only.put(setup.code(), setup.views().getFirst().code());
      }
    }
    return code -> Optional.ofNullable(only.get(code));
  }
}
