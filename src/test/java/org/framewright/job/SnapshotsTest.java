package org.framewright.job;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.Test;

/** What a fold hands out stays as it was, though it shares most of it with the next one. */
class SnapshotsTest {
  @Property(tries = 200)
  void aListAndAMapAreWhatTheyWereWhenTheyWereHandedOut(@ForAll long seed) {
    var random = new Random(seed);
    var list = new GrowingList<Integer>();
    var map = new GrowingMap<Integer, Integer>();
    var plainList = new ArrayList<Integer>();
    var plainMap = new LinkedHashMap<Integer, Integer>();
    var snapshots = new LinkedHashMap<Object, Object>();
    for (int i = 0; i < 100; i++) {
      switch (random.nextInt(8)) {
        case 0, 1, 2, 3 -> {
          int key = random.nextInt(60);
          list.add(key);
          plainList.add(key);
          map.putIfAbsent(key, i);
          plainMap.putIfAbsent(key, i);
        }
        case 4 -> {
          int size = random.nextInt(plainList.size() + 1);
          list.cut(size);
          plainList.subList(size, plainList.size()).clear();
        }
        case 5 -> {
          int size = random.nextInt(plainMap.size() + 1);
          map.cut(size);
          new ArrayList<>(plainMap.keySet())
              .subList(size, plainMap.size())
              .forEach(plainMap::remove);
        }
        default -> {
          snapshots.put(new Kept(list.snapshot()), List.copyOf(plainList));
          var longer = new ArrayList<>(plainList);
          longer.add(-1);
          snapshots.put(new Kept(list.snapshotWith(-1)), longer);
          snapshots.put(new Kept(map.snapshot()), new LinkedHashMap<>(plainMap));
        }
      }
      assertThat(list.size()).isEqualTo(plainList.size());
      assertThat(map.size()).isEqualTo(plainMap.size());
    }
    snapshots.forEach(
        (snapshot, expected) -> {
          var kept = ((Kept) snapshot).value();
          assertThat(kept).isEqualTo(expected);
          if (kept instanceof Map<?, ?> shown) {
            assertThat(List.copyOf(shown.keySet()))
                .isEqualTo(List.copyOf(((Map<?, ?>) expected).keySet()));
            for (int key = 0; key < 60; key++) {
              assertThat(shown.containsKey(key)).isEqualTo(((Map<?, ?>) expected).containsKey(key));
              assertThat((Object) shown.get(key)).isEqualTo(((Map<?, ?>) expected).get(key));
            }
          }
        });
  }

  /** Told apart by identity. */
  private static final class Kept {
    private final Object value;

    Kept(Object value) {
      this.value = value;
    }

    Object value() {
      return value;
    }
  }

  @Test
  void handOutTheSameWhileNothingChanged() {
    var list = new GrowingList<String>();
    list.add("a");
    assertThat(list.snapshot()).isSameAs(list.snapshot());
    var map = new GrowingMap<String, String>();
    map.putIfAbsent("a", "b");
    assertThat(map.snapshot()).isSameAs(map.snapshot());
  }

  @Test
  void handOutWhatNobodyCanChange() {
    var list = new GrowingList<String>();
    list.add("a");
    assertThatThrownBy(() -> list.snapshot().set(0, "b"))
        .isInstanceOf(UnsupportedOperationException.class);
    assertThatThrownBy(() -> list.snapshot().get(1)).isInstanceOf(IndexOutOfBoundsException.class);
    assertThatThrownBy(() -> list.snapshotWith("b").get(2))
        .isInstanceOf(IndexOutOfBoundsException.class);
    var map = new GrowingMap<String, String>();
    map.putIfAbsent("a", "b");
    assertThatThrownBy(() -> map.snapshot().entrySet().iterator().next().setValue("c"))
        .isInstanceOf(UnsupportedOperationException.class);
    assertThatThrownBy(() -> map.snapshot().remove("a"))
        .isInstanceOf(UnsupportedOperationException.class);
  }

  private static SetupStatus status(SetupState state) {
    return new SetupStatus(
        state,
        Optional.of(Instant.EPOCH),
        Optional.of("Ana"),
        Optional.of(Instant.EPOCH),
        Optional.empty(),
        false);
  }

  private static final ListIndex INDEX =
      new ListIndex(new ShotList(List.of(new Setup("A-1", "Coat"), new Setup("002", "Hat"))));

  private static Statuses statuses() {
    return Statuses.of(
        INDEX, new SetupStatus[] {status(SetupState.SHOT), status(SetupState.PICKUP)});
  }

  @Test
  void aListsStatusesAreAMapInItsOrder() {
    var statuses = statuses();
    assertThat(statuses.keySet()).containsExactly("A-1", "002");
    assertThat(statuses.reversed().keySet()).containsExactly("002", "A-1");
    assertThat(statuses.get("002").state()).isEqualTo(SetupState.PICKUP);
    assertThat(statuses).as("codes as the list has them").doesNotContainKeys("2", "a-1", "x");
    Object noCode = 7;
    assertThat(statuses.get(noCode)).isNull();
    assertThat(statuses).hasSize(2);
    assertThat(statuses)
        .isEqualTo(Map.of("A-1", status(SetupState.SHOT), "002", status(SetupState.PICKUP)));
    assertThatThrownBy(() -> statuses.put("A-1", status(SetupState.SHOT)))
        .isInstanceOf(UnsupportedOperationException.class);
    assertThatThrownBy(() -> statuses.reversed().clear())
        .isInstanceOf(UnsupportedOperationException.class);
  }

  @Test
  void changedStatusesLeaveTheOthersAsTheyWere() {
    var statuses = statuses();
    var changed = statuses.with(Map.of(1, status(SetupState.DROPPED)));
    assertThat(changed.get("002").state()).isEqualTo(SetupState.DROPPED);
    assertThat(changed.get("A-1").state()).isEqualTo(SetupState.SHOT);
    assertThat(statuses.get("002").state()).isEqualTo(SetupState.PICKUP);
    assertThat(statuses.with(Map.of(1, status(SetupState.PICKUP)))).isSameAs(statuses);
  }

  @Test
  void changesStatusesByCodeInAnyMap() {
    var plain = new LinkedHashMap<>(statuses());
    for (var all : List.of(statuses(), plain)) {
      var changed = Statuses.changed(all, Set.of("002", "7"), SetupStatus::changed);
      assertThat(changed.keySet()).containsExactly("A-1", "002");
      assertThat(changed.get("002").changedSinceSignOff()).isTrue();
      assertThat(changed.get("A-1").changedSinceSignOff()).isFalse();
      assertThat(all.get("002").changedSinceSignOff()).isFalse();
      assertThat(Statuses.changed(all, Set.of(), SetupStatus::changed)).isSameAs(all);
      assertThatThrownBy(changed::clear).isInstanceOf(UnsupportedOperationException.class);
    }
  }

  @Test
  void findsSetupsByWhatPeopleCallThem() {
    assertThat(INDEX.setup("a-01")).contains(new Setup("A-1", "Coat"));
    assertThat(INDEX.setup("2")).contains(new Setup("002", "Hat"));
    assertThat(INDEX.setup("3")).isEmpty();
    assertThat(INDEX.code("2")).contains("002");
    assertThat(INDEX.code("3")).isEmpty();
    assertThat(INDEX)
        .isEqualTo(new ListIndex(INDEX.list()))
        .hasSameHashCodeAs(new ListIndex(INDEX.list()));
    assertThat(INDEX).isNotEqualTo(new ListIndex(ShotList.empty()));
  }
}
