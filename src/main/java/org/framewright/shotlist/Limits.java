package org.framewright.shotlist;

/**
 * How much a list may hold, so that reading one takes seconds and no more memory than a job has to
 * spare, whatever a file contains.
 */
final class Limits {
  /**
   * Lines that are not blank. A line may be one size of a garment: 60,000 lines of eight sizes are
   * 7,500 setups. What is longer is a stock list or an export of another kind.
   */
  static final int LINES = 60_000;

  /** Columns of one line that may hold something. */
  static final int COLUMNS = 1_000;

  /** Cells in all: 33 columns for each of the lines. */
  static final int CELLS = 2_000_000;

  /**
   * Characters of all cells together: the import of a list is one event of the job's log, which has
   * room for it.
   */
  static final long TEXT = 16L << 20;

  /**
   * Characters of one cell, which is what a cell of a spreadsheet may hold. Source: Microsoft,
   * "Excel specifications and limits".
   */
  static final int CELL = 32_767;

  /** Bytes of a list as text: 280 for each line. */
  static final long TEXT_BYTES = 16L << 20;

  /** Bytes of a workbook as it lies on the disk; pictures of the garments may be in it. */
  static final long FILE_BYTES = 64L << 20;

  /** Bytes of a workbook's texts, unpacked: 50 for each cell of a list with 60 columns. */
  static final long UNPACKED_BYTES = 64L << 20;

  /** Parts of a workbook: its sheets, its pictures and what describes them. */
  static final int PARTS = 20_000;

  /** Sheets of a workbook that are looked at. */
  static final int SHEETS = 100;

  /** Columns of all rows of a workbook together, blank ones too. */
  static final long SPAN = 20_000_000;

  /** Problems, and remarks, that are kept: nobody reads more of them. */
  static final int PROBLEMS = 1_000;

  private Limits() {}
}
