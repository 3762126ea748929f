package org.framewright.world;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Map;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.sample.SampleFrame;

/** A camera, with its card. */
final class Body {
  private final String name;
  private final SampleCamera.Writes writes;
  private Duration ahead;
  private SampleCamera camera;
  private int number;
  private boolean jumped;

  Body(String name, SampleCamera.Writes writes, int aheadSeconds, int first) {
    this.name = name;
    this.writes = writes;
    this.ahead = Duration.ofSeconds(aheadSeconds);
    this.number = first;
    make();
  }

  private void make() {
    var body =
        new SampleBody(
            "Framewright Sample", "Body " + name, "S" + name + "-1", ZoneOffset.UTC, ahead);
    camera = new SampleCamera(body, SampleCamera.Size.TINY, writes, number);
  }

  String name() {
    return name;
  }

  Duration ahead() {
    return ahead;
  }

  /** Whether its clock was ever set while the job went on, so that nobody can put it right. */
  boolean jumped() {
    return jumped;
  }

  void jump(int seconds) {
    ahead = ahead.plusSeconds(seconds);
    jumped = true;
    make();
  }

  void countFrom(int next) {
    number = next;
    camera.resetNumber(next);
  }

  SampleFrame take(Instant at) {
    number = number % 9999 + 1;
    return camera.take(Exposure.of(at, "1", "F"));
  }

  /** The folder below this one where a frame of that name is not yet. */
  static Path free(Path folder, String name, SampleFrame frame) {
    for (int i = 1; ; i++) {
      var at = folder.resolve(i == 1 ? name : name + "-" + i);
      if (frame.files().keySet().stream().noneMatch(file -> Files.exists(at.resolve(file)))) {
        return at;
      }
    }
  }

  static void write(Path folder, Map<String, byte[]> files, Instant at, boolean half)
      throws IOException {
    Files.createDirectories(folder);
    for (var file : files.entrySet()) {
      var path = folder.resolve(file.getKey());
      var bytes = file.getValue();
      Files.write(path, half ? Arrays.copyOf(bytes, bytes.length * 2 / 3) : bytes);
      Files.setLastModifiedTime(path, FileTime.from(at));
      if (half) {
        return;
      }
    }
  }
}
