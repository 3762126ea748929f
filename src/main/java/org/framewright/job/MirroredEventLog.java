package org.framewright.job;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.framewright.base.Text;

/**
 * The log in the job's folder, of which a mirror hears. An event is durable when it is in the
 * folder, whether the store is reached or not; what the mirror brings into the folder is news like
 * any other.
 */
final class MirroredEventLog implements EventLog {
  private final FileEventLog files;
  private final JobMirror mirror;

  MirroredEventLog(FileEventLog files, JobMirror mirror) {
    this.files = files;
    this.mirror = mirror;
  }

  @Override
  public List<Entry> news() throws IOException {
    return files.news();
  }

  @Override
  public Stamp append(Event event) throws IOException {
    var stamp = files.append(event);
    mirror.appended();
    return stamp;
  }

  @Override
  public long last(String writer) {
    return files.last(writer);
  }

  @Override
  public boolean append(Entry next) throws IOException {
    boolean appended = files.append(next);
    if (appended) {
      mirror.appended();
    }
    return appended;
  }

  @Override
  public List<Text> told() {
    var told = new ArrayList<>(files.told());
    told.addAll(mirror.told());
    return List.copyOf(told);
  }

  @Override
  public String station() {
    return files.station();
  }

  @Override
  public Instant now() {
    return files.now();
  }
}
