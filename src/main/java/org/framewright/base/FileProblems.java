package org.framewright.base;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.NotLinkException;
import java.nio.file.Path;
import java.nio.file.ReadOnlyFileSystemException;
import java.util.Locale;

/** Puts into words what a disk or a system refused. */
public final class FileProblems {
  private FileProblems() {}

  /** A failure with the file's name, which a channel does not say. */
  public static IOException named(Path file, IOException failure) {
    if (failure instanceof FileSystemException) {
      return failure;
    }
    var named = new FileSystemException(file.toString(), null, failure.getMessage());
    named.initCause(failure);
    return named;
  }

  /** A failure to read or write: what, where and what to do about it. */
  public static Problem of(IOException failure) {
    return switch (failure) {
      case FileProblemException e -> e.problem();
      case NoSuchFileException e ->
          new Problem(
              "there is no such file or folder",
              e.getFile(),
              "Check the path, and that its drive is plugged in.");
      case AccessDeniedException e ->
          new Problem(
              "no permission for it", e.getFile(), "Ask for access to it, or use another folder.");
      case FileAlreadyExistsException e ->
          new Problem(
              "something of this name is there already",
              e.getFile(),
              "Move it away or choose another name; nothing was overwritten.");
      case NotDirectoryException e ->
          new Problem("this is no folder", e.getFile(), "Give a folder.");
      case DirectoryNotEmptyException e ->
          new Problem("this folder is not empty", e.getFile(), "Look at what is in it.");
      case FileSystemLoopException e ->
          new Problem("links lead round in a circle", e.getFile(), "Remove the link.");
      case NotLinkException e -> new Problem("this is no link", e.getFile(), "");
      case FileSystemException e -> bySystem(e, e.getFile(), e.getReason());
      case CharacterCodingException _ ->
          new Problem("this is not UTF-8 text", "", "Save it as plain text in UTF-8.");
      case FileNotFoundException e ->
          new Problem("this file cannot be opened", text(e.getMessage()), "Check the path.");
      default -> bySystem(failure, "", failure.getMessage());
    };
  }

  /** A text that no path can be made of. */
  public static Problem of(InvalidPathException failure) {
    return new Problem(
        Text.of("this is no path that the system knows: {0}", text(failure.getReason())),
        failure.getInput(),
        "Check its characters. Where no locale is set, set LC_ALL=C.UTF-8.");
  }

  /** A write to a file system that takes none. */
  public static Problem of(ReadOnlyFileSystemException failure) {
    return readOnly("");
  }

  /** The words of strerror(3) on Linux and macOS, and of FormatMessage on Windows. */
  private static Problem bySystem(IOException failure, String file, String reason) {
    var where = text(file);
    var said = text(reason).toLowerCase(Locale.ROOT);
    if (said.contains("no space left") || said.contains("not enough space")) {
      return new Problem("the disk is full", where, "Make room on it, then do it again.");
    }
    if (said.contains("quota")) {
      return new Problem(
          "your share of this disk is used up", where, "Make room, then do it again.");
    }
    if (said.contains("read-only") || said.contains("write protected")) {
      return readOnly(where);
    }
    if (said.contains("input/output error") || said.contains("i/o device error")) {
      return new Problem(
          "the disk could not read or write it",
          where,
          "Check its cable; if it happens again, copy everything to another disk first.");
    }
    if (said.contains("is a directory")) {
      return new Problem("this is a folder, a file was meant", where, "Give a file.");
    }
    if (said.contains("not a directory")) {
      return new Problem("something on this path is no folder", where, "Check the path.");
    }
    if (said.contains("not a regular file")) {
      return new Problem(
          "this is a folder, a link or a device, a file was meant", where, "Give a plain file.");
    }
    if (said.contains("name too long")) {
      return new Problem("this name is too long for the disk", where, "Use a shorter one.");
    }
    if (said.contains("too many open files")) {
      return new Problem(
          "the system lets this program open no more files", where, "Close other programs.");
    }
    if (said.contains("too many levels of symbolic links")) {
      return new Problem(
          "this is a link, and links are not followed here", where, "Put the file itself there.");
    }
    if (said.contains("stale file handle")
        || said.contains("transport endpoint")
        || said.contains("no such device")
        || said.contains("network")) {
      return new Problem(
          "the drive or the server is gone", where, "Connect it again, then do it again.");
    }
    if (said.contains("being used by another process") || said.contains("text file busy")) {
      return new Problem("another program has it open", where, "Close it there, then do it again.");
    }
    if (said.contains("file too large")) {
      return new Problem(
          "the disk's format takes no file of this size", where, "Use a disk of another format.");
    }
    return new Problem(
        said.isEmpty() ? Text.of("it cannot be read or written") : Text.of("{0}", text(reason)),
        where.isEmpty() && said.isEmpty() ? failure.getClass().getSimpleName() : where,
        "Check the drive and its free space, then do it again.");
  }

  private static Problem readOnly(String where) {
    return new Problem(
        "the disk can only be read", where, "Unlock it or use another one, then do it again.");
  }

  private static String text(String text) {
    return text == null ? "" : text;
  }
}
