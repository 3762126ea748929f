package org.framewright.share;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.framewright.base.Text;
import org.framewright.day.DayHours;
import org.framewright.frames.Frame;
import org.framewright.job.Scanned;
import org.framewright.live.JobView;
import org.framewright.live.LiveJob;
import org.framewright.live.LostFolder;
import org.framewright.live.ShownToClient;
import org.framewright.shotlist.Setup;

/** A job for pages: its list, its latest frames, how its day goes. Safe from any thread. */
final class JobContent implements Content {
  private static final int BEATS_OF_A_LOOK = 5;
  private static final int BEATS_OF_A_RECKONING = 15;

  private final LiveJob live;
  private final Devices devices;
  private final Clock clock;
  private final DayHours hours;
  private final PictureTokens tokens;
  private final Pictures pictures = new Pictures();
  private final Codes codes;
  private final Folds folds;
  private final Ticks ticks;
  private final Moments moments;
  private final AutoCloseable following;
  private long beats;

  JobContent(LiveJob live, Devices devices, DayHours hours, Clock clock) {
    this.live = live;
    this.devices = devices;
    this.hours = hours;
    this.clock = clock;
    this.tokens = new PictureTokens(devices.pictureKey());
    this.codes = new Codes(live.job());
    this.folds = new Folds(live.job(), tokens, codes, this::isClient);
    this.ticks = new Ticks(live, tokens);
    this.moments = new Moments(live.now(), isLost(live.failures()));
    this.following =
        live.listen(
            new LiveJob.Listener() {
              @Override
              public void shown(JobView view) {
                moments.show(view);
              }

              @Override
              public void failing(List<Throwable> failures) {
                moments.lost(isLost(failures));
              }
            });
    moments.show(live.now()); // What came between the two.
  }

  private static boolean isLost(List<Throwable> failures) {
    return failures.stream().anyMatch(LostFolder.class::isInstance);
  }

  private boolean isClient(String station) {
    return devices.known(station).filter(one -> one.role() == Role.CLIENT).isPresent();
  }

  @Override
  public String name() {
    return moments.newest().view().name();
  }

  @Override
  public boolean allows(Role role, String path) {
    return switch (path) {
      case "/events" -> role != Role.VIEWER;
      case "/code" -> role == Role.ASSISTANT;
      default -> true;
    };
  }

  @Override
  public void named(String device, String name) throws IOException, InterruptedException {
    ticks.name(device, name);
  }

  @Override
  public long last(String device) {
    return ticks.last(device);
  }

  @Override
  public Hearing hearing(Devices.Known device, Function<Text, String> say) {
    return new JobHearing(moments, folds, device, say, () -> ticks.last(device.id()), clock);
  }

  @Override
  public void wake() {
    moments.wake();
  }

  @Override
  public Ticks.Answer receive(Devices.Known device, List<RequestJson.Sent> events)
      throws IOException, InterruptedException {
    return ticks.receive(device.id(), device.role(), events);
  }

  @Override
  public ObjectNode code(String typed) {
    var json = JsonNodeFactory.instance.objectNode();
    switch (codes.of(moments.newest().view().list()).find(typed)) {
      case Scanned.One(var setup) -> json.putArray("setups").add(setup.code());
      case Scanned.Several(var setups) -> {
        var array = json.putArray("setups");
        setups.stream().map(Setup::code).forEach(array::add);
      }
      case Scanned.StraySlate(var setup, var ofAnotherJob) ->
          json.put("stray", setup).put("ofAnotherJob", ofAnotherJob);
      case Scanned.Unknown(var code, var checked) ->
          json.put("unknown", code).put("checked", checked);
    }
    return json;
  }

  @Override
  public Optional<byte[]> picture(Role role, String token, int edge)
      throws IOException, InterruptedException {
    var view = moments.newest().view();
    var frames =
        switch (role) {
          case ASSISTANT -> view.latest().values().stream().flatMap(List::stream);
          case CLIENT ->
              view
                  .latest()
                  .getOrDefault(ShownToClient.of(view, Optional.empty()).code(), List.of())
                  .stream();
          case VIEWER -> Stream.<Frame>empty();
        };
    var frame = frames.filter(one -> tokens.of(one.id()).equals(token)).findFirst();
    return frame.isEmpty() ? Optional.empty() : pictures.of(frame.get(), edge);
  }

  @Override
  public void beat(boolean watched) {
    if (!watched) {
      beats = 0; // Nobody looks; whoever comes is told at the next.
      return;
    }
    if (beats % BEATS_OF_A_LOOK == 0) {
      boolean lost = live.lookWhetherLost();
      if (!lost && moments.newest().lost()) {
        live.refresh(); // It is back, which only reading it finds out.
      }
    }
    if (beats % BEATS_OF_A_RECKONING == 0) {
      moments.show(DayNow.of(live.job(), moments.newest().view(), hours));
    }
    beats++;
  }

  @Override
  public void close() {
    try {
      following.close();
    } catch (Exception e) {
      throw new IllegalStateException(e); // It takes us off a list.
    }
  }
}
