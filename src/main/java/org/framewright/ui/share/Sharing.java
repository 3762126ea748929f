package org.framewright.ui.share;

import java.io.IOException;
import java.net.URI;
import java.util.List;
import org.framewright.share.Invitation;
import org.framewright.share.PairedDevice;
import org.framewright.share.Role;

/** How the open job comes to be on devices of the network. */
@FunctionalInterface
public interface Sharing {
  /**
   * Begins; not on the interface thread.
   *
   * @throws IOException if no address or port of this computer can be had
   */
  Page begin() throws IOException;

  /** The page while it is there. From any thread. */
  interface Page extends AutoCloseable {
    /** Where devices find it. */
    URI address();

    /** A code for one device. */
    Invitation invite(Role role);

    /** A code that nobody is to use any more. */
    void withdraw(Invitation code);

    /** Every device that is paired. */
    List<PairedDevice> devices();

    /**
     * Sends a device away, at once.
     *
     * @throws IOException if that cannot be kept
     */
    void unpair(String id) throws IOException;

    /**
     * Tells of devices, until what is returned is closed.
     *
     * @param changed runs on any thread whenever a device was paired, came, left or was sent away
     */
    AutoCloseable listen(Runnable changed);

    @Override
    void close();
  }
}
