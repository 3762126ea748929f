package org.framewright.frames;

/**
 * A camera body as its frames name it; a part that no frame names is empty.
 *
 * @param make Exif Make
 * @param model Exif Model
 * @param serial Exif BodySerialNumber, or the one of the maker's notes
 */
public record Camera(String make, String model, String serial) {}
