package org.framewright.studio;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.framewright.base.Text;
import org.framewright.job.JobMirror;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(30)
class SetFollowerTest {
  private static final Duration NEVER = Duration.ofHours(1);
  private static final Duration AT_ONCE = Duration.ofMillis(1);

  private final BlockingQueue<String> heard = new LinkedBlockingQueue<>();
  private final Queue<Object> answers = new ArrayDeque<>();
  private SetFollower follower;
  private volatile Runnable hint = () -> {};

  private final SetFollower.Listener listener =
      new SetFollower.Listener() {
        @Override
        public void brought() {
          heard.add("brought");
        }

        @Override
        public void told(List<Text> told) {
          heard.add("told " + told.stream().map(Text::english).toList());
        }

        @Override
        public void away(StoreException why) {
          heard.add("away: " + why.problem().what());
        }

        @Override
        public void reached() {
          heard.add("reached");
        }
      };

  /** A store that answers as was written down; after the last answer it has nothing new. */
  private final class Played implements StoreRounds.Visit<SetFollower.Exchange> {
    private List<Text> told = List.of();

    @Override
    public SetFollower.Exchange ask() throws IOException {
      Object answer;
      synchronized (answers) {
        answer = answers.poll();
      }
      heard.add("asked");
      return switch (answer) {
        case null -> exchange(0);
        case IOException failure -> throw failure;
        case Text text -> {
          told = List.of(text);
          yield exchange(0);
        }
        default -> exchange((Integer) answer);
      };
    }

    private SetFollower.Exchange exchange(int brought) {
      return new SetFollower.Exchange(new JobMirror.Exchanged(0, brought), told);
    }

    @Override
    public void close() {
      heard.add("closed");
    }
  }

  private void follow(Duration ask, Duration later, Object... played) {
    answers.addAll(List.of(played));
    follower =
        new SetFollower(
                news -> {
                  hint = news;
                  return Optional.of(new Played());
                },
                listener,
                ask,
                later)
            .started();
  }

  @AfterEach
  void ended() {
    if (follower != null) {
      follower.close();
    }
  }

  private String next() throws InterruptedException {
    return heard.poll(20, TimeUnit.SECONDS);
  }

  private static StoreException away() {
    return new StoreException(Text.of("the store is not reached"), "store", Text.of("Wait."));
  }

  @Test
  void whatComesFromOthersIsSaid() throws Exception {
    follow(NEVER, NEVER, 3);
    assertThat(next()).isEqualTo("asked");
    assertThat(next()).isEqualTo("brought");
  }

  @Test
  void aChangeHereAndAHintAreAskedForAtOnce() throws Exception {
    follow(NEVER, NEVER);
    assertThat(next()).isEqualTo("asked");
    follower.changed();
    assertThat(next()).isEqualTo("asked");
    hint.run();
    assertThat(next()).isEqualTo("asked");
  }

  @Test
  void aStoreThatIsAwayIsSaidOnceAndTriedAgain() throws Exception {
    follow(NEVER, AT_ONCE, away(), away(), 0);
    assertThat(List.of(next(), next(), next()))
        .containsExactly("asked", "closed", "away: the store is not reached");
    assertThat(List.of(next(), next())).containsExactly("asked", "closed");
    assertThat(List.of(next(), next())).containsExactly("asked", "reached");
  }

  @Test
  void whatAPersonMustDecideIsToldUntilItIsOther() throws Exception {
    follow(NEVER, NEVER, Text.of("two computers"));
    assertThat(List.of(next(), next())).containsExactly("asked", "told [two computers]");
    follower.changed();
    assertThat(next()).isEqualTo("asked");
    follower.changed();
    assertThat(next()).isEqualTo("asked");
  }

  @Test
  void aFolderThatCannotBeReadIsLookedAtAgain() throws Exception {
    follow(NEVER, AT_ONCE, new IOException("unplugged"), 1);
    assertThat(List.of(next(), next(), next(), next()))
        .containsExactly("asked", "closed", "asked", "brought");
  }

  @Test
  void closedItLeavesTheStoreAlone() throws Exception {
    follow(NEVER, NEVER);
    assertThat(next()).isEqualTo("asked");
    follower.close();
    assertThat(next()).isEqualTo("closed");
    assertThat(heard.poll(50, TimeUnit.MILLISECONDS)).isNull();
  }
}
