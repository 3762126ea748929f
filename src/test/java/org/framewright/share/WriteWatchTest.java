package org.framewright.share;

import static org.framewright.AssertThat.assertThat;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class WriteWatchTest {
  private final AtomicLong nanos = new AtomicLong(7);
  private final WriteWatch watch = new WriteWatch(nanos::get);

  /** Whether a thread that does this is interrupted so long after it began to write. */
  private boolean interrupted(Duration after, boolean written) throws Exception {
    var began = new CountDownLatch(1);
    var looked = new CountDownLatch(1);
    var interrupted = new AtomicBoolean();
    var thread =
        Thread.startVirtualThread(
            () -> {
              try (var guard = watch.begin()) {
                guard.writing();
                if (written) {
                  guard.written();
                }
                began.countDown();
                looked.await();
              } catch (InterruptedException e) {
                interrupted.set(true);
              }
            });
    began.await();
    nanos.addAndGet(after.toNanos());
    watch.sweep();
    looked.countDown();
    thread.join();
    return interrupted.get() || thread.isInterrupted();
  }

  @Test
  void whoeverWaitsForAReaderTooLongIsEnded() throws Exception {
    assertThat(interrupted(Duration.ofSeconds(20).plusNanos(1), false)).isTrue();
  }

  @Test
  void whoeverWaitsForAReaderALittleIsNot() throws Exception {
    assertThat(interrupted(Duration.ofSeconds(20), false)).isFalse();
  }

  @Test
  void whoeverHasNothingToWriteIsNot() throws Exception {
    assertThat(interrupted(Duration.ofHours(8), true)).isFalse();
  }
}
