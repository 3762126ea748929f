package org.framewright.copies.device;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * Which disk a path lies on. The lines of mountinfo have the form of proc_pid_mountinfo(5); the
 * trees of sysfs are written from memory of such machines, except where a test says otherwise.
 */
@DisabledOnOs(OS.WINDOWS)
class LinuxDevicesTest {
  private static final String USB =
      "pci0000:00/0000:00:14.0/usb2/2-1/2-1:1.0/host6/target6:0:0/6:0:0:0";

  @TempDir private Path root;
  private SystemTree tree;

  @BeforeEach
  void aLaptopWithACardAndABackup() throws IOException {
    tree =
        new SystemTree(root)
            .disk("pci0000:00/nvme/nvme0", "nvme0n1", "259:0", "259:1")
            .disk(USB, "sdb", "8:16", "8:17")
            .disk("pci0000:00/ata1/host0/target0:0:0/0:0:0:0", "sda", "8:0", "8:1")
            .with(
                """
                sys/devices/pci0000:00/nvme/nvme0/block/nvme0n1/wwid = eui.0025388b01b2c3d4
                sys/devices/pci0000:00/nvme/nvme0/block/nvme0n1/diskseq = 1
                sys/devices/pci0000:00/0000:00:14.0/usb2/2-1/idVendor = 0bda
                sys/devices/pci0000:00/0000:00:14.0/usb2/2-1/idProduct = 0316
                sys/devices/pci0000:00/0000:00:14.0/usb2/2-1/serial = 20120501030900000
                sys/devices/%s/block/sdb/diskseq = 14
                sys/devices/%s/block/sdb/size = 124735488
                proc/sys/kernel/random/boot_id = 5b0f2c1e-7c1d-4c83-9d0e-111111111111
                proc/sys/kernel/hostname = cart-1
                run/udev/data/b8:17 = E:ID_FS_UUID=6634-6633
                """
                    .formatted(USB, USB))
            .mounts(
                """
                22 1 259:1 / / rw,relatime shared:1 - ext4 /dev/nvme0n1p1 rw
                30 22 0:5 / /dev rw - devtmpfs udev rw
                31 22 8:17 / /media/ines/EOS\\040DIGITAL rw,nosuid shared:2 - exfat /dev/sdb1 rw
                32 22 8:1 / /media/backup rw - ext4 /dev/sda1 rw
                33 22 259:1 /home/ines/shots /srv/shots rw - ext4 /dev/nvme0n1p1 rw
                34 22 0:40 / /tmp rw - tmpfs tmpfs rw
                """);
  }

  private Device at(String path) throws IOException {
    return tree.devices().find(path, Optional.empty()).device();
  }

  @Test
  void aPartitionIsItsWholeDiskAndABlankInAMountsNameIsRead() throws IOException {
    var card = at("/media/ines/EOS DIGITAL/DCIM/100EOS/IMG_0001.CR3");
    assertThat(card.kind()).isEqualTo(Device.Kind.DISK);
    assertThat(card.id()).isEqualTo("disk:8:16+serial:0bda:0316:20120501030900000");
    assertThat(card.label()).isEqualTo("disk sdb (64 GB)");
    assertThat(at("/media/ines/EOS DIGITALIS").id()).startsWith("disk:259:0");
  }

  @Test
  void twoDisksAreTwoAndABindMountIsTheDiskBelow() throws IOException {
    assertThat(Device.compare(at("/home/x"), at("/media/backup/x")))
        .isEqualTo(Device.Sameness.DISTINCT);
    assertThat(Device.compare(at("/home/x"), at("/srv/shots/x"))).isEqualTo(Device.Sameness.SAME);
  }

  @Test
  void memoryIsNoMedium() throws IOException {
    assertThat(at("/tmp/x").kind()).isEqualTo(Device.Kind.NO_MEDIUM);
    assertThat(Device.compare(at("/tmp/x"), at("/home/x"))).isEqualTo(Device.Sameness.UNKNOWN);
  }

  @Test
  void aMountThatALaterOneHidesIsNotMet() throws IOException {
    tree.mounts(
        """
        22 1 259:1 / / rw - ext4 /dev/nvme0n1p1 rw
        31 22 8:17 / /media/card rw - exfat /dev/sdb1 rw
        32 22 8:1 / /media rw - ext4 /dev/sda1 rw
        """);
    assertThat(at("/media/card/x").id()).isEqualTo("disk:8:0");
    tree.mounts(
        """
        22 1 259:1 / / rw - ext4 /dev/nvme0n1p1 rw
        31 22 8:17 / /media/card rw - exfat /dev/sdb1 rw
        32 31 8:1 / /media/card rw - ext4 /dev/sda1 rw
        """);
    assertThat(at("/media/card/x").id()).isEqualTo("disk:8:0");
  }

  @Test
  void aFileWithAnotherDeviceNumberThanItsMountIsNotTrusted() throws IOException {
    var devices = tree.devices();
    assertThat(devices.find("/media/backup/x", Optional.of("8:1")).device().kind())
        .isEqualTo(Device.Kind.DISK);
    assertThat(devices.find("/media/backup/x", Optional.of("8:17")).device().kind())
        .isEqualTo(Device.Kind.UNKNOWN);
  }

  @Test
  void aVolumeGroupOrAnArrayIsOneDeviceOfAllItsDisks() throws IOException {
    tree.disk("virtual", "dm-0", "253:0", "")
        .disk("virtual", "md0", "9:0", "")
        .with(
            """
            sys/devices/virtual/block/dm-0/dm/name = shots-jobs
            sys/devices/virtual/block/dm-0/slaves/md0 -> ../../md0
            sys/devices/virtual/block/md0/slaves/sda1 -> ../../../../pci0000:00/ata1/host0/target0:0:0/0:0:0:0/block/sda/sda1
            sys/devices/virtual/block/md0/slaves/sdb1 -> ../../../../%s/block/sdb/sdb1
            """
                .formatted(USB))
        .mounts(
            """
            22 1 259:1 / / rw - ext4 /dev/nvme0n1p1 rw
            31 22 253:0 / /jobs rw - xfs /dev/mapper/shots-jobs rw
            32 22 8:17 / /card rw - exfat /dev/sdb1 rw
            """);
    assertThat(at("/jobs/x").kind()).isEqualTo(Device.Kind.DISK);
    assertThat(Device.compare(at("/jobs/x"), at("/card/x"))).isEqualTo(Device.Sameness.SAME);
    assertThat(Device.compare(at("/jobs/x"), at("/x"))).isEqualTo(Device.Sameness.DISTINCT);
  }

  @Test
  void aBtrfsIsAllItsDisksWhateverItsSubvolumeSays() throws IOException {
    tree.with(
            """
            sys/fs/btrfs/1c7b9c1e/devices/sda1/dev = 8:1
            sys/fs/btrfs/1c7b9c1e/devices/sdb1/dev = 8:17
            """)
        .mounts(
            """
            22 1 259:1 / / rw - ext4 /dev/nvme0n1p1 rw
            31 22 0:40 /@jobs /jobs rw - btrfs /dev/sda1 rw,subvol=/@jobs
            32 22 0:40 /@home /home rw - btrfs /dev/sda1 rw,subvol=/@home
            33 22 0:44 / /other rw - btrfs /dev/sdz1 rw
            """);
    assertThat(Device.compare(at("/jobs/x"), at("/home/x"))).isEqualTo(Device.Sameness.SAME);
    assertThat(at("/jobs/x").id()).contains("disk:8:0").contains("disk:8:16");
    assertThat(at("/other/x").kind()).isEqualTo(Device.Kind.UNKNOWN);
  }

  @Test
  void anImageInAFileIsTheDiskOfTheFile() throws IOException {
    tree.disk("virtual", "loop0", "7:0", "")
        .disk("virtual", "loop1", "7:1", "")
        .with(
            """
            sys/devices/virtual/block/loop0/loop/backing_file = /media/backup/card.img
            sys/devices/virtual/block/loop1/loop/backing_file = /media/backup/gone.img (deleted)
            """)
        .mounts(
            """
            22 1 259:1 / / rw - ext4 /dev/nvme0n1p1 rw
            32 22 8:1 / /media/backup rw - ext4 /dev/sda1 rw
            33 22 7:0 / /image rw - ext4 /dev/loop0 rw
            34 22 7:1 / /gone rw - ext4 /dev/loop1 rw
            """);
    var found = tree.devices().find("/image/x", Optional.empty());
    assertThat(found.onImage()).isTrue();
    assertThat(found.device().id()).isEqualTo("disk:8:0");
    assertThat(at("/gone/x").kind()).isEqualTo(Device.Kind.UNKNOWN);
  }

  @Test
  void anOverlayIsKnownOnlyWhereAllItsLayersLieOnOneDisk() throws IOException {
    tree.mounts(
        """
        22 1 259:1 / / rw - ext4 /dev/nvme0n1p1 rw
        32 22 8:1 / /media/backup rw - ext4 /dev/sda1 rw
        40 22 0:50 / /one rw - overlay overlay rw,lowerdir=/a:/b,upperdir=/c,workdir=/w
        41 22 0:51 / /two rw - overlay overlay rw,lowerdir=/a,upperdir=/media/backup/c,workdir=/w
        42 22 0:52 / /self rw - overlay overlay rw,lowerdir=/self/a,upperdir=/self/b,workdir=/w
        """);
    assertThat(Device.compare(at("/one/x"), at("/a"))).isEqualTo(Device.Sameness.SAME);
    assertThat(at("/two/x").kind()).isEqualTo(Device.Kind.UNKNOWN);
    assertThat(at("/self/x").kind()).isEqualTo(Device.Kind.UNKNOWN);
  }

  @Test
  void aShareIsItsServerAndThisComputerIsNoServer() throws IOException {
    tree.mounts(
        """
        22 1 259:1 / / rw - ext4 /dev/nvme0n1p1 rw
        40 22 0:50 / /n1 rw - nfs4 NAS.example:/shots rw,addr=192.0.2.7
        41 22 0:51 / /n2 rw - cifs //nas/jobs rw,addr=192.0.2.7
        42 22 0:52 / /n3 rw - fuse.sshfs ines@tower.example:/data rw
        43 22 0:53 / /n4 rw - nfs cart-1.example:/shots rw
        44 22 0:54 / /n5 rw - nfs [2001:db8::7]:/shots rw
        45 22 0:55 / /n6 rw - fuse.clouddrive clouddrive rw
        """);
    assertThat(at("/n1/x"))
        .isEqualTo(
            new Device(
                "server:nas.example+server:192.0.2.7", Device.Kind.REMOTE, "server nas.example"));
    assertThat(Device.compare(at("/n1/x"), at("/n2/x"))).isEqualTo(Device.Sameness.SAME);
    assertThat(at("/n3/x").label()).isEqualTo("server tower.example");
    assertThat(at("/n5/x").label()).isEqualTo("server 2001:db8::7");
    assertThat(Device.compare(at("/n1/x"), at("/n3/x"))).isEqualTo(Device.Sameness.UNKNOWN);
    assertThat(Device.compare(at("/n1/x"), at("/x"))).isEqualTo(Device.Sameness.DISTINCT);
    assertThat(at("/n4/x").kind()).isEqualTo(Device.Kind.UNKNOWN);
    assertThat(at("/n6/x").kind()).isEqualTo(Device.Kind.UNKNOWN);
  }

  @Test
  void aDiskOfAVirtualMachineIsNotKnownButIsItself() throws IOException {
    // Recorded: a virtual machine with one disk.
    tree.disk("pci0000:00/0000:00:02.0/virtio1", "vda", "254:0", "")
        .mounts("27 1 254:0 / / rw,relatime - ext4 /dev/vda rw,discard\n");
    assertThat(at("/x").kind()).isEqualTo(Device.Kind.UNKNOWN);
    assertThat(Device.compare(at("/x"), at("/y"))).isEqualTo(Device.Sameness.SAME);
  }

  @Test
  void aCardIsKnownByItsVolumeAndByTheInsertionOfItsDisk() throws IOException {
    var devices = tree.devices();
    var first = devices.identity(devices.find("/media/ines/EOS DIGITAL/x", Optional.empty()));
    assertThat(first)
        .isEqualTo(new MountIdentity("6634-6633", "14", "5b0f2c1e-7c1d-4c83-9d0e-111111111111"));
    assertThat(first.wasAwaySince(first)).isFalse();
    assertThat(first.wasAwaySince(new MountIdentity("6634-6633", "13", first.boot()))).isTrue();
    assertThat(first.wasAwaySince(new MountIdentity("6634-6633", "14", "other"))).isTrue();
    assertThat(first.wasAwaySince(new MountIdentity("6634-0000", "13", "other"))).isFalse();
    assertThat(first.wasAwaySince(new MountIdentity("6634-6633", "", first.boot()))).isFalse();
    assertThat(first.wasAwaySince(new MountIdentity("6634-6633", "13", ""))).isFalse();
    var noUuid = devices.identity(devices.find("/media/backup/x", Optional.empty()));
    assertThat(noUuid.volume()).isEmpty();
  }

  @Test
  void hostileLinesOfMountinfoEndInAnAnswer() throws IOException {
    tree.mounts(
        """
        garbage
        1 1 8:17 / / rw - ext4
        22 23 259:1 / / rw - ext4 /dev/nvme0n1p1 rw
        23 22 8:1 / / rw - ext4 /dev/../../etc rw
        """);
    assertThat(at("/x").kind()).isIn(Device.Kind.UNKNOWN, Device.Kind.DISK);
    tree.mounts("");
    assertThat(at("/x").kind()).isEqualTo(Device.Kind.UNKNOWN);
  }
}
