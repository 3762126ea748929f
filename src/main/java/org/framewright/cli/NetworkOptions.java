package org.framewright.cli;

import java.io.IOException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.framewright.job.SettingsFolder;
import org.framewright.share.ShareOptions;
import org.framewright.share.Tls;
import picocli.CommandLine.Option;

/** Where and how a page is served on the studio's network. */
final class NetworkOptions {
  private static final int LAST_PORT = 65_535;

  @Option(
      names = "--port",
      paramLabel = "N",
      description = "The port; without it 8470, or the next that is free. 0 takes any.")
  private Optional<Integer> port = Optional.empty();

  @Option(
      names = "--host",
      paramLabel = "ADDRESS",
      description = {
        "The address of this computer to be reached at, where it has several, or its name, where",
        "the certificate is for that."
      })
  private Optional<String> host = Optional.empty();

  @Option(
      names = "--tls",
      paramLabel = "FILE",
      description = {
        "Encrypt with the certificate and key in this PKCS #12 file. Its password is asked for, or",
        "taken from the variable FRAMEWRIGHT_TLS_PASSWORD."
      })
  private Optional<Path> tls = Optional.empty();

  /** Whether any of them was given. */
  boolean given() {
    return port.isPresent() || host.isPresent() || tls.isPresent();
  }

  /** As they were given. */
  ShareOptions options() throws IOException, CommandFailure {
    if (port.filter(given -> given < 0 || given > LAST_PORT).isPresent()) {
      throw CommandFailure.badInput(
          "--port " + port.get(), "Give a number from 1 to " + LAST_PORT + ", or 0 for any.");
    }
    return new ShareOptions(
        host(), port.orElse(ShareOptions.USUAL_PORT), tls(), SettingsFolder.usual());
  }

  private Optional<InetAddress> host() throws CommandFailure {
    if (host.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(InetAddress.getByName(host.get()));
    } catch (UnknownHostException _) {
      throw CommandFailure.badInput(
          "\"" + host.get() + "\" is no address, and no name that this network knows",
          "Give an address of this computer, such as 192.168.1.20, or its name.");
    }
  }

  private Optional<Tls> tls() throws IOException, CommandFailure {
    if (tls.isEmpty()) {
      return Optional.empty();
    }
    var password = TlsPassword.of(System.getenv(), tls.get());
    try {
      return Optional.of(Tls.read(tls.get(), password));
    } finally {
      Arrays.fill(password, ' ');
    }
  }
}
