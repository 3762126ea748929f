package org.framewright.share;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.job.Asked;
import org.framewright.job.Device;
import org.framewright.job.Job;
import org.framewright.job.Numbered;
import org.framewright.job.Receipt;
import org.framewright.live.LiveJob;
import org.framewright.live.ShownToClient;
import org.framewright.shotlist.SetupState;

/**
 * Keeps what people do on pages in the job: each event in its turn among those of the app, and
 * under the same checks, after it was looked at whether the device's role may do it.
 */
final class Ticks {
  /** A disk that is slower than this is told of; the page sends again. */
  private static final int PATIENCE_SECONDS = 30;

  /** What became of a request's events. */
  sealed interface Answer {
    /** The number of the last event of the device that is kept. */
    long last();

    /** All are kept. */
    record Kept(long last) implements Answer {}

    /** This one is not, nor what came behind it. */
    record Refused(long last, long number, Problem why) implements Answer {}

    /** Some are missing before it. */
    record Gap(long last) implements Answer {}

    /** Another event is kept under this number. */
    record Clash(long last, long number) implements Answer {}
  }

  private final LiveJob live;
  private final PictureTokens tokens;
  private final Map<String, Long> lasts = new ConcurrentHashMap<>();

  Ticks(LiveJob live, PictureTokens tokens) {
    this.live = live;
    this.tokens = tokens;
  }

  /** The number of the last event of a device that is kept; does not wait for whoever writes. */
  long last(String device) {
    return lasts.computeIfAbsent(device, id -> live.job().last(new Device(id)));
  }

  /**
   * Keeps a device's name as the first event of its log, if it has none.
   *
   * @throws IOException if it is not certain that it was kept
   */
  void name(String device, String name) throws IOException, InterruptedException {
    ask(
        job -> {
          var it = new Device(device);
          if (job.last(it) == 0) {
            kept(device, job.receive(it, new Numbered(1, job.now(), new Asked.Named(name))));
          }
          return true;
        });
  }

  /**
   * Keeps events in order, up to the first that cannot be.
   *
   * @throws IOException if it is not certain of one whether it was kept; the device sends it again
   */
  Answer receive(String device, Role role, List<RequestJson.Sent> events)
      throws IOException, InterruptedException {
    for (var event : events) {
      var receipt = ask(job -> kept(device, receive(job, new Device(device), role, event)));
      switch (receipt) {
        case Receipt.Kept _, Receipt.Had _ -> {}
        case Receipt.Gap(var last) -> {
          return new Answer.Gap(last);
        }
        case Receipt.Clash(var last) -> {
          return new Answer.Clash(last, event.number());
        }
        case Receipt.Refused(var last, var why) -> {
          return new Answer.Refused(last, event.number(), why);
        }
      }
    }
    return new Answer.Kept(last(device));
  }

  private Receipt kept(String device, Receipt receipt) {
    lasts.put(device, receipt.last());
    return receipt;
  }

  /** On the queue. */
  private Receipt receive(Job job, Device device, Role role, RequestJson.Sent sent)
      throws IOException {
    long last = job.last(device);
    // What is kept already is answered by its number alone: meanwhile the job has gone on, and a
    // sign-off that was kept would be one of a setup that is signed off.
    if (sent.number() == last + 1) {
      var forbidden = forbidden(job, role, sent.did());
      if (forbidden.isPresent()) {
        return new Receipt.Refused(last, forbidden.get());
      }
    }
    return switch (sent.did()) {
      case RequestJson.Did.Tick(var setup, var state, var details) ->
          state.isEmpty()
              ? new Receipt.Refused(last, unknown())
              : keep(job, device, sent, new Asked.Ticked(setup, state.get(), details));
      case RequestJson.Did.Comment(var setup, var picture, var text, var by) ->
          keep(job, device, sent, new Asked.Commented(setup, frames(picture), text, by));
      case RequestJson.Did.TakeBack(var of) -> keep(job, device, sent, new Asked.TakenBack(of));
      case RequestJson.Did.Other _ -> new Receipt.Refused(last, unknown());
    };
  }

  private static Receipt keep(Job job, Device device, RequestJson.Sent sent, Asked asked)
      throws IOException {
    return job.receive(device, new Numbered(sent.number(), sent.at(), asked));
  }

  private List<FrameId> frames(Optional<String> picture) {
    return picture
        .flatMap(token -> tokens.find(token, live.now().scan().frames()))
        .map(Frame::knownAs)
        .orElse(List.of());
  }

  /** What the role of a device does not allow it; nothing where it may. */
  private Optional<Problem> forbidden(Job job, Role role, RequestJson.Did did) {
    return switch (did) {
      case RequestJson.Did.Tick tick ->
          switch (role) {
            case ASSISTANT ->
                tick.state().equals(Optional.of(SetupState.SIGNED_OFF))
                    ? Optional.of(
                        new Problem(
                            Text.of("a sign-off is the client's"),
                            Text.of("Ask the client, or sign off at the computer.")))
                    : Optional.empty();
            case CLIENT -> forbiddenToClient(job, tick);
            case VIEWER -> Optional.of(nothing());
          };
      case RequestJson.Did.Comment _, RequestJson.Did.TakeBack _, RequestJson.Did.Other _ ->
          role == Role.VIEWER ? Optional.of(nothing()) : Optional.empty();
    };
  }

  private Optional<Problem> forbiddenToClient(Job job, RequestJson.Did.Tick tick) {
    if (!tick.state().equals(Optional.of(SetupState.SIGNED_OFF))) {
      return Optional.of(
          new Problem(
              Text.of("only the set ticks this"), Text.of("Tell the assistant what is needed.")));
    }
    var setup = job.shotList().setup(tick.setup());
    var shown = ShownToClient.of(live.now(), Optional.empty());
    var state = setup.map(one -> job.state().of(one.code()).state());
    boolean may =
        state.isEmpty() // The job says better what is wrong with it.
            || state.get() == SetupState.ON_SET
            || state.get() == SetupState.SHOT
            || (shown.canAgree() && shown.code().equals(setup.get().code()));
    return may
        ? Optional.empty()
        : Optional.of(
            new Problem(
                Text.of("setup {0} is not there to be signed off", setup.get().code()),
                Text.of("Look at what is shown now.")));
  }

  private static Problem nothing() {
    return new Problem(Text.of("this page only shows"), Text.of("Pair it anew as another role."));
  }

  private static Problem unknown() {
    return new Problem(
        Text.of("this computer does not know what that is"), Text.of("Load the page anew."));
  }

  /**
   * Asks the job in its turn.
   *
   * @throws IOException if the job's folder cannot be read or written, or takes too long
   */
  private <T> T ask(LiveJob.Change<T> change) throws IOException, InterruptedException {
    try {
      return live.ask(change).get(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (TimeoutException e) {
      throw new IOException("the job folder takes too long", e);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof IOException failure) {
        throw failure;
      }
      throw new IllegalStateException(e.getCause());
    }
  }
}
