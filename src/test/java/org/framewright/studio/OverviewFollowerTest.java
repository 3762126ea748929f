package org.framewright.studio;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.framewright.base.Text;
import org.framewright.studio.OverviewFollower.Heard;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(30)
class OverviewFollowerTest {
  private static final Duration NEVER = Duration.ofHours(1);
  private static final Duration AT_ONCE = Duration.ofMillis(1);
  private static final Heard.Sets SETS = new Heard.Sets(new Overview(List.of()), Map.of());

  private final BlockingQueue<String> heard = new LinkedBlockingQueue<>();
  private final Queue<IOException> failures = new ArrayDeque<>();
  private OverviewFollower follower;
  private volatile Runnable hint = () -> {};

  /** A store that fails as was written down, then answers. */
  private final class Played implements StoreRounds.Visit<Heard.Sets> {
    @Override
    public Heard.Sets ask() throws IOException {
      synchronized (failures) {
        if (!failures.isEmpty()) {
          throw failures.poll();
        }
      }
      return SETS;
    }

    @Override
    public void close() {
      heard.add("closed");
    }
  }

  private void follow(StoreRounds.Way<Heard.Sets> way, Duration ask) {
    follower = new OverviewFollower(way, one -> heard.add(word(one)), ask).started();
  }

  private Optional<Played> played(Runnable news) {
    hint = news;
    return Optional.of(new Played());
  }

  private static String word(Heard heard) {
    return switch (heard) {
      case Heard.NoStore _ -> "no store";
      case Heard.Sets _ -> "sets";
      case Heard.Away(var why) -> why.what();
    };
  }

  private String next() throws InterruptedException {
    return heard.poll(20, TimeUnit.SECONDS);
  }

  @AfterEach
  void ended() {
    follower.close();
  }

  @Test
  void aHintIsAskedForAtOnceAndTheConnectionGoesWithThePage() throws Exception {
    follow(this::played, NEVER);
    assertThat(next()).isEqualTo("sets");
    hint.run();
    assertThat(next()).isEqualTo("sets");
    follower.close();
    assertThat(next()).isEqualTo("closed");
    assertThat(heard.poll(50, TimeUnit.MILLISECONDS)).isNull();
  }

  @Test
  void withoutHintsItIsAskedAgainAndAgain() throws Exception {
    follow(this::played, AT_ONCE);
    assertThat(List.of(next(), next(), next())).containsExactly("sets", "sets", "sets");
  }

  @Test
  void aStoreThatIsAwayIsTriedAgain() throws Exception {
    failures.add(new StoreException(Text.of("the store is not reached"), "store", Text.of("Wait")));
    follow(this::played, AT_ONCE);
    assertThat(List.of(next(), next(), next()))
        .containsExactly("closed", "the store is not reached", "sets");
  }

  @Test
  void aComputerWithoutAStoreIsLookedAtAgainSinceItMayJoin() throws Exception {
    var looks = new ArrayDeque<>(List.of("none"));
    follow(news -> looks.poll() == null ? played(news) : Optional.empty(), AT_ONCE);
    assertThat(List.of(next(), next())).containsExactly("no store", "sets");
  }
}
