package org.framewright.share;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.UnrecoverableKeyException;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import org.framewright.base.SmallFiles;
import org.framewright.base.Text;

/** A certificate with its key, as a studio has it for a name of its own. */
public final class Tls {
  /** Chains of certificates take some kilobytes. */
  private static final int LARGEST_FILE = 1 << 20;

  private final SSLContext context;

  private Tls(SSLContext context) {
    this.context = context;
  }

  /**
   * Reads a key file (PKCS #12, RFC 7292).
   *
   * @param password of the file and of the key in it; not kept
   * @throws ShareException if it is no such file, has no key, or the password is wrong
   * @throws IOException if it cannot be read
   */
  public static Tls read(Path file, char[] password) throws IOException {
    var bytes = SmallFiles.read(file, LARGEST_FILE);
    try {
      var keys = KeyStore.getInstance("PKCS12");
      keys.load(new ByteArrayInputStream(bytes), password);
      if (!hasKey(keys)) {
        throw new ShareException(
            Text.of("this key file has a certificate but not its key"),
            file.toString(),
            Text.of("Export certificate and key together as PKCS #12."));
      }
      var managers = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
      managers.init(keys, password);
      var context = SSLContext.getInstance("TLS");
      context.init(managers.getKeyManagers(), null, null);
      return new Tls(context);
    } catch (ShareException e) {
      throw e;
    } catch (GeneralSecurityException | IOException e) {
      throw unreadable(file, e);
    }
  }

  private static boolean hasKey(KeyStore keys) throws GeneralSecurityException {
    for (var names = keys.aliases(); names.hasMoreElements(); ) {
      if (keys.isKeyEntry(names.nextElement())) {
        return true;
      }
    }
    return false;
  }

  /** {@link KeyStore#load}: a wrong password is told by the cause. */
  private static ShareException unreadable(Path file, Exception failure) {
    boolean password =
        failure instanceof UnrecoverableKeyException
            || failure.getCause() instanceof UnrecoverableKeyException;
    var told =
        password
            ? new ShareException(
                Text.of("the password of this key file is wrong"),
                file.toString(),
                Text.of("Give the password that it was exported with."))
            : new ShareException(
                Text.of("this is no key file"),
                file.toString(),
                Text.of("Export certificate and key together as PKCS #12."));
    told.initCause(failure);
    return told;
  }

  SSLContext context() {
    return context;
  }
}
