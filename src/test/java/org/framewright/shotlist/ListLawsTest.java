package org.framewright.shotlist;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class ListLawsTest {

  @Property(tries = 300)
  void aListReadsBackAsItWasWritten(@ForAll("lists") ShotList list) {
    var text = ListWriter.csv(list, setup -> new LinkedHashMap<>());
    var read = ListReader.read(text.getBytes(StandardCharsets.UTF_8), "list.csv");
    assertThat(read)
        .isInstanceOfSatisfying(
            ListReading.Understood.class, sound -> assertThat(sound.list()).isEqualTo(list));
  }

  @Property(tries = 2000)
  void anyBytesEndInAListOrInFaults(@ForAll byte[] bytes) {
    var read = ListReader.read(bytes, "list.csv");
    if (read instanceof ListReading.Refused refused) {
      assertThat(refused.faults()).isNotEmpty();
    }
  }

  @Property(tries = 1000)
  void anyTextBelowHeadingsEndsInAListOrInFaultsInsideTheFile(@ForAll String text) {
    var file = "Setup,Title,Views,Frames\n" + text;
    long lines = file.lines().count() + 1;
    if (ListReader.read(file.getBytes(StandardCharsets.UTF_8), "list.csv")
        instanceof ListReading.Refused refused) {
      assertThat(refused.faults())
          .isNotEmpty()
          .allSatisfy(fault -> assertThat((long) fault.line()).isBetween(0L, lines));
    }
  }

  /** The change between two lists, done to the first, makes the second. */
  @Property(tries = 500)
  void aChangeTellsAllThatDiffers(
      @ForAll("lists") ShotList before, @ForAll("lists") ShotList after) {
    var change = ListChange.between(before, after);
    var made = new ArrayList<>(before.setups());
    made.removeAll(change.removed());
    change.changed().forEach(changed -> made.set(made.indexOf(changed.before()), changed.after()));
    made.addAll(change.added());
    assertThat(Set.copyOf(made)).isEqualTo(Set.copyOf(after.setups()));
    assertThat(change.isEmpty()).isEqualTo(before.equals(after));
  }

  @Provide
  Arbitrary<ShotList> lists() {
    var text =
        Arbitraries.strings()
            .withChars("aB1 ,;\"'|é帽-.")
            .ofMaxLength(8)
            .map(one -> one.replaceAll("\\s+", " ").strip());
    var views =
        Combinators.combine(
                Arbitraries.of("F", "B", "D", "three quarter"),
                Arbitraries.integers().between(0, 12))
            .as((code, n) -> new View(code, n == 0 ? OptionalInt.empty() : OptionalInt.of(n)))
            .list()
            .ofMaxSize(3)
            .uniqueElements(View::code);
    var setups =
        Combinators.combine(
                Arbitraries.of("1", "2", "A-12", "a-3", "Look 7", "9,5", "x\"1"),
                text,
                views,
                Arbitraries.integers().between(0, 40),
                text)
            .as(
                (code, title, wanted, frames, rack) -> {
                  var columns = new LinkedHashMap<String, String>();
                  columns.put("Rack", rack);
                  return new Setup(
                      code,
                      title,
                      wanted,
                      frames == 0 ? OptionalInt.empty() : OptionalInt.of(frames),
                      columns);
                });
    return setups
        .list()
        .ofMinSize(1)
        .ofMaxSize(6)
        .uniqueElements(setup -> Setup.canonicalKey(setup.code()))
        .map(list -> new ShotList(List.copyOf(new LinkedHashSet<>(list))));
  }
}
