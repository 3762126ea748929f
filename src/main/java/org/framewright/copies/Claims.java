package org.framewright.copies;

import java.io.IOException;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.FileProblems;
import org.framewright.base.Text;
import org.framewright.mhl.HashKind;
import org.framewright.mhl.MhlHistory;

/**
 * What the ASC MHL histories in a place say of its files. That a file is what they say proves
 * nothing; that it is not shows that it was changed, or that its disk fails.
 *
 * @param byName by the file's name below the place
 * @param faults what is wrong with the histories themselves, by the name of their chain
 */
record Claims(Map<String, MhlHistory.Claim> byName, Map<String, Text> faults) {
  private static final String CHAIN = MhlHistory.FOLDER + "/ascmhl_chain.xml";
  private static final int MOST_HISTORIES = 100;

  static Claims of(Listing listing) {
    var claims = new HashMap<String, MhlHistory.Claim>();
    var faults = new HashMap<String, Text>();
    // One further in has its files for itself.
    listing.files().stream()
        .map(Listed::name)
        .filter(Claims::isChain)
        .sorted(Comparator.comparingInt(String::length))
        .limit(MOST_HISTORIES)
        .forEach(
            name -> {
              var above = name.substring(0, name.length() - CHAIN.length());
              try {
                MhlHistory.read(listing.root().resolve(above))
                    .ifPresent(
                        history ->
                            history.claims().forEach((path, one) -> claims.put(above + path, one)));
              } catch (IOException e) {
                faults.put(
                    name,
                    Text.of("the ASC MHL there cannot be used: {0}", FileProblems.of(e).said()));
              }
            });
    return new Claims(claims, faults);
  }

  static boolean isChain(String name) {
    return name.equals(CHAIN) || name.endsWith("/" + CHAIN);
  }

  /** The hash by which a file can be compared with what is said of it. */
  Optional<HashKind> kind(Listed file) {
    return Optional.ofNullable(byName.get(file.name())).flatMap(MhlHistory.Claim::fastest);
  }

  /** How a file that was read contradicts what is said of it. */
  Optional<Text> fault(Listed file, Map<HashKind, String> hashes) {
    if (faults.containsKey(file.name())) {
      return Optional.of(faults.get(file.name()));
    }
    var claim = byName.get(file.name());
    if (claim == null) {
      return Optional.empty();
    }
    boolean otherSize = claim.size().isPresent() && claim.size().getAsLong() != file.size();
    boolean otherHash =
        hashes.entrySet().stream()
            .anyMatch(
                one ->
                    !claim
                        .hashes()
                        .getOrDefault(one.getKey(), one.getValue())
                        .equals(one.getValue()));
    return otherSize || otherHash
        ? Optional.of(Text.of("it is not what the ASC MHL {0} says of it", claim.list()))
        : Optional.empty();
  }
}
