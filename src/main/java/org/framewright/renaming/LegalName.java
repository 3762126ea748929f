package org.framewright.renaming;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.framewright.base.Text;

/**
 * Whether a name is legal on a volume. Lengths: 255 bytes on Linux file systems (measured), 255
 * UTF-16 units on NTFS and exFAT (MS-FSCC 2.1.5.2). Characters and reserved names: Microsoft,
 * "Naming Files, Paths, and Namespaces".
 */
final class LegalName {
  private static final int LONGEST = 255;
  private static final Pattern RESERVED =
      Pattern.compile("(con|prn|aux|nul|com[1-9¹²³]|lpt[1-9¹²³])(\\..*)?");

  private LegalName() {}

  /** Why the name is illegal there; empty if it is legal. */
  static Optional<Text> trouble(String name, Traits volume) {
    if (name.isEmpty() || name.equals(".") || name.equals("..")) {
      return Optional.of(Text.of("\"{0}\" is not a file name", name));
    }
    if (hasLoneSurrogate(name)) {
      return Optional.of(Text.of("the name holds half of a character (an unpaired surrogate)"));
    }
    // UTF-8 takes at most three bytes for a UTF-16 unit, so short names need no count.
    int length =
        volume.windowsNames() || 3 * name.length() <= LONGEST
            ? name.length()
            : name.getBytes(StandardCharsets.UTF_8).length;
    if (length > LONGEST) {
      return Optional.of(
          Text.of(
              volume.windowsNames()
                  ? "the name is {0} UTF-16 units long; 255 is the most here"
                  : "the name is {0} bytes long; 255 is the most here",
              length));
    }
    return volume.windowsNames() ? windowsTrouble(name) : Optional.empty();
  }

  private static Optional<Text> windowsTrouble(String name) {
    for (int i = 0; i < name.length(); i++) {
      char c = name.charAt(i);
      if (c < 32) {
        return Optional.of(
            Text.of("the name holds a control character, which this volume forbids"));
      }
      if ("<>:\"/\\|?*".indexOf(c) >= 0) {
        return Optional.of(Text.of("the name holds {0}, which this volume forbids", c));
      }
    }
    if (name.endsWith(".") || name.endsWith(" ")) {
      return Optional.of(Text.of("the name ends in a dot or a space, which this volume drops"));
    }
    if (RESERVED.matcher(name.toLowerCase(Locale.ROOT)).matches()) {
      return Optional.of(Text.of("the name is reserved for a device on Windows"));
    }
    return Optional.empty();
  }

  private static boolean hasLoneSurrogate(String name) {
    for (int i = 0; i < name.length(); i++) {
      char c = name.charAt(i);
      if (Character.isLowSurrogate(c)) {
        return true;
      }
      if (Character.isHighSurrogate(c)) {
        i++;
        if (i == name.length() || !Character.isLowSurrogate(name.charAt(i))) {
          return true;
        }
      }
    }
    return false;
  }
}
