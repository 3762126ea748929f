package org.framewright.frames;

import com.drew.imaging.tiff.TiffProcessingException;
import com.drew.imaging.tiff.TiffReader;
import com.drew.lang.RandomAccessReader;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifDirectoryBase;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifTiffHandler;
import com.drew.metadata.exif.PanasonicRawIFD0Directory;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.framewright.base.Text;

/**
 * What the Exif blocks of a file say of its making. The tags are those of CIPA DC-008 (Exif); the
 * fields are taken apart by a library, over a reader that is bounded as all of {@link Bytes} is.
 */
final class ExifReader {
  private static final int RATING = 0x4746;
  private static final int RATING_SHARE = 0x4749;
  private static final int DNG_SERIAL = 0xC62F;

  /** Where bodies that write no BodySerialNumber name themselves in their maker's notes. */
  private static final List<String> SERIAL_NAMES =
      List.of("Camera Serial Number", "Serial Number", "Internal Serial Number");

  private static final Pattern TIME =
      Pattern.compile("(\\d{4})[:-](\\d{2})[:-](\\d{2})[ T](\\d{2}):(\\d{2}):(\\d{2}).*");

  private static final Pattern UNPRINTABLE = Pattern.compile("\\p{Cntrl}+");

  private static final Pattern OFFSET = Pattern.compile("([+-])(\\d{2}):(\\d{2})");

  private ExifReader() {}

  /**
   * Reads the blocks; what they do not say, or say in a way that makes no sense, is absent.
   *
   * @param raw whether they are a raw's, whose DateTime only the body can have written; in other
   *     pictures it is the time of the last change
   */
  static Capture read(List<Bytes> blocks, boolean raw) throws IOException {
    var metadata = new Metadata();
    for (var block : blocks) {
      if (block.size() <= Integer.MAX_VALUE) {
        parse(block, metadata);
      }
    }
    var directories =
        new ArrayList<Directory>(metadata.getDirectoriesOfType(ExifDirectoryBase.class));
    // RW2 and its like have a first directory of their own with the same fields for make and model.
    directories.addAll(metadata.getDirectoriesOfType(PanasonicRawIFD0Directory.class));
    var time = time(directories);
    if (time.isEmpty() && raw) {
      time = first(directories, ExifDirectoryBase.TAG_DATETIME, ExifReader::time);
    }
    return new Capture(time, offset(directories), camera(directories, metadata), rating(metadata));
  }

  private static void parse(Bytes block, Metadata into) throws IOException {
    try {
      new TiffReader().processTiff(new Reader(block), new Handler(into), 0);
    } catch (TiffProcessingException | Malformed | RuntimeException | StackOverflowError e) {
      // The library met something broken; what it had read until there still counts.
      return;
    }
  }

  private static Optional<LocalDateTime> time(List<Directory> directories) {
    return time(
            directories,
            ExifDirectoryBase.TAG_DATETIME_ORIGINAL,
            ExifDirectoryBase.TAG_SUBSECOND_TIME_ORIGINAL)
        .or(
            () ->
                time(
                    directories,
                    ExifDirectoryBase.TAG_DATETIME_DIGITIZED,
                    ExifDirectoryBase.TAG_SUBSECOND_TIME_DIGITIZED));
  }

  private static Optional<LocalDateTime> time(List<Directory> directories, int tag, int fraction) {
    return first(directories, tag, ExifReader::time)
        .map(
            time ->
                text(directories, fraction)
                    .map(digits -> time.withNano(nanos(digits)))
                    .orElse(time));
  }

  static Optional<LocalDateTime> time(String text) {
    var match = TIME.matcher(text);
    if (!match.matches()) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          LocalDateTime.of(
              number(match.group(1)),
              number(match.group(2)),
              number(match.group(3)),
              number(match.group(4)),
              number(match.group(5)),
              number(match.group(6))));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** Exif SubSecTime: the digits of the decimal fraction of the second. */
  static int nanos(String digits) {
    int nanos = 0;
    int scale = 100_000_000;
    for (int i = 0; i < digits.length() && scale > 0; i++) {
      char digit = digits.charAt(i);
      if (digit < '0' || digit > '9') {
        break;
      }
      nanos += (digit - '0') * scale;
      scale /= 10;
    }
    return nanos;
  }

  private static Optional<ZoneOffset> offset(List<Directory> directories) {
    return first(directories, ExifDirectoryBase.TAG_TIME_ZONE_ORIGINAL, ExifReader::offset);
  }

  static Optional<ZoneOffset> offset(String text) {
    var match = OFFSET.matcher(text);
    if (!match.matches()) {
      return Optional.empty();
    }
    int minutes = number(match.group(2)) * 60 + number(match.group(3));
    if (minutes > 18 * 60) {
      return Optional.empty();
    }
    int sign = match.group(1).equals("-") ? -1 : 1;
    return Optional.of(ZoneOffset.ofTotalSeconds(sign * minutes * 60));
  }

  private static int number(String digits) {
    return Integer.parseInt(digits);
  }

  private static Optional<Camera> camera(List<Directory> directories, Metadata metadata) {
    var make = text(directories, ExifDirectoryBase.TAG_MAKE).orElse("");
    var model = text(directories, ExifDirectoryBase.TAG_MODEL).orElse("");
    var serial =
        text(directories, ExifDirectoryBase.TAG_BODY_SERIAL_NUMBER)
            .or(() -> text(directories, DNG_SERIAL))
            .or(() -> serialOfMakersNotes(metadata))
            .orElse("");
    return make.isEmpty() && model.isEmpty() && serial.isEmpty()
        ? Optional.empty()
        : Optional.of(new Camera(make, model, serial));
  }

  private static Optional<String> serialOfMakersNotes(Metadata metadata) {
    for (var name : SERIAL_NAMES) {
      for (var directory : metadata.getDirectories()) {
        if (!directory.getName().contains("Makernote")) {
          continue;
        }
        for (var tag : directory.getTags()) {
          if (tag.getTagName().equals(name)) {
            var text = text(directory, tag.getTagType());
            if (!text.isEmpty()) {
              return Optional.of(text);
            }
          }
        }
      }
    }
    return Optional.empty();
  }

  private static OptionalInt rating(Metadata metadata) {
    for (var directory : metadata.getDirectoriesOfType(ExifIFD0Directory.class)) {
      var rating = directory.getInteger(RATING);
      if (rating != null && rating >= 1 && rating <= 5) {
        return OptionalInt.of(rating);
      }
      var share = directory.getInteger(RATING_SHARE);
      if (share != null && Stars.ofShare(share).isPresent()) {
        return Stars.ofShare(share);
      }
    }
    return OptionalInt.empty();
  }

  private static Optional<String> text(List<Directory> directories, int tag) {
    return first(directories, tag, Optional::of);
  }

  /** What the first text of a field means that means anything. */
  private static <T> Optional<T> first(
      List<Directory> directories, int tag, Function<String, Optional<T>> meaning) {
    for (var directory : directories) {
      if (directory.containsTag(tag)) {
        var text = text(directory, tag);
        var meant = text.isEmpty() ? Optional.<T>empty() : meaning.apply(text);
        if (meant.isPresent()) {
          return meant;
        }
      }
    }
    return Optional.empty();
  }

  private static String text(Directory directory, int tag) {
    var text =
        directory.getObject(tag) instanceof byte[] bytes
            ? new String(bytes, StandardCharsets.ISO_8859_1)
            : directory.getString(tag);
    if (text == null) {
      return "";
    }
    var printable = hasUnprintable(text) ? UNPRINTABLE.matcher(text).replaceAll(" ") : text;
    return printable.strip();
  }

  private static boolean hasUnprintable(String text) {
    for (int i = 0; i < text.length(); i++) {
      if (Character.isISOControl(text.charAt(i))) {
        return true;
      }
    }
    return false;
  }

  /**
   * The library's gathering of fields, without the packets of other kinds that lie in between, and
   * without the fields of Exif that nobody asks for: of many thousand files they are much garbage.
   *
   * <p>The library itself bounds nothing: fields may claim the same bytes over and over,
   * directories follow each other without end, and each remark on a fault is kept. So directories,
   * steps and what is kept are counted here, and beyond that nothing more is read.
   */
  private static final class Handler extends ExifTiffHandler {
    private static final Set<Integer> ASKED_FOR =
        Set.of(
            ExifDirectoryBase.TAG_DATETIME_ORIGINAL,
            ExifDirectoryBase.TAG_SUBSECOND_TIME_ORIGINAL,
            ExifDirectoryBase.TAG_DATETIME_DIGITIZED,
            ExifDirectoryBase.TAG_SUBSECOND_TIME_DIGITIZED,
            ExifDirectoryBase.TAG_DATETIME,
            ExifDirectoryBase.TAG_TIME_ZONE_ORIGINAL,
            ExifDirectoryBase.TAG_MAKE,
            ExifDirectoryBase.TAG_MODEL,
            ExifDirectoryBase.TAG_BODY_SERIAL_NUMBER,
            DNG_SERIAL,
            RATING,
            RATING_SHARE);

    /** XMP, IPTC, Photoshop's resources, ICC; and the JPEG inside an RW2. */
    private static final Set<Integer> OTHERS = Set.of(0x02BC, 0x83BB, 0x8649, 0x8773);

    private static final int RW2_JPEG = 0x002E;

    private static final int MOST_DIRECTORIES = 64;
    private static final int MOST_STEPS = 1 << 20;

    /** Of all values together; real files keep some kilobytes. */
    private static final int MOST_KEPT = 8 << 20;

    /** No time, name or serial number is longer. */
    private static final int LONGEST = 4096;

    /** What a field costs besides its value. */
    private static final int COST = 128;

    private int directories;
    private int steps;
    private long kept;

    Handler(Metadata into) {
      super(into, null, 0);
    }

    private void step() {
      if (++steps > MOST_STEPS) {
        throw new IllegalStateException("its Exif leads to more work than is sensible");
      }
    }

    @Override
    public boolean tryEnterSubIfd(int tagId) {
      step();
      if (directories >= MOST_DIRECTORIES || !super.tryEnterSubIfd(tagId)) {
        return false;
      }
      directories++;
      return true;
    }

    @Override
    public boolean hasFollowerIfd() {
      return ++directories <= MOST_DIRECTORIES && super.hasFollowerIfd();
    }

    @Override
    public void warn(String message) {
      step();
    }

    @Override
    public void error(String message) {
      step();
    }

    @Override
    public boolean customProcessTag(
        int tagOffset,
        Set<Integer> processedIfdOffsets,
        int tiffHeaderOffset,
        RandomAccessReader reader,
        int tagId,
        int byteCount)
        throws IOException {
      step();
      kept += COST + (byteCount > LONGEST ? 0 : byteCount);
      return kept > MOST_KEPT
          || OTHERS.contains(tagId)
          || (byteCount > LONGEST && _currentDirectory instanceof PanasonicRawIFD0Directory)
          || (tagId == RW2_JPEG && _currentDirectory instanceof PanasonicRawIFD0Directory)
          || super.customProcessTag(
              tagOffset, processedIfdOffsets, tiffHeaderOffset, reader, tagId, byteCount)
          || byteCount > LONGEST
          || (_currentDirectory instanceof ExifDirectoryBase && !ASKED_FOR.contains(tagId));
    }
  }

  /** The library's way of reading, over {@link Bytes}. */
  private static final class Reader extends RandomAccessReader {
    private final Bytes bytes;

    Reader(Bytes bytes) {
      this.bytes = bytes;
    }

    @Override
    public int toUnshiftedOffset(int localOffset) {
      return localOffset;
    }

    @Override
    public byte getByte(int index) throws IOException {
      return (byte) bytes.u8(index);
    }

    @Override
    public byte[] getBytes(int index, int count) throws IOException {
      return bytes.read(index, count);
    }

    @Override
    protected void validateIndex(int index, int bytesRequested) throws IOException {
      if (!isValidIndex(index, bytesRequested)) {
        throw new Malformed(Text.of("a field lies outside the file"));
      }
    }

    @Override
    protected boolean isValidIndex(int index, int bytesRequested) {
      return bytes.holds(index, bytesRequested);
    }

    @Override
    public long getLength() {
      return bytes.size();
    }
  }
}
