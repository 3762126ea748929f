package org.framewright.job;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.framewright.base.Text;
import org.framewright.naming.Convention;
import org.framewright.naming.Reserved;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;

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
    var choice = choice(meanings, view);
    if (choice.isPresent()) {
      return setup.views().stream()
          .map(View::code)
          .filter(code -> choice(meanings, code).equals(choice))
          .findFirst()
          .orElse(choice.get());
    }
    var known = new LinkedHashSet<String>();
    setup.views().forEach(one -> known.add(one.code()));
    known.addAll(meanings.keySet());
    if (known.isEmpty()) {
      return view.strip();
    }
    throw new JobException(
        Text.of("there is no view \"{0}\"", view),
        "setup " + setup.code(),
        Text.of("Its views are {0}.", String.join(", ", known)));
  }

  /**
   * The choice that a view is: by its code, its meaning, or another word for that, such as {@code
   * Vorderansicht} for {@code front}.
   *
   * @param meanings the choices' by their codes
   */
  static Optional<String> choice(Map<String, String> meanings, String view) {
    for (var choice : meanings.entrySet()) {
      if (choice.getKey().equalsIgnoreCase(view) || choice.getValue().equalsIgnoreCase(view)) {
        return Optional.of(choice.getKey());
      }
    }
    var wanted = View.meaning(view);
    return wanted.isEmpty()
        ? Optional.empty()
        : meanings.entrySet().stream()
            .filter(choice -> View.meaning(choice.getValue()).equals(wanted))
            .map(Map.Entry::getKey)
            .findFirst();
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
