package org.framewright.ready;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.framewright.base.Problem;
import org.framewright.job.JobException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ChecklistTest {
  private static final Checklists LISTS = new Checklists(Path.of("templates/checklists"));

  private static Checklist sound(String yaml) throws Exception {
    return Checklists.sound(Checklist.parse(yaml, "c.yaml"));
  }

  private static List<String> faults(String yaml) {
    return switch (Checklist.parse(yaml, "c.yaml")) {
      case Checklist.Parsed.Sound _ -> List.of();
      case Checklist.Parsed.Faulty(var problems) ->
          problems.stream().map(Problem::sentence).toList();
    };
  }

  @Test
  void thoseThatComeAlongAreSoundAndInThreeLanguages() throws Exception {
    assertThat(LISTS.names()).containsExactly("interiors", "outdoors", "products", "studio");
    for (var name : LISTS.names()) {
      var list = Checklists.sound(Checklist.read(LISTS.folder().resolve(name + ".yaml")));
      assertThat(list.morning().keySet()).contains("spare-cable", "strain-relief", "cables");
      assertThat(list.morning().get("cables").caution()).isTrue();
      assertThat(list.evening().keySet()).contains("packed");
      for (var wrap : new boolean[] {false, true}) {
        list.items(wrap)
            .forEach(
                (id, item) -> {
                  assertThat(item.text(Locale.GERMAN)).as(id).isNotEqualTo(item.text());
                  assertThat(item.text(Locale.FRENCH)).as(id).isNotEqualTo(item.text());
                  assertThat(item.text(Locale.UK)).as(id).isEqualTo(item.text());
                });
      }
      assertThat(Files.readString(LISTS.folder().resolve(name + ".yaml")))
          .contains("common practice, no source");
    }
  }

  @Test
  void anItemIsATextOrACautionAndKeepsItsPlace() throws Exception {
    var list =
        sound(
            """
            checklist: Mine
            morning:
              tea: There is tea
              lamps: {caution: Lamps are hot, de: Leuchten sind heiß}
            evening:
              packed: {text: All is packed}
            """);
    assertThat(List.copyOf(list.morning().keySet())).isEqualTo(List.of("tea", "lamps"));
    assertThat(list.morning().get("lamps").caution()).isTrue();
    assertThat(list.morning().get("lamps").text(Locale.GERMANY)).isEqualTo("Leuchten sind heiß");
    assertThat(list.items(true).get("packed").text()).isEqualTo("All is packed");
  }

  @Test
  void everyFaultIsToldAtOnceWithItsPlace() {
    assertThat(
            faults(
                """
                checklist: Mine
                mornings:
                  x: y
                morning:
                  Tea Time: There is tea
                  lamps: {text: a, caution: b}
                  tea: There is tea
                  tea: There is more tea
                  cups: []
                evening:
                  lamps: They are cold
                """))
        .isEqualTo(
            List.of(
                "c.yaml, line 2, column 1: “mornings” has no meaning here",
                "c.yaml, line 5, column 3: “Tea Time” is no name of an item",
                "c.yaml, line 6, column 10: an item has either a text or a caution",
                "c.yaml, line 8, column 3: “tea” is given twice",
                "c.yaml, line 9, column 9: a text should stand here",
                "c.yaml, line 11, column 3: “lamps” is an item of the morning, too"));
    assertThat(faults("tea: yes"))
        .isEqualTo(List.of("c.yaml, line 1, column 1: this is no checklist"));
    assertThat(faults("")).isEqualTo(List.of("c.yaml, line 1, column 1: this is no checklist"));
    assertThat(faults("checklist: [Mine]").size()).isEqualTo(1);
    assertThat(faults("checklist: Mine\nmorning: tea").size()).isEqualTo(1);
    assertThat(faults("checklist: Mine\nmorning:\n\ttea: x").size()).isEqualTo(1);
  }

  @Test
  void itIsCopiedIntoTheJobOnceAndAPersonsChangesStay(@TempDir Path folder) throws Exception {
    var job = ReadyScene.job(folder);
    assertThat(Checklists.of(job)).isEmpty();
    LISTS.choose(job, "studio");
    var file = job.folder().resolve("checklist.yaml");
    assertThat(Files.readString(file))
        .isEqualTo(Files.readString(Path.of("templates/checklists/studio.yaml")));
    var changed = "checklist: Studio\nmorning: {tea: There is tea}\n";
    Files.writeString(file, changed);
    var left = job.folder().resolve(".checklist.yaml.0123456789ab.part");
    Files.writeString(left, "what a kill left");
    LISTS.choose(job, "studio");
    assertThat(left).doesNotExist();
    assertThat(Files.readString(file)).isEqualTo(changed);
    assertThatThrownBy(() -> LISTS.choose(job, "outdoors"))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("has a checklist already: Studio");
    assertThatThrownBy(() -> LISTS.choose(job, "../studio"))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("there is no checklist");
    assertThat(Files.readString(file)).isEqualTo(changed);
  }
}
