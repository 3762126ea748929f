package org.framewright.ui.handoff;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.handoff.Delivery;
import org.framewright.handoff.PastHandOffs;
import org.framewright.job.Job;
import org.framewright.ui.look.Texts;

/**
 * How a hand-off ended.
 *
 * @param packages those that are in their place
 * @param why why it did not go on; empty words where everything went
 * @param remarks what a person should know besides
 * @param sentence for the retoucher; empty where nothing is in its place
 */
record Ended(List<Handed> packages, Remark why, List<String> remarks, String sentence) {
  Ended {
    packages = List.copyOf(packages);
    remarks = List.copyOf(remarks);
  }

  /** A package in its place. */
  record Handed(int number, Path folder, int selects, int files, long bytes, String digest) {}

  /** Nothing was begun. */
  static Ended before(Problem why, Texts texts) {
    return new Ended(List.of(), Remark.of(why, texts), List.of(), "");
  }

  /** Of packages that were written, one after the other. */
  static Ended of(List<Delivery> deliveries, Job job, Texts texts) throws IOException {
    var past = PastHandOffs.of(job);
    var packages = new ArrayList<Handed>();
    for (var one : deliveries) {
      if (one instanceof Delivery.Delivered done) {
        packages.add(
            new Handed(
                done.number(),
                done.folder(),
                done.selects(),
                done.files(),
                done.bytes(),
                past.of(done.number()).flatMap(PastHandOffs.Past::digest).orElse("")));
      }
    }
    var remarks =
        deliveries.stream()
            .flatMap(one -> one.remarks().stream())
            .map(one -> PlainText.line(texts.sentences(one)))
            .distinct()
            .toList();
    var sentence =
        packages.stream()
            .map(one -> RetoucherWords.of(one, job.name(), texts))
            .collect(Collectors.joining("\n\n"));
    return new Ended(
        packages, why(deliveries.getLast(), packages.size(), texts), remarks, sentence);
  }

  private static Remark why(Delivery last, int inPlace, Texts texts) {
    return switch (last) {
      case Delivery.Delivered _ -> new Remark("", "");
      case Delivery.Cancelled _ -> new Remark(texts.get("handoff.stopped", inPlace), "");
      case Delivery.Refused refused -> Remark.of(refused.problem(), texts);
      case Delivery.Failed failed -> Remark.of(failed.problem(), texts);
    };
  }

  /** Why it did not go on, and what a person should know besides. */
  Remark whyInFull() {
    var more = new ArrayList<>(List.of(why.remedy()));
    more.addAll(remarks);
    more.removeIf(String::isEmpty);
    return new Remark(why.what(), String.join("\n", more));
  }

  boolean isWhole() {
    return why.what().isEmpty();
  }
}
