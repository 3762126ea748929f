package org.framewright.base;

import static org.framewright.AssertThat.assertThat;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.NotLinkException;
import java.nio.file.ReadOnlyFileSystemException;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What disks refuse, in words. */
class FileProblemsTest {
  /**
   * Messages of strerror(3) in the GNU C Library, errno.h, and of FormatMessage on Windows (System
   * Error Codes 19, 32, 112, 1117, 1314 of its documentation; from memory).
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "No space left on device | the disk is full",
        "There is not enough space on the disk | the disk is full",
        "Disk quota exceeded | your share of this disk is used up",
        "Read-only file system | the disk can only be read",
        "The media is write protected | the disk can only be read",
        "Input/output error | the disk could not read or write it",
        "The request could not be performed because of an I/O device error | the disk could not read or write it",
        "Is a directory | this is a folder, a file was meant",
        "Not a directory | something on this path is no folder",
        "not a regular file | this is a folder, a link or a device, a file was meant",
        "File name too long | this name is too long for the disk",
        "Too many open files | the system lets this program open no more files",
        "Too many levels of symbolic links or unable to access attributes of symbolic link | this is a link, and links are not followed here",
        "Stale file handle | the drive or the server is gone",
        "Transport endpoint is not connected | the drive or the server is gone",
        "No such device | the drive or the server is gone",
        "The specified network name is no longer available | the drive or the server is gone",
        "The process cannot access the file because it is being used by another process | another program has it open",
        "Text file busy | another program has it open",
        "File too large | the disk's format takes no file of this size",
        "Something new | Something new"
      })
  void saysWhatASystemSaysInWordsOfAPerson(String reason, String what) {
    var problem = FileProblems.of(new FileSystemException("/shoots/a", null, reason));

    assertThat(problem.what()).isEqualTo(what);
    assertThat(problem.where()).isEqualTo("/shoots/a");
    assertThat(problem.remedy()).isNotBlank();
    assertThat(FileProblems.of(new IOException(reason)).what()).isEqualTo(what);
  }

  static Stream<Arguments> kinds() {
    return Stream.of(
        Arguments.of(new NoSuchFileException("f"), "there is no such file or folder"),
        Arguments.of(new AccessDeniedException("f"), "no permission for it"),
        Arguments.of(
            new FileAlreadyExistsException("f"), "something of this name is there already"),
        Arguments.of(new NotDirectoryException("f"), "this is no folder"),
        Arguments.of(new DirectoryNotEmptyException("f"), "this folder is not empty"),
        Arguments.of(new FileSystemLoopException("f"), "links lead round in a circle"),
        Arguments.of(new FileNotFoundException("f"), "this file cannot be opened"));
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void saysWhereAndWhatToDo(IOException failure, String what) {
    var problem = FileProblems.of(failure);

    assertThat(problem.what()).isEqualTo(what);
    assertThat(problem.where()).isEqualTo("f");
    assertThat(problem.remedy()).isNotBlank();
    assertThat(problem.sentence()).isEqualTo("f: " + what);
  }

  @Test
  void aFailureWithoutWordsIsNamedByItsKind() {
    var problem = FileProblems.of(new IOException((String) null));

    assertThat(problem.sentence()).isEqualTo("IOException: it cannot be read or written");
    assertThat(FileProblems.of(new FileSystemException("f")).sentence())
        .isEqualTo("f: it cannot be read or written");
    assertThat(FileProblems.of(new NotLinkException("f")).what()).isEqualTo("this is no link");
  }

  @Test
  void bytesThatAreNoTextAreToldAsSuch() {
    assertThat(FileProblems.of(new MalformedInputException(1)).what())
        .isEqualTo("this is not UTF-8 text");
  }

  @Test
  void pathsThatAreNoneAndDisksThatTakeNothing() {
    var path = FileProblems.of(new InvalidPathException("a\0b", "Nul character not allowed"));
    assertThat(path.where()).isEqualTo("a\0b");
    assertThat(path.what()).contains("Nul character not allowed");
    assertThat(FileProblems.of(new ReadOnlyFileSystemException()).what())
        .isEqualTo("the disk can only be read");
  }

  @Test
  void aProblemWithoutAPlaceIsASentenceByItself() {
    assertThat(new Problem("the list is empty", "Import one.").sentence())
        .isEqualTo("the list is empty");
  }
}
