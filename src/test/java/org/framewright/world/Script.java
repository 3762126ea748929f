package org.framewright.world;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.framewright.shotlist.SetupState;

/**
 * What happens on the days of one job: people's plans, their mistakes, and everybody's bad luck.
 */
final class Script {
  private static final List<SetupState> ENDS =
      List.of(
          SetupState.SHOT,
          SetupState.SHOT,
          SetupState.SHOT,
          SetupState.SIGNED_OFF,
          SetupState.SIGNED_OFF,
          SetupState.PICKUP,
          SetupState.DROPPED,
          SetupState.TO_SHOOT);

  private final Random random;
  private final List<Step> steps = new ArrayList<>();
  private int setup;

  private Script(long seed) {
    random = new Random(seed * 0x9E3779B97F4A7C15L + 25);
  }

  /** How many days the job of a seed has. */
  static int days(long seed) {
    return 1 + (int) Math.floorMod(seed, 3L);
  }

  /** What happens, the same for the same seed. */
  static List<Step> of(long seed) {
    var script = new Script(seed);
    script.start();
    for (int day = 0; day < days(seed); day++) {
      script.day();
    }
    return List.copyOf(script.steps);
  }

  private void start() {
    int[] ahead = {0, 0, 3600, -3600, 41, -7200, 86_400};
    steps.add(
        new Step.Start(
            random.nextInt(3),
            ahead[random.nextInt(ahead.length)],
            chance(15),
            !chance(10),
            chance(15)));
    steps.add(new Step.ImportList(Seat.LAPTOP, random.nextInt(1000)));
  }

  private boolean chance(int percent) {
    return random.nextInt(100) < percent;
  }

  private Seat seat() {
    int at = random.nextInt(10);
    return at < 6 ? Seat.LAPTOP : Seat.CART;
  }

  private void add(Step step) {
    steps.add(chance(13) ? new Step.Disturbed(step, trouble(), change()) : step);
  }

  private Trouble trouble() {
    return List.of(Trouble.values()).get(random.nextInt(Trouble.values().length));
  }

  private int change() {
    return chance(70) ? random.nextInt(8) : random.nextInt(160);
  }

  private void pass(int most) {
    steps.add(new Step.Pass(1 + random.nextInt(most)));
  }

  private void day() {
    if (chance(35)) {
      add(new Step.ImportList(seat(), random.nextInt(1000)));
    }
    int setups = 2 + random.nextInt(4);
    for (int i = 0; i < setups; i++) {
      shootSetup();
    }
    evening();
    steps.add(new Step.Night());
  }

  private void shootSetup() {
    setup = chance(20) ? random.nextInt(12) : setup + 1;
    if (!chance(12)) {
      onSet(chance(85) ? setup : random.nextInt(12));
    }
    pass(120);
    int bursts = 1 + random.nextInt(3);
    for (int i = 0; i < bursts; i++) {
      int body = chance(65) ? 0 : 1;
      var writes =
          chance(65) ? Step.Writes.CABLE : chance(50) ? Step.Writes.CARD : Step.Writes.BOTH;
      steps.add(new Step.Shoot(body, 1 + random.nextInt(3), writes, chance(10)));
      if (writes != Step.Writes.CARD && !chance(8)) {
        steps.add(new Step.Pass(1 + random.nextInt(3)));
        add(new Step.Look(seat()));
      }
      pass(100);
      happens();
    }
    if (chance(30)) {
      steps.add(new Step.Finish());
      add(new Step.Look(seat()));
    }
    if (!chance(12)) {
      var end = ENDS.get(random.nextInt(ENDS.size()));
      if (chance(25)) {
        steps.add(new Step.PhoneTick(setup, end, chance(80) ? 0 : random.nextInt(200) - 100));
        send();
      } else {
        add(new Step.Tick(seat(), setup, 1, end, -1, chance(20)));
      }
    }
    pass(chance(10) ? 7000 : 300);
    happens();
  }

  private void onSet(int which) {
    int view = chance(60) ? random.nextInt(4) : -1;
    switch (random.nextInt(10)) {
      case 0, 1 -> {
        steps.add(new Step.PhoneTick(which, SetupState.ON_SET, 0));
        send();
      }
      case 2 -> add(new Step.Tick(Seat.AWAY, which, 1, SetupState.ON_SET, view, false));
      default -> add(new Step.Tick(seat(), which, 1, SetupState.ON_SET, view, chance(20)));
    }
  }

  private void send() {
    if (chance(80)) {
      var all = Step.Network.values();
      var network = chance(60) ? Step.Network.GOOD : all[random.nextInt(all.length)];
      add(new Step.PhoneSend(seat(), network));
    }
  }

  /** What nobody planned. */
  private void happens() {
    if (!chance(55)) {
      return;
    }
    switch (random.nextInt(27)) {
      case 0, 1 -> add(new Step.TakeBack(seat()));
      case 2 -> add(new Step.Comment(seat(), random.nextInt(12)));
      case 3 -> {
        steps.add(new Step.PhoneComment(random.nextInt(12)));
        send();
      }
      case 4 -> {
        steps.add(new Step.PhoneTakeBack(random.nextInt(5)));
        send();
      }
      case 5, 6 ->
          add(new Step.Move(seat(), random.nextInt(60), 1 + random.nextInt(4), random.nextInt(12)));
      case 7 -> add(new Step.TakeMoveBack(seat()));
      case 8, 9 -> steps.add(new Step.Restart(seat(), chance(30)));
      case 10 -> steps.add(new Step.ClockSet(seat(), random.nextInt(7200) - 3600));
      case 11 -> steps.add(new Step.FolderGone(seat(), anyTick()));
      case 12 -> steps.add(chance(40) ? new Step.FolderCopied() : anyTick());
      case 13, 14, 15 -> synchronise();
      case 16 -> steps.add(new Step.ConflictCopy(chance(50), random.nextInt(6)));
      case 17 -> steps.add(new Step.NewerVersion());
      case 18 -> steps.add(new Step.ResetNumber(random.nextInt(2), chance(50) ? 9998 : 1));
      case 19 -> {
        if (chance(30)) {
          steps.add(new Step.ClockJump(random.nextInt(2), random.nextInt(7200) - 3600));
        }
      }
      case 20 -> add(new Step.SignOffByNobody(seat(), random.nextInt(12)));
      case 21 -> add(new Step.TickUnknown(seat()));
      case 22 -> add(new Step.Rename(seat()));
      case 23 ->
          add(
              new Step.Tick(
                  seat(),
                  random.nextInt(12),
                  2 + random.nextInt(3),
                  ENDS.get(random.nextInt(ENDS.size())),
                  -1,
                  false));
      case 24 -> add(new Step.ImportList(seat(), random.nextInt(1000)));
      case 25 -> {
        steps.add(new Step.PhoneTick(random.nextInt(12), ENDS.get(random.nextInt(8)), 0));
        send();
      }
      default -> {
        add(
            new Step.Tick(
                Seat.AWAY, random.nextInt(12), 1, ENDS.get(random.nextInt(8)), -1, false));
        synchronise();
      }
    }
  }

  private Step anyTick() {
    return new Step.Tick(
        seat(), random.nextInt(12), 1, ENDS.get(random.nextInt(ENDS.size())), -1, false);
  }

  private void synchronise() {
    for (int i = 0; i < 1 + random.nextInt(4); i++) {
      steps.add(
          new Step.Synchronise(
              chance(50), random.nextInt(6), chance(60) ? 100 : random.nextInt(100)));
    }
  }

  private void evening() {
    steps.add(new Step.Finish());
    pass(30);
    for (int body = 0; body < 2; body++) {
      if (chance(35)) {
        steps.add(new Step.CardIn(body));
        if (chance(50)) {
          pass(300);
          add(new Step.Look(seat()));
        }
      }
    }
    if (chance(40)) {
      add(new Step.Move(seat(), random.nextInt(60), 1 + random.nextInt(4), random.nextInt(12)));
    }
    if (chance(75)) {
      add(new Step.Rename(seat()));
      if (chance(35)) {
        add(new Step.Undo(seat()));
        if (chance(60)) {
          add(chance(50) ? new Step.Redo(seat()) : new Step.Rename(seat()));
        }
      }
    }
    add(new Step.Choose(seat(), random.nextInt(60), 1 + random.nextInt(9), !chance(15)));
    if (chance(50)) {
      add(new Step.Rate(seat(), random.nextInt(60), 1 + random.nextInt(5), random.nextInt(6)));
    }
    if (chance(60)) {
      add(new Step.HandOff(seat()));
      if (chance(20)) {
        add(new Step.HandOff(seat()));
      }
    }
    cards();
  }

  private void cards() {
    for (int body = 0; body < 2; body++) {
      if (chance(70)) {
        add(new Step.CopyCard(seat(), body, chance(60) ? 3 : 1 + random.nextInt(2)));
      }
      if (chance(30)) {
        var harms = Step.Harm.values();
        steps.add(
            new Step.Damage(
                harms[random.nextInt(harms.length)], random.nextInt(2), random.nextInt(30)));
      }
      if (chance(70)) {
        add(new Step.Ask(seat(), body));
      }
    }
  }
}
