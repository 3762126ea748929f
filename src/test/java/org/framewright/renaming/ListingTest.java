package org.framewright.renaming;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.framewright.base.NameKey;

class ListingTest {
  /** Few letters, so that many names are one on some disk: case, composed and decomposed, ß. */
  @Provide
  Arbitrary<String> name() {
    return Arbitraries.of("a", "A", "é", "e\u0301", "É", "ß", "ss", "SS", "1")
        .list()
        .ofMinSize(1)
        .ofMaxSize(3)
        .map(letters -> String.join("", letters));
  }

  @Provide
  Arbitrary<List<String>> folder() {
    return name().list().uniqueElements().ofMaxSize(60);
  }

  @Property(tries = 500)
  void findsExactlyTheNamesThatHaveTheSameKey(
      @ForAll("folder") List<String> names, @ForAll("name") String wanted) {
    var listing = new Listing(names.stream().map(Path::of).toList());
    var alike = new ArrayList<String>();
    for (int i = listing.alike(Path.of(wanted)); i != Listing.NONE; i = listing.alikeAfter(i)) {
      alike.add(listing.name(i).toString());
    }
    var key = NameKey.of(wanted);
    assertThat(alike)
        .containsExactlyInAnyOrderElementsOf(
            names.stream().filter(name -> NameKey.of(name).equals(key)).toList());
  }

  @Property(tries = 500)
  void saysSpellingsApart(@ForAll("folder") List<String> names, @ForAll("name") String wanted) {
    var listing = new Listing(names.stream().map(Path::of).toList());
    assertThat(listing.exactly(Path.of(wanted))).isEqualTo(names.indexOf(wanted));
  }

  @Property(tries = 20)
  void findsEveryNameOfALargeFolder(@ForAll int seed) {
    var names = IntStream.range(0, 3_000).mapToObj(i -> Path.of("F_" + seed + "_" + i)).toList();
    var listing = new Listing(names);
    assertThat(names.stream().map(listing::exactly).toList())
        .isEqualTo(IntStream.range(0, 3_000).boxed().toList());
  }
}
