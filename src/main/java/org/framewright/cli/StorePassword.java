package org.framewright.cli;

import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.framewright.studio.StoreAddress;
import org.framewright.studio.StudioSettings;

/** The password of a user of the store: never an argument, since other users see those. */
final class StorePassword {
  private StorePassword() {}

  /** From the environment; else a person at the terminal is asked, who does not see it. */
  static String of(Map<String, String> environment, StoreAddress store) throws CommandFailure {
    return of(environment, store, TlsPassword::typed);
  }

  static String of(
      Map<String, String> environment, StoreAddress store, Function<String, Optional<char[]>> ask)
      throws CommandFailure {
    var given = environment.get(StudioSettings.PASSWORD);
    if (given != null) {
      return given;
    }
    return ask.apply("Password of " + store.user() + " at " + store + ": ")
        .map(String::new)
        .orElseThrow(
            () ->
                CommandFailure.badInput(
                    "the password of " + store.user() + " is not known",
                    "Set the variable "
                        + StudioSettings.PASSWORD
                        + ", or start the command in a terminal."));
  }
}
