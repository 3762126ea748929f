package org.framewright.ui;

import java.io.IOException;
import java.net.InetAddress;
import java.net.URI;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.framewright.live.LiveJob;
import org.framewright.share.Invitation;
import org.framewright.share.PairedDevice;
import org.framewright.share.Role;
import org.framewright.share.ShareOptions;
import org.framewright.share.ShareServer;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.settings.Preferences;
import org.framewright.ui.settings.WorkingHours;
import org.framewright.ui.share.Sharing;

/** The open job on devices of the network, by a server of its own. */
final class JobOnDevices implements Sharing {
  private final LiveJob job;
  private final Path settings;
  private final Preferences preferences;
  private final Optional<InetAddress> host;
  private final int port;

  private JobOnDevices(
      JobSession session,
      Path settings,
      Preferences preferences,
      Optional<InetAddress> host,
      int port) {
    this.job = session.live();
    this.host = host;
    this.port = port;
    this.settings = settings;
    this.preferences = preferences;
  }

  /** At the address of this computer that the studio's network sees. */
  static Network usual() {
    return (session, settings, preferences) ->
        new JobOnDevices(session, settings, preferences, Optional.empty(), ShareOptions.USUAL_PORT);
  }

  /** At this address, at any port that is free. */
  static Network at(InetAddress host) {
    return (session, settings, preferences) ->
        new JobOnDevices(session, settings, preferences, Optional.of(host), 0);
  }

  @Override
  public Page begin() throws IOException {
    var hours = WorkingHours.kept(preferences, job.job().zone()).value();
    return new Served(
        ShareServer.start(
            job, new ShareOptions(host, port, Optional.empty(), settings, Optional.of(hours))));
  }

  private record Served(ShareServer server) implements Page {
    @Override
    public URI address() {
      return server.address();
    }

    @Override
    public Invitation invite(Role role) {
      return server.invite(role);
    }

    @Override
    public List<PairedDevice> devices() {
      return server.devices();
    }

    @Override
    public void withdraw(Invitation code) {
      server.withdraw(code);
    }

    @Override
    public void unpair(String id) throws IOException {
      server.unpair(id);
    }

    @Override
    public AutoCloseable listen(Runnable changed) {
      return server.listen(changed);
    }

    @Override
    public void close() {
      server.close();
    }
  }
}
