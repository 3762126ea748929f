package org.framewright.world;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.framewright.job.Asked;
import org.framewright.job.Device;
import org.framewright.job.JobException;
import org.framewright.job.MarkDetails;
import org.framewright.job.Numbered;
import org.framewright.job.Receipt;
import org.framewright.shotlist.SetupState;

/** What is done on a phone, and what becomes of it on its way. */
final class PhoneSteps {
  private final Stage stage;
  private static final String PHONE = "page-0a1b2c3d";

  private record Waiting(Instant at, Asked asked, Said said) {}

  private final List<Waiting> phone = new ArrayList<>();
  private long phoneKept;

  PhoneSteps(Stage stage) {
    this.stage = stage;
  }

  private Instant phoneClock(int ahead) {
    return Instant.ofEpochMilli(stage.now.plusSeconds(ahead).toEpochMilli());
  }

  private void pair() {
    if (phone.isEmpty() && phoneKept == 0) {
      phone.add(
          new Waiting(phoneClock(0), new Asked.Named("Ines’ phone"), new Said.Other("named")));
    }
  }

  void phoneTick(int setup, SetupState state, int clock) {
    pair();
    var code = stage.code(Seat.LAPTOP, setup);
    var by = state == SetupState.SIGNED_OFF ? "Odette" : "Ines";
    phone.add(
        new Waiting(
            phoneClock(clock),
            new Asked.Ticked(code, state, MarkDetails.by(by)),
            new Said.Ticked(code, state, by, "", "")));
  }

  void phoneComment(int setup) {
    pair();
    var code = stage.code(Seat.LAPTOP, setup);
    var text = "From the phone at " + stage.now;
    phone.add(
        new Waiting(
            phoneClock(0),
            new Asked.Commented(code, List.of(), text, "Ines"),
            new Said.Commented(code, text)));
  }

  void phoneTakeBack(int which) {
    var own =
        stage.facts.values().stream()
            .filter(fact -> fact.id().station().equals(PHONE))
            .filter(
                fact -> fact.said() instanceof Said.Ticked || fact.said() instanceof Said.Commented)
            .sorted(Comparator.comparingLong(fact -> fact.id().number()))
            .toList();
    if (!own.isEmpty()) {
      var id = own.get(which % own.size()).id();
      phone.add(
          new Waiting(phoneClock(0), new Asked.TakenBack(id.number()), new Said.TakenBack(id)));
    }
  }

  private boolean isRefused(Model model, Said said) {
    return switch (said) {
      case Said.Ticked ticked -> !model.list().containsKey(Model.key(ticked.setup()));
      case Said.Commented(var setup, _) -> !model.list().containsKey(Model.key(setup));
      case Said.TakenBack(var what) -> model.isGone(what);
      default -> false;
    };
  }

  void phoneSend(Desk desk, Step.Network network) throws IOException, JobException {
    boolean first = true;
    while (!phone.isEmpty()) {
      if (network == Step.Network.REQUEST_LOST) {
        return;
      }
      if (first && network == Step.Network.OUT_OF_ORDER && phone.size() > 1) {
        var later = phone.get(1);
        if (!stage.facts.containsKey(new LogLine.Id(PHONE, phoneKept + 1))) {
          send(desk, later, phoneKept + 2, List.of(), Receipt.Gap.class);
        }
      }
      first = false;
      var waiting = phone.getFirst();
      long number = phoneKept + 1;
      boolean had = stage.facts.containsKey(new LogLine.Id(PHONE, number));
      boolean refused = !had && isRefused(stage.model(desk.folder()), waiting.said());
      var wanted = had || refused ? List.<Said>of() : List.of(waiting.said());
      var expected = had ? Receipt.Had.class : refused ? Receipt.Refused.class : Receipt.Kept.class;
      var receipt = send(desk, waiting, number, wanted, expected);
      if (receipt.isEmpty() || network == Step.Network.REPLY_LOST) {
        return;
      }
      if (network == Step.Network.SENT_TWICE && !refused) {
        send(desk, waiting, number, List.of(), Receipt.Had.class);
      }
      phone.removeFirst();
      if (!refused) {
        phoneKept = number;
      }
    }
  }

  private Optional<Receipt> send(
      Desk desk, Waiting what, long number, List<? extends Said> wanted, Class<?> expected)
      throws IOException, JobException {
    var receipt = new Receipt[1];
    var end =
        stage.act(
            desk,
            wanted,
            false,
            job -> {
              receipt[0] =
                  job.receive(new Device(PHONE), new Numbered(number, what.at(), what.asked()));
            });
    if (end != Stage.End.DONE) {
      return Optional.empty();
    }
    Wrong.unless(
        expected.isInstance(receipt[0]),
        "the phone’s number "
            + number
            + " was answered "
            + receipt[0]
            + ", not "
            + expected.getSimpleName());
    if (receipt[0] instanceof Receipt.Refused(_, var why)) {
      Stage.told(why);
    }
    return Optional.of(receipt[0]);
  }
}
