package org.framewright.ui.naming;

import org.framewright.naming.Proposal.Role;
import org.framewright.ui.look.Texts;

/** What a piece of a name can be, in the language of the app. */
final class RoleWords {
  private RoleWords() {}

  static String word(Texts texts, Role role) {
    return texts.get(key(role));
  }

  static String meaning(Texts texts, Role role) {
    return texts.get(key(role) + ".what");
  }

  /** The word with what it means. */
  static String explained(Texts texts, Role role) {
    return texts.get("proposal.role", word(texts, role), meaning(texts, role));
  }

  private static String key(Role role) {
    return "proposal.role." + role.word();
  }
}
