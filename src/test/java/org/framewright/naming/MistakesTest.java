package org.framewright.naming;

import static org.framewright.AssertThat.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One mistake that a person makes in a sound convention, and the one finding that comes of it. */
class MistakesTest {
  private static final String SOUND =
      """
      convention: Test
      fields:
        day:     {type: date, pattern: uuuu-MM-dd}
        client:  {type: code, length: 2-6}
        setup:   {type: number, digits: 3}
        view:    {type: choice, values: {F: front, B: back}}
        take:    {type: counter, digits: 4, restarts: setup}
        version: {type: number, digits: 2}
      names:
        job:       "{day}_{client}"
        frame:     "{day}_{client}_{setup}[_{view}]_{take}"
        select:    "{client}_{setup}[_{view}]_{take}"
        retouched: "{select}_v{version}"
      folders:
        frames: 01_frames
      """;

  private static List<Finding> findings(String yaml) {
    return switch (Convention.parse(yaml, "my.yaml")) {
      case Convention.Parsed.Sound(Convention convention) -> convention.check(0);
      case Convention.Parsed.Faulty(List<Finding> findings) -> findings;
    };
  }

  private static Finding finding(String yaml) {
    assertThat(findings(yaml)).hasSize(1);
    return findings(yaml).getFirst();
  }

  @Test
  void withoutAMistakeThereIsNoFinding() {
    assertThat(findings(SOUND)).isEmpty();
  }

  /** What is written, what is written instead, and line, column, message and remedy of it. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        // YAML
        "` client:`|`\tclient:`|4|2|a tab stands here|two spaces",
        "`client:  {`|`client  {`|4|9|the colon behind “client” is missing|Write client: and",
        "`fields:`|`fields`|2|7|the colon behind “fields” is missing|Write fields: and",
        "`type: code`|`type:code`|4|13|after “type:” there is no space|Write type: code.",
        "`convention: Test`|`convention: Test: one`|1|17|a colon and a space end a key|in quotes",
        "`_{client}\"`|`_{client}`|10|14|this quotation mark is not closed|Close it with \"",
        "`01_frames`|`'01_frames`|15|11|this quotation mark is not closed|Close it with '",
        "`\"{day}_{client}\"`|`{day}_{client}`|10|14|a pattern that begins with { needs quotes|\"{day}_{client}\"",
        "`\"{client}_{setup}[_`|`[{client}_]{setup}[_`|12|14|a pattern that begins with [ needs quotes|Write it as",
        "`digits: 3}`|`digits: 3`|5|12|this { is not closed|Close it with }",
        "`type: date, `|`type: date `|3|31|a comma or a } is missing here|Put a comma",
        "`  setup: `|`   setup: `|5|4|begins in another column|Begin it in the same column",
        "`type: code`|`type: %code`|4|19|cannot begin with “%”|in quotes",
        "`convention: Test`|`convention: \"Te\\st\"`|1|17|begins an escape|single quotes",
        "`convention: Test`|`convention: - Test`|1|13|a list cannot begin here|line of its own",
        "`convention: Test`|`convention: > Test`|1|15|a text of several lines|in quotes",
        // The language
        "`day:     {type: date`|`day:     {type: dat`|3|19|“dat” is not known here|Is “date” meant?",
        "`uuuu-MM-dd`|`YYYY-MM-dd`|3|34|“YYYY” is not a date letter|Write the year as uuuu.",
        "`uuuu-MM-dd`|`uuuu-MM-DD`|3|42|“DD” is not a date letter|as dd.",
        "`uuuu-MM-dd`|`dd-MM-uuuu`|3|12|is earlier than|Write year, month and day in this order",
        "`length: 2-6`|`length: 6-2`|4|33|begins with its larger end|Write 2-6.",
        "`{type: code, length: 2-6}`|``|4|10|declared by its type|{type: words}",
        "`{F: front, B: back}`|`F, B`|6|35|are a list|Write values: [F, B].",
        "`restarts: setup`|`restarts: look`|7|12|restarts on “look”|such as day, client, setup",
        "`  take: `|`  setup:  {type: code}\n  take: `|7|3|“setup” is given twice|Keep one",
        "`{client}_{setup}[_{view}]_{take}\"\n  retouched`|`{cleint}_{setup}[_{view}]_{take}\"\n  retouched`|12|15|there is no field “cleint”|Is {client} meant?",
        "`\"{day}_{client}\"`|`\"{{day}}_{client}\"`|10|15|one pair of braces|Write {day}.",
        "`\"{day}_{client}\"`|`\"%day%_{client}\"`|10|15|“%day%” in it is shown as it is written|Write {day}.",
        "`\"{day}_{client}\"`|`\"{day}/{client}\"`|10|20|cannot contain a /|under folders:",
        "`\"{day}_{client}\"`|`\"{day}:{client}\"`|10|15|has one of|another character",
        "`frames: 01_frames`|`frame: 01_frames`|15|3|the folder for frames is missing|Is frame: meant?",
        "`frames: 01_frames`|`paper: 09_paper`|15|3|the folder for frames is missing|Add frames: 01_frames",
        "`folders:\n  frames: 01_frames`|`folders: [01_frames]`|14|10|each folder of a job has a role|frames: 01_frames.",
        "`frames: 01_frames`|`frames: \"01: frames\"`|15|11|has one of|another character",
        // What a job needs
        "`  job: `|`  Job: `|10|15|there is no names.job|Is Job: meant? Call it job.",
        "`  retouched: \"{select}_v{version}\"`|`  retouched: \"{client}_v{version}\"`|13|15|setup, view, take are not in it|Begin it with {select}",
      })
  void eachMistakeHasOneFindingWithItsPlaceAndRemedy(
      String written, String instead, int line, int column, String message, String remedy) {
    int at = SOUND.indexOf(written);
    var yaml = SOUND.substring(0, at) + instead + SOUND.substring(at + written.length());
    assertThat(yaml).isNotEqualTo(SOUND);
    var finding = finding(yaml);
    assertThat(finding.message()).contains(message);
    assertThat(finding.remedy().orElseThrow()).contains(remedy);
    assertThat(List.of(finding.line(), finding.column())).containsExactly(line, column);
  }

  @Test
  void aTextThatIsNoConventionIsOneFinding() {
    var finding = finding("Hello, this is how I name: 20260301_NORD_001\n");
    assertThat(finding.message()).isEqualTo("convention: my.yaml is not a convention");
    assertThat(finding.remedy()).hasValueSatisfying(r -> assertThat(r).contains("convention:"));
  }
}
