package org.framewright.ui.client;

import static org.assertj.core.api.Assertions.assertThat;

import javafx.beans.property.SimpleObjectProperty;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.board.JobViews;
import org.framewright.ui.session.JobView;
import org.junit.jupiter.api.Test;

class ClientModelTest {
  private final JobViews job = JobViews.of(5);
  private final SimpleObjectProperty<JobView> view = new SimpleObjectProperty<>(job.build());
  private final ClientModel client = new ClientModel(view);

  @Test
  void beforeTheFirstTickThereIsNothingToAgreeTo() {
    assertThat(client.shown().get().code()).isEmpty();
    assertThat(client.shown().get().canAgree()).isFalse();
  }

  @Test
  void followsWhatIsOnSet() {
    job.state("002", SetupState.ON_SET);
    view.set(job.build());
    assertThat(client.shown().get().code()).isEqualTo("002");
    assertThat(client.shown().get().title()).isEqualTo("Garment 2");
    assertThat(client.shown().get().canAgree()).isTrue();
  }

  @Test
  void staysWithTheSetupThatWasJustSignedOffAndSaysWhoAgreed() {
    job.state("002", SetupState.SIGNED_OFF);
    view.set(job.build());
    assertThat(client.shown().get().code()).isEqualTo("002");
    assertThat(client.shown().get().agreedBy()).contains("I. Vance");
    assertThat(client.shown().get().canAgree()).isFalse();
  }

  @Test
  void progressLeavesDroppedSetupsOut() {
    job.state("001", SetupState.SIGNED_OFF).state("004", SetupState.DROPPED);
    view.set(job.build());
    assertThat(client.shown().get().agreed()).isEqualTo(1);
    assertThat(client.shown().get().setups()).isEqualTo(4);
  }

  @Test
  void aDisposedScreenFollowsNoMore() {
    client.dispose();
    job.state("002", SetupState.ON_SET);
    view.set(job.build());
    assertThat(client.shown().get().code()).isEmpty();
  }
}
