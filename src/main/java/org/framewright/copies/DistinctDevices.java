package org.framewright.copies;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.framewright.copies.device.Device;

/**
 * Counts, of places, how many of them lie on disks that are certainly different. Sets of places are
 * the bits of a number.
 */
final class DistinctDevices {
  /** With more places than this the count may be too low, never too high. */
  private static final int MOST_EXACT = 12;

  private final List<Device> devices;
  private final boolean[][] apart;
  private final Map<Long, Integer> known = new HashMap<>();

  DistinctDevices(List<Device> devices) {
    this.devices = devices;
    int n = devices.size();
    // One that is two others by different marks makes those two one.
    var group = new int[n];
    for (int i = 0; i < n; i++) {
      group[i] = i;
    }
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < i; j++) {
        if (Device.compare(devices.get(i), devices.get(j)) == Device.Sameness.SAME) {
          int from = group[i];
          int to = group[j];
          for (int k = 0; k < n; k++) {
            group[k] = group[k] == from ? to : group[k];
          }
        }
      }
    }
    apart = new boolean[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        apart[i][j] =
            group[i] != group[j]
                && Device.compare(devices.get(i), devices.get(j)) == Device.Sameness.DISTINCT
                && !bothRemote(i, j);
      }
    }
  }

  /** Whether two places certainly lie on different disks. */
  boolean apart(int one, int other) {
    return apart[one][other];
  }

  /** Two servers may be one by two names, and stand in one house. */
  private boolean bothRemote(int i, int j) {
    return devices.get(i).kind() == Device.Kind.REMOTE
        && devices.get(j).kind() == Device.Kind.REMOTE;
  }

  /** On how many different disks these places lie at the least. */
  int count(long places) {
    return known.computeIfAbsent(places, this::counted);
  }

  private int counted(long places) {
    var members = new ArrayList<Integer>();
    for (int i = 0; i < devices.size(); i++) {
      if ((places & 1L << i) != 0) {
        members.add(i);
      }
    }
    if (members.size() > MOST_EXACT) {
      return oneByOne(members);
    }
    int most = 0;
    for (int chosen = 0; chosen < 1 << members.size(); chosen++) {
      int size = Integer.bitCount(chosen);
      if (size > most && allApart(members, chosen)) {
        most = size;
      }
    }
    return most;
  }

  private boolean allApart(List<Integer> members, int chosen) {
    for (int i = 0; i < members.size(); i++) {
      for (int j = 0; j < i; j++) {
        if ((chosen & 1 << i) != 0
            && (chosen & 1 << j) != 0
            && !apart[members.get(i)][members.get(j)]) {
          return false;
        }
      }
    }
    return true;
  }

  private int oneByOne(List<Integer> members) {
    var taken = new ArrayList<Integer>();
    for (int member : members) {
      if (taken.stream().allMatch(other -> apart[member][other])) {
        taken.add(member);
      }
    }
    return taken.size();
  }
}
