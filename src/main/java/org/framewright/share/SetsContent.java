package org.framewright.share;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.framewright.base.Text;

/** All sets of a studio for pages, which show them and change nothing. */
final class SetsContent implements Content {
  private final LiveSets sets;
  private final Clock clock;

  SetsContent(LiveSets sets, Clock clock) {
    this.sets = sets;
    this.clock = clock;
  }

  @Override
  public String name() {
    return sets.name();
  }

  @Override
  public boolean allows(Role role, String path) {
    return false;
  }

  /** Nothing is kept of a device but that it is paired. */
  @Override
  public void named(String device, String name) {}

  @Override
  public long last(String device) {
    return 0;
  }

  @Override
  public Hearing hearing(Devices.Known device, Function<Text, String> say) {
    return new SetsHearing(sets, device.role(), say, clock);
  }

  @Override
  public void wake() {
    sets.wake();
  }

  @Override
  public Ticks.Answer receive(Devices.Known device, List<RequestJson.Sent> events) {
    throw new IllegalStateException("nobody may");
  }

  @Override
  public ObjectNode code(String typed) {
    return JsonNodeFactory.instance.objectNode();
  }

  @Override
  public Optional<byte[]> picture(Role role, String token, int edge) {
    return Optional.empty();
  }

  @Override
  public void beat(boolean watched) {}

  @Override
  public void close() {}
}
