package org.framewright.handoff.metadata;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The older data of pictures: IPTC-NAA Information Interchange Model, version 4, of which record 2
 * says what XMP says today. They are read to tell where the two differ, and never written.
 */
final class Iim {
  private static final int TAG = 0x1C;
  private static final int APPLICATION = 2;
  private static final int RESOURCE = 0x0404;
  private static final byte[] SIGNATURE = {'8', 'B', 'I', 'M'};

  /** Names of datasets that hold a date in eight digits. */
  private static final int DATE_CREATED = 55;

  private final Map<Integer, List<String>> values = new HashMap<>();

  private Iim() {}

  /**
   * The IIM among the image resources that one program family writes; empty where there is none.
   */
  static Optional<byte[]> inResources(byte[] resources) {
    var bytes = ByteBuffer.wrap(resources);
    while (bytes.remaining() >= 12) {
      for (byte letter : SIGNATURE) {
        if (bytes.get() != letter) {
          return Optional.empty();
        }
      }
      int id = Short.toUnsignedInt(bytes.getShort());
      int name = Byte.toUnsignedInt(bytes.get());
      int rest = name + (name + 1) % 2;
      if (bytes.remaining() < rest + 4) {
        return Optional.empty();
      }
      bytes.position(bytes.position() + rest);
      int length = bytes.getInt();
      if (length < 0 || length > bytes.remaining()) {
        return Optional.empty();
      }
      var data = new byte[length];
      bytes.get(data);
      if (id == RESOURCE) {
        return Optional.of(data);
      }
      bytes.position(Math.min(bytes.limit(), bytes.position() + length % 2));
    }
    return Optional.empty();
  }

  static Iim of(byte[] data) {
    var iim = new Iim();
    var bytes = ByteBuffer.wrap(data);
    while (bytes.remaining() >= 5 && bytes.get() == TAG) {
      int record = Byte.toUnsignedInt(bytes.get());
      int dataset = Byte.toUnsignedInt(bytes.get());
      int length = Short.toUnsignedInt(bytes.getShort());
      if (length > bytes.remaining()) {
        break; // Longer than 32767 bytes, or cut: nothing that we write.
      }
      var value = new byte[length];
      bytes.get(value);
      if (record == APPLICATION) {
        iim.values.computeIfAbsent(dataset, _ -> new ArrayList<>()).add(text(value));
      }
    }
    return iim;
  }

  /** Hardly anybody says the encoding rightly, but UTF-8 is seen to be UTF-8. */
  private static String text(byte[] value) {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(value)).toString();
    } catch (CharacterCodingException e) {
      return new String(value, StandardCharsets.ISO_8859_1);
    }
  }

  /** The properties of which it says something else than a block. */
  Set<Property> conflicts(Block block) {
    var conflicts = EnumSet.noneOf(Property.class);
    for (var property : block.values().keySet()) {
      property
          .dataset()
          .filter(dataset -> isOther(dataset, block.words(property)))
          .ifPresent(_ -> conflicts.add(property));
    }
    return conflicts;
  }

  private boolean isOther(Property.Dataset dataset, List<String> ours) {
    var said = values.getOrDefault(dataset.number(), List.of());
    return said.stream().anyMatch(text -> !text.isBlank())
        && !ours.stream().allMatch(our -> said.stream().anyMatch(it -> isSame(dataset, it, our)));
  }

  private static boolean isSame(Property.Dataset dataset, String said, String our) {
    if (dataset.number() == DATE_CREATED) {
      return our.replace("-", "").startsWith(said.strip());
    }
    var text = said.strip();
    if (text.equals(our.strip())) {
      return true;
    }
    // It has no room for more.
    int bytes = said.getBytes(StandardCharsets.UTF_8).length;
    return bytes > dataset.bytes() - 4 && our.startsWith(text);
  }
}
