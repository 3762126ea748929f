package org.framewright.ui.handoff;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;
import org.framewright.base.Progress;
import org.framewright.frames.Frame;
import org.framewright.handoff.Delivery;
import org.framewright.handoff.HandOff;
import org.framewright.handoff.metadata.MetadataOptions;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.renaming.Renamer;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.FreshJob;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.JobSession;

/**
 * A job with four named frames of setup 001, of which the first two are selects and the last is
 * rated 5; opened on the test's own thread.
 */
final class HandOffScene implements AutoCloseable {
  static final Texts TEXTS = Texts.in(Locale.UK);

  final Clock clock = Clock.system(ZoneOffset.UTC);
  final List<Throwable> troubles = new ArrayList<>();
  final JobSession session;
  private final Path folder;

  HandOffScene(Path folder) throws Exception {
    this.folder = folder;
    var job = FreshJob.in(Files.createDirectory(folder.resolve("shoot")), clock);
    var camera =
        new SampleCamera(
            SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.RAW_AND_JPEG, 1);
    job.mark("001", SetupState.ON_SET, MarkDetails.NONE.andView("F"));
    for (var i = 0; i < 4; i++) {
      camera.take(Exposure.of(clock.instant(), "001", "F")).writeTo(job.framesFolder());
    }
    job.recordArrivals(job.scan());
    var renamer = Renamer.in(job.folder(), clock);
    renamer.apply(renamer.plan(job.frameNames(job.scan()).requests()), Progress.NONE);
    var frames = job.scan().frames();
    job.select(frames.subList(0, 2).stream().map(Frame::id).toList(), true, "Ines");
    job.rate(List.of(frames.get(3).id()), 5, "Ines");
    session =
        JobSession.begin(Job.open(job.folder(), clock), Progress.NONE, Runnable::run, Runnable::run)
            .orElseThrow();
  }

  Job job() {
    return session.job();
  }

  /** Hands the two selects off, without the app. */
  Delivery.Delivered handOff(String name) throws Exception {
    var view = session.view().get();
    var handOff = HandOff.of(job(), view.scan(), view.tally());
    return (Delivery.Delivered)
        handOff.deliver(
            handOff.selects(), folder.resolve(name), MetadataOptions.NONE, Progress.NONE);
  }

  /** A picture that a retoucher may have sent. */
  static Path picture(Path file) throws IOException {
    var image = new BufferedImage(60, 40, BufferedImage.TYPE_INT_RGB);
    image.createGraphics().fillRect(10, 10, 20, 20);
    image.setRGB(3, 3, Color.RED.getRGB());
    var name = file.getFileName().toString();
    ImageIO.write(image, name.substring(name.lastIndexOf('.') + 1), file.toFile());
    return file;
  }

  @Override
  public void close() {
    session.close();
  }
}
