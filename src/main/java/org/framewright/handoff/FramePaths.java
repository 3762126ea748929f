package org.framewright.handoff;

import java.nio.file.Path;
import org.framewright.frames.Frame;
import org.framewright.job.Job;

/** How frames and files are called in words: by their path below the job's frames folder. */
final class FramePaths {
  private FramePaths() {}

  /** A frame's name with its folder, without ending. */
  static String original(Job job, Frame frame) {
    return below(job, frame.folder().resolve(frame.stem()));
  }

  /** The same for a file, of which the last ending goes. */
  static String stem(Job job, Path file) {
    var below = below(job, file);
    int dot = below.lastIndexOf('.');
    return dot > below.lastIndexOf('/') + 1 ? below.substring(0, dot) : below;
  }

  static String below(Job job, Path path) {
    var frames = job.framesFolder();
    var relative = path.startsWith(frames) ? frames.relativize(path) : path;
    return relative.toString().replace('\\', '/');
  }
}
