package org.framewright.ui.look;

import static org.framewright.AssertThat.assertThat;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;

class PictureLoaderTest {
  /** Work that waits until the test lets it go. */
  private static final class Held implements Executor {
    private final ArrayDeque<Runnable> waiting = new ArrayDeque<>();

    @Override
    public void execute(Runnable work) {
      waiting.add(work);
    }

    int size() {
      return waiting.size();
    }

    void letGo() {
      while (!waiting.isEmpty()) {
        waiting.poll().run();
      }
    }
  }

  private final Held background = new Held();
  private final Held ui = new Held();
  private final List<String> read = new ArrayList<>();
  private final List<String> shown = new ArrayList<>();
  private final PictureLoader<String, String> loader =
      new PictureLoader<>(
          background,
          ui,
          key -> {
            read.add(key);
            if (key.startsWith("broken")) {
              throw new StackOverflowError();
            }
            return key.startsWith("bad") ? Optional.empty() : Optional.of("picture of " + key);
          },
          picture -> 10,
          100);

  /** Each one is another tile, as on the screen. */
  private final class Tile implements Consumer<Optional<String>> {
    @Override
    public void accept(Optional<String> picture) {
      shown.add(picture.orElse("nothing"));
    }
  }

  @Test
  void anErrorOfTheReaderIsAPictureThatIsNotThere() {
    loader.want("a", new Tile());
    loader.want("broken", new Tile());
    background.letGo();
    ui.letGo();
    assertThat(shown).containsExactlyInAnyOrder("nothing", "picture of a");
    loader.want("b", new Tile());
    background.letGo();
    ui.letGo();
    assertThat(shown).as("the next one is read all the same").contains("picture of b");
  }

  @Test
  void clearedItReadsNothingMoreAndKeepsNothing() {
    loader.want("a", new Tile());
    background.letGo();
    ui.letGo();
    loader.want("b", new Tile());
    loader.clear();
    background.letGo();
    ui.letGo();
    assertThat(read).containsExactly("a");
    assertThat(shown).containsExactly("picture of a");
    assertThat(loader.want("a", new Tile())).isEmpty();
  }

  @Test
  void readsWhatWasAskedForLastFirst() {
    loader.want("a", new Tile());
    loader.want("b", new Tile());
    loader.want("c", new Tile());
    background.letGo();
    assertThat(read).containsExactly("c", "b", "a");
  }

  @Test
  void neverReadsWhatScrolledAway() {
    var gone = new Tile();
    loader.want("gone", gone);
    loader.want("here", new Tile());
    loader.drop("gone", gone);
    background.letGo();
    ui.letGo();
    assertThat(read).containsExactly("here");
    assertThat(shown).containsExactly("picture of here");
  }

  @Test
  void stillReadsWhatASecondTileWants() {
    var gone = new Tile();
    loader.want("a", gone);
    loader.want("a", new Tile());
    loader.drop("a", gone);
    background.letGo();
    ui.letGo();
    assertThat(read).containsExactly("a");
    assertThat(shown).containsExactly("picture of a");
  }

  @Test
  void hasOneDeliveryWaitingHoweverManyPicturesAreReady() {
    for (var i = 0; i < 50; i++) {
      loader.want("frame " + i, new Tile());
    }
    background.letGo();
    assertThat(ui.size()).isEqualTo(1);
    ui.letGo();
    assertThat(shown).hasSize(50);
  }

  @Test
  void givesAPictureAtHandAtOnce() {
    loader.want("a", new Tile());
    background.letGo();
    ui.letGo();
    assertThat(loader.want("a", new Tile())).contains(Optional.of("picture of a"));
    assertThat(read).containsExactly("a");
  }

  @Test
  void remembersThatAFrameHasNoPicture() {
    loader.want("bad", new Tile());
    background.letGo();
    ui.letGo();
    assertThat(shown).containsExactly("nothing");
    assertThat(loader.want("bad", new Tile())).contains(Optional.empty());
  }

  @Test
  void keepsNoMoreThanItMayWeigh() {
    loader.want("first", new Tile());
    background.letGo();
    ui.letGo();
    for (var i = 0; i < 10; i++) {
      loader.want("frame " + i, new Tile());
    }
    background.letGo();
    ui.letGo();
    assertThat(loader.want("first", new Tile())).isEmpty();
    assertThat(loader.want("frame 9", new Tile())).isPresent();
    assertThat(loader.want("frame 0", new Tile())).isPresent();
  }
}
