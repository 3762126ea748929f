package org.framewright.studio;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A store whose address asks for encryption gets it, or is not opened. */
@Tag("slow")
class StoreTlsTest {

  @Test
  void theCertificateIsCheckedAsTheAddressAsks() throws Exception {
    assumeTrue(Files.isExecutable(Path.of("/usr/bin/openssl")), "there is no openssl here");
    try (var server = PlayedServer.own()) {
      var database = server.database();
      var plain = server.address(database, PlayedServer.STATION).url();
      var checked = StoreAddress.parse(plain + "?sslmode=verify-full");
      assertThatThrownBy(() -> Store.open(checked, PlayedServer.PASSWORD))
          .hasMessageContaining("does not encrypt as its address asks");
      var certificate = server.startEncrypted();
      var trusted = StoreAddress.parse(plain + "?sslmode=verify-full&sslrootcert=" + certificate);
      try (var store = Store.open(trusted, PlayedServer.PASSWORD)) {
        assertThat(isEncrypted(store)).isTrue();
      }
      assertThatThrownBy(() -> Store.open(checked, PlayedServer.PASSWORD))
          .isInstanceOfSatisfying(
              StoreException.class,
              e -> assertThat(e.problem().remedy()).contains("sslrootcert=FILE"));
    }
  }

  private static boolean isEncrypted(Store store) throws StoreException {
    return store.with(
        connection -> {
          try (var statement = connection.createStatement();
              var row =
                  statement.executeQuery(
                      "select ssl from pg_stat_ssl where pid = pg_backend_pid()")) {
            return row.next() && row.getBoolean(1);
          }
        });
  }
}
