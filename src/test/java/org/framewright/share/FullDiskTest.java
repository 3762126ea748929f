package org.framewright.share;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import org.framewright.disk.Fault;
import org.framewright.disk.Recording;
import org.framewright.job.Device;
import org.framewright.job.Job;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FullDiskTest {
  @TempDir private Path root;

  /** Wherever the disk refuses a tick, none is kept half, and all are kept once there is room. */
  @Test
  void whatDoesNotFitOnTheDiskWaitsOnThePhone() throws Exception {
    var disk = Recording.on(root);
    try (var job = SharedJob.in(disk.root(), 3)) {
      var phone = job.paired(Role.ASSISTANT);
      int refused = 0;
      long number = 1;
      int status;
      do {
        var event = Phone.tick(++number, "002", "pickup");
        disk.clear();
        disk.fail(Fault.fromOn(refused, Fault::noSpace).afterHalfTheBytes());
        var answer = phone.events(event);
        status = answer.status();
        disk.fail(Fault.never());
        if (status != 200) {
          refused++;
          assertThat(status).isEqualTo(503);
          assertThat(answer.json().path("what").asText()).isEqualTo("the disk is full");
          assertThat(phone.events(event).json().path("last").asLong()).isEqualTo(number);
        }
      } while (status != 200);
      assertThat(refused).as("a write and a flush").isGreaterThanOrEqualTo(2);
      var anew = Job.open(disk.real(job.folder), job.clock, SharedJob.DESK);
      assertThat(anew.last(new Device(phone.id))).isEqualTo(number);
      assertThat(anew.state().of("002").state()).isEqualTo(SetupState.PICKUP);
      assertThat(anew.state().pickups()).containsExactly("002");
    }
  }
}
