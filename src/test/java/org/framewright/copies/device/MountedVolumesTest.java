package org.framewright.copies.device;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MountedVolumesTest {
  @TempDir Path temp;

  /** Lines by proc_pid_mountinfo(5): a card, a disk by FUSE, a share, memory, the root. */
  @Test
  void onLinuxDisksAreVolumesAndSharesAreLeftAlone() throws Exception {
    var mountinfo =
        Files.writeString(
            temp.resolve("mountinfo"),
            """
            22 1 8:2 / / rw,relatime shared:1 - ext4 /dev/sda2 rw
            30 22 0:5 / /proc rw - proc proc rw
            41 22 8:17 / /media/ines/EOS\\040DIGITAL rw,nosuid - vfat /dev/sdb1 rw
            42 22 0:44 / /media/ines/SSD rw,nosuid - fuseblk /dev/sdc1 rw
            43 22 0:45 / /mnt/studio rw - nfs4 server:/shoots rw,addr=192.0.2.7
            44 22 0:46 / /tmp rw - tmpfs tmpfs rw
            """);
    assertThat(MountedVolumes.linux(mountinfo))
        .containsExactly(Path.of("/media/ines/EOS DIGITAL"), Path.of("/media/ines/SSD"));
  }

  @Test
  void thisSystemCanBeAsked() throws Exception {
    assertThat(MountedVolumes.ofThisSystem().folders()).doesNotContainNull();
  }
}
