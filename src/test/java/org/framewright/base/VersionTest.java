package org.framewright.base;

import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class VersionTest {
  private static final Pattern OF_THE_POM =
      Pattern.compile("<artifactId>framewright</artifactId>\\s*<version>([^<]+)</version>");

  @Test
  void itIsTheOneOfThePom() throws Exception {
    assumeFalse(
        Version.current().equals("unknown"), "No build has filled the version in; Maven does.");
    var pom = OF_THE_POM.matcher(Files.readString(Path.of("pom.xml")));
    assertThat(pom.find()).isTrue();
    assertThat(Version.current()).isEqualTo(pom.group(1));
  }

  @Test
  void itIsNeverTheNameOfAVariable() {
    assertThat(Version.current()).isNotEmpty().doesNotContain("$");
  }
}
