package org.framewright.handoff;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;
import org.framewright.frames.PictureBorder;
import org.framewright.frames.PictureHeader;
import org.framewright.handoff.spec.Rule;
import org.framewright.handoff.spec.SpecFinding;
import org.framewright.handoff.spec.Specification;
import org.framewright.job.Job;
import org.framewright.naming.Reading;
import org.framewright.naming.Reserved;

/** Where files that answer a select are not what the client asked for. */
final class ReturnFindings {
  private final Job job;
  private final Specification specification;
  private final Path folder;
  private final DeliveryNames names;

  ReturnFindings(Job job, Specification specification, Path folder) {
    this.job = job;
    this.specification = specification;
    this.folder = folder;
    this.names = new DeliveryNames(job, Optional.of(specification));
  }

  /** Of the files that count of an answer; what was not retouched is not judged. */
  List<SpecFinding> of(Returns.Answer answer, String original) {
    var findings = new ArrayList<SpecFinding>();
    switch (answer.state()) {
      case ANSWERED, CHANGED -> {
        for (var file : answer.newestFiles()) {
          findings.addAll(
              specification.findings(
                  file,
                  view(answer.select()),
                  PictureHeader.of(folder.resolve(file)),
                  () -> PictureBorder.of(folder.resolve(file))));
          if (names.fit(answer.state())) {
            name(answer, original, file).ifPresent(findings::add);
          }
        }
      }
      case UNTOUCHED, MISSING -> {}
    }
    return findings;
  }

  private Optional<SpecFinding> name(Returns.Answer answer, String original, String file) {
    return names.of(answer.select(), original, file) instanceof DeliveryNames.None none
        ? Optional.of(
            new SpecFinding(
                file,
                Rule.NAME,
                Text.of("{0}", names.kind()),
                Text.of("it gets no name to be delivered under: {0}", none.why()),
                none.fix()))
        : Optional.empty();
  }

  /** The view that a select's name says, by its code and in words. */
  private List<String> view(String select) {
    if (!(job.convention().read(select, Reserved.SELECT) instanceof Reading.One one)) {
      return List.of();
    }
    var code = one.fields().get(Reserved.VIEW);
    return code == null ? List.of() : List.of(code, job.viewLabel(code));
  }
}
