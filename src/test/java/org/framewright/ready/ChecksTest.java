package org.framewright.ready;

import static org.framewright.AssertThat.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.framewright.base.Text;
import org.framewright.day.Battery;
import org.framewright.frames.Camera;
import org.framewright.frames.CameraClock;
import org.framewright.ready.Facts.AtHand;
import org.framewright.ready.Facts.CopyPlace;
import org.framewright.ready.Facts.Power;
import org.framewright.ready.Facts.Space;
import org.framewright.ready.Facts.Speed;
import org.framewright.ready.Facts.Speed.Measure;
import org.junit.jupiter.api.Test;

/** Each fault is given as a fact and found; where all is well nothing is told. */
class ChecksTest {
  private static final Instant MORNING = Instant.parse("2026-11-23T07:30:00Z");
  private static final Camera BODY = new Camera("Studio", "Body A", "SA-1");
  private static final Text WHY = Text.of("why");
  private static final Text FIX = Text.of("fix");

  /** Facts that a test changes one of. */
  private static final class Given {
    private int setups = 212;
    private List<Facts.Misnamed> unnamed = List.of();
    private List<Facts.Fault> convention = List.of();
    private List<Facts.HalfWay> halfWay = List.of();
    private Space space = new Space(2_000_000_000_000L, OptionalLong.of(17_000), 50_000_000);
    private Speed speed = speed(1_000_000_000);
    private List<CopyPlace> places =
        List.of(new CopyPlace("/copies", true, Optional.of(true), 2_000_000_000_000L));
    private Power power = new Power.OnMains();
    private Duration ahead = Duration.ZERO;
    private ZoneId zone = ZoneId.of("Europe/Vienna");
    private List<CameraClock> bodies = List.of(clock(0.4));
    private AtHand atHand =
        new AtHand(
            new TreeSet<>(Set.of("Han")),
            Optional.of(List.of()),
            Optional.of(true),
            Optional.of(2));

    Facts facts() {
      return new Facts(
          MORNING,
          zone,
          setups,
          unnamed,
          convention,
          halfWay,
          space,
          speed,
          places,
          power,
          ahead,
          bodies,
          atHand);
    }
  }

  private static Speed speed(long written) {
    return new Speed(
        Optional.of(new Measure.Rates(written, OptionalLong.of(2 * written))),
        20,
        OptionalLong.empty());
  }

  private static CameraClock clock(double offset) {
    return new CameraClock(BODY, OptionalDouble.of(offset), OptionalDouble.of(0.1), 4, 4);
  }

  private static List<Measured> checked(UnaryOperator<Given> change) {
    return Checks.of(change.apply(new Given()).facts());
  }

  /** The only check that is not fine. */
  private static Outcome only(Topic topic, UnaryOperator<Given> change) {
    var found =
        checked(change).stream().filter(one -> !(one.outcome() instanceof Outcome.Fine)).toList();
    assertThat(found.stream().map(Measured::topic).toList()).isEqualTo(List.of(topic));
    return found.getFirst().outcome();
  }

  private static String remark(Topic topic, UnaryOperator<Given> change) {
    var outcome = only(topic, change);
    assertThat(outcome instanceof Outcome.Remark).as(outcome.word()).isTrue();
    assertThat(outcome.remedy().isEmpty()).isFalse();
    return outcome.said().english();
  }

  private static String stops(Topic topic, UnaryOperator<Given> change) {
    var outcome = only(topic, change);
    assertThat(outcome instanceof Outcome.Stops).as(outcome.word()).isTrue();
    assertThat(outcome.remedy().isEmpty()).isFalse();
    return outcome.said().english();
  }

  private static String cannotTell(Topic topic, UnaryOperator<Given> change) {
    var outcome = only(topic, change);
    assertThat(outcome instanceof Outcome.CannotTell).as(outcome.word()).isTrue();
    return outcome.said().english();
  }

  @Test
  void whereAllIsWellNothingIsTold() {
    assertThat(checked(given -> given).stream().map(one -> one.outcome().word()).distinct())
        .containsExactly("fine");
    assertThat(
            checked(given -> given).stream()
                .map(Measured::topic)
                .collect(Collectors.toSet())
                .size())
        .isEqualTo(14);
  }

  @Test
  void anEmptyListStopsTheDay() {
    assertThat(
            stops(
                Topic.LIST,
                given -> {
                  given.setups = 0;
                  return given;
                }))
        .contains("empty");
  }

  @Test
  void aSetupThatCouldNotBeNamedStopsTheDay() {
    assertThat(
            stops(
                Topic.NAMES,
                given -> {
                  given.unnamed =
                      List.of(
                          new Facts.Misnamed("A/1", WHY, FIX), new Facts.Misnamed("B", WHY, FIX));
                  return given;
                }))
        .isEqualTo("the frames of 2 setups could not be named; the first is A/1: why");
  }

  @Test
  void anErrorOfTheConventionStopsTheDayAndAWarningDoesNot() {
    var warning = new Facts.Fault(false, Text.of("too long"), FIX);
    var error = new Facts.Fault(true, Text.of("the counter is full"), FIX);
    assertThat(
            remark(
                Topic.CONVENTION,
                given -> {
                  given.convention = List.of(warning);
                  return given;
                }))
        .isEqualTo("too long");
    assertThat(
            stops(
                Topic.CONVENTION,
                given -> {
                  given.convention = List.of(warning, error);
                  return given;
                }))
        .isEqualTo("the counter is full");
  }

  @Test
  void whatWasLeftHalfWayStopsTheDay() {
    assertThat(
            stops(
                Topic.LEFT_HALF_WAY,
                given -> {
                  given.halfWay = List.of(new Facts.HalfWay(WHY, FIX));
                  return given;
                }))
        .isEqualTo("why");
  }

  private static UnaryOperator<Given> room(long free) {
    return given -> {
      given.space = new Space(free, OptionalLong.of(1000), 60_000_000);
      return given;
    };
  }

  /** 1000 frames of 60 MB are 60 GB; a tenth of the disk stays free: 60 of 66.7 GB. */
  @Test
  void aDiskThatIsTooSmallForTheFramesPlannedStopsTheDay() {
    assertThat(stops(Topic.SPACE, room(59_000_000_000L)))
        .isEqualTo(
            "59.0 GB are free; the 1,000 frames planned need 60.0 GB, at 60 MB a frame of this"
                + " job");
    assertThat(remark(Topic.SPACE, room(66_000_000_000L))).contains("66.0 GB");
    assertThat(
            checked(room(67_000_000_000L)).stream()
                .filter(one -> one.topic() == Topic.SPACE)
                .allMatch(one -> one.outcome() instanceof Outcome.Fine))
        .isTrue();
  }

  @Test
  void aDiskWithoutRoomForOneBurstStopsTheDayWhateverIsPlanned() {
    assertThat(
            stops(
                Topic.SPACE,
                given -> {
                  given.space = new Space(1_000_000_000, OptionalLong.empty(), 0);
                  return given;
                }))
        .isEqualTo("1.0 GB are free, less than 20 frames of 60 MB need");
  }

  @Test
  void ofAListWithoutNumbersNobodyCanSayWhetherTheDiskIsLargeEnough() {
    assertThat(
            cannotTell(
                Topic.SPACE,
                given -> {
                  given.space = new Space(2_000_000_000_000L, OptionalLong.empty(), 0);
                  return given;
                }))
        .contains("does not say");
  }

  /**
   * 20 frames of 50 MB are 1 GB: 1 s on a disk of 1 GB/s, 1.9 s on one of 526 MB/s; 17,000 frames
   * are 850 bursts, each 0.9 s longer: 765 s, which is 13 min.
   */
  @Test
  void aSlowDiskIsToldWithWhatItCostsOverTheList() {
    assertThat(
            remark(
                Topic.SPEED,
                given -> {
                  given.speed = speed(526_000_000);
                  return given;
                }))
        .isEqualTo(
            "it writes 526 MB and reads 1052 MB a second: 0.9 s longer for each burst of 20 frames"
                + " than the camera or a fast disk; over 212 setups about 13 min");
  }

  @Test
  void aDiskThatIsFasterThanTheCameraIsFastEnough() {
    assertThat(
            checked(
                    given -> {
                      given.speed =
                          new Speed(
                              Optional.of(new Measure.Rates(300_000_000, OptionalLong.empty())),
                              20,
                              OptionalLong.of(200_000_000));
                      return given;
                    })
                .stream()
                .allMatch(one -> one.outcome() instanceof Outcome.Fine))
        .isTrue();
  }

  @Test
  void aDiskThatTakesNoFileStopsTheDay() {
    assertThat(
            stops(
                Topic.SPEED,
                given -> {
                  given.speed =
                      new Speed(
                          Optional.of(
                              new Measure.Refused(Text.of("the disk can only be read"), FIX)),
                          20,
                          OptionalLong.empty());
                  return given;
                }))
        .isEqualTo("the disk takes no file: the disk can only be read");
  }

  @Test
  void aFullDiskCannotBeMeasured() {
    assertThat(
            cannotTell(
                Topic.SPEED,
                given -> {
                  given.speed =
                      new Speed(Optional.of(new Measure.NoRoom()), 20, OptionalLong.empty());
                  return given;
                }))
        .contains("too little room");
  }

  private static UnaryOperator<Given> place(boolean there, Optional<Boolean> apart, long free) {
    return given -> {
      given.places = List.of(new CopyPlace("/copies", there, apart, free));
      return given;
    };
  }

  @Test
  void placesForCopiesAreThereOnOtherDisksAndLargeEnough() {
    long enough = 2_000_000_000_000L;
    assertThat(
            remark(
                Topic.PLACES,
                given -> {
                  given.places = List.of();
                  return given;
                }))
        .contains("no place for copies");
    assertThat(remark(Topic.PLACES, place(false, Optional.empty(), 0))).contains("is not there");
    assertThat(remark(Topic.PLACES, place(true, Optional.of(false), enough)))
        .contains("same disk as the frames");
    assertThat(remark(Topic.PLACES, place(true, Optional.of(true), 5_000_000_000L)))
        .contains("5.0 GB free for 850.0 GB");
    assertThat(cannotTell(Topic.PLACES, place(true, Optional.empty(), enough)))
        .contains("nobody can tell");
  }

  private static UnaryOperator<Given> power(Power power) {
    return given -> {
      given.power = power;
      return given;
    };
  }

  @Test
  void aComputerOnItsBatteryIsToldAndAnUnknownSystemIsNotGuessedAt() {
    var battery = new Battery(64, Optional.of(Duration.ofMinutes(150)));
    assertThat(remark(Topic.POWER, power(new Power.OnBattery(battery))))
        .isEqualTo("the computer runs on its battery: 64 %, about 2 h 30 min at the present draw");
    var low = new Battery(29, Optional.empty());
    assertThat(only(Topic.POWER, power(new Power.OnBattery(low))).remedy().english())
        .isEqualTo("Plug it in before anything is shot.");
    assertThat(cannotTell(Topic.POWER, power(new Power.Unknown()))).contains("not asked");
  }

  @Test
  void aClockThatIsBehindThatOfAnotherComputerIsTold() {
    assertThat(
            remark(
                Topic.CLOCK,
                given -> {
                  given.ahead = Duration.ofSeconds(6);
                  return given;
                }))
        .isEqualTo("another computer of this job was 6 s ahead of this one’s clock");
  }

  @Test
  void aBodyWhoseClockIsOffIsToldByName() {
    assertThat(
            remark(
                Topic.BODIES,
                given -> {
                  given.bodies = List.of(clock(0.4), clock(-3599));
                  return given;
                }))
        .isEqualTo("the clock of Body A SA-1 is 1 h fast");
    assertThat(
            cannotTell(
                Topic.BODIES,
                given -> {
                  given.bodies =
                      List.of(
                          new CameraClock(
                              BODY, OptionalDouble.empty(), OptionalDouble.empty(), 4, 0));
                  return given;
                }))
        .contains("no frame was seen arriving");
  }

  private static String zone(String zone, String at) {
    return Checks.zone(Instant.parse(at), ZoneId.of(zone)).said().english();
  }

  /** Summer time begins in the European Union at 01:00 UTC of 28 March 2027 (2000/84/EC). */
  @Test
  void aComputerThatWasNotToldWhereItIsAndAChangeOfClocksAreTold() {
    assertThat(
            remark(
                Topic.ZONE,
                given -> {
                  given.zone = ZoneId.of("Etc/UTC");
                  return given;
                }))
        .isEqualTo("the computer goes by Etc/UTC, where it is 07:30");
    assertThat(zone("Europe/Vienna", "2026-11-23T07:30:00Z"))
        .isEqualTo("it is 08:30 in Europe/Vienna, UTC+01:00");
    assertThat(zone("Europe/Vienna", "2027-03-27T07:30:00Z"))
        .endsWith("clocks are changed there at 2027-03-28 03:00");
    assertThat(zone("Europe/Vienna", "2027-03-28T07:30:00Z"))
        .endsWith("clocks are changed there at 2027-03-28 03:00");
    assertThat(zone("Europe/Vienna", "2027-03-29T07:30:00Z")).endsWith("UTC+02:00");
  }

  private static UnaryOperator<Given> atHand(
      Optional<List<String>> noFont, Optional<Boolean> display, Optional<Integer> devices) {
    return given -> {
      given.atHand = new AtHand(new TreeSet<>(Set.of("Han", "Thai")), noFont, display, devices);
      return given;
    };
  }

  @Test
  void aMissingFontAndAMissingDisplayAreTold() {
    var there = Optional.of(true);
    assertThat(remark(Topic.FONTS, atHand(Optional.of(List.of("Thai")), there, Optional.of(1))))
        .isEqualTo("the list has titles that no font is there for: Thai");
    assertThat(cannotTell(Topic.FONTS, atHand(Optional.empty(), there, Optional.of(1))))
        .contains("Han, Thai");
    assertThat(
            remark(
                Topic.DISPLAY,
                atHand(Optional.of(List.of()), Optional.of(false), Optional.empty())))
        .contains("no second display");
  }
}
