package org.brewchem.readers;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** What became of a file: which columns were used, what was ignored, odd and faulty. Immutable. */
public final class ReadingReport {

  private final String file;
  private final long rows;
  private final List<String> used;
  private final List<String> ignored;
  private final List<String> odd;
  private final List<Fault> faults;
  private final long faultCount;
  private final List<String> advice;

  private ReadingReport(Draft draft, long rows, List<String> used, List<String> advice) {
    this.file = draft.file;
    this.rows = rows;
    this.used = List.copyOf(used);
    this.ignored = draft.lines(draft.ignored);
    this.odd = draft.lines(draft.odd);
    this.faults = List.copyOf(draft.faults);
    this.faultCount = draft.faultCount;
    this.advice = List.copyOf(advice);
  }

  /**
   * Returns how many rows were read.
   *
   * @return the count, those with faults included
   */
  public long rows() {
    return rows;
  }

  /**
   * Returns the columns that went into the table.
   *
   * @return such as {@code "Calcium (mg/l)" as calcium [mg/L]}, in the order of the file
   */
  public List<String> used() {
    return used;
  }

  /**
   * Returns what did not go into the table.
   *
   * @return such as {@code comment lines: 2, the first in line 1}
   */
  public List<String> ignored() {
    return ignored;
  }

  /**
   * Returns what went into the table by a declared option.
   *
   * @return such as {@code "n.d." taken as missing: 3 cells, the first in line 7}
   */
  public List<String> odd() {
    return odd;
  }

  /**
   * Returns the faults, of which the first thousand are kept.
   *
   * @return an unmodifiable list in the order of the file
   */
  public List<Fault> faults() {
    return faults;
  }

  /**
   * Returns how many faults there were.
   *
   * @return the count, those beyond the first thousand included
   */
  public long faultCount() {
    return faultCount;
  }

  /**
   * Returns what may have to be declared so that there are fewer faults.
   *
   * @return sentences, empty if nothing comes to mind
   */
  public List<String> advice() {
    return advice;
  }

  /**
   * Returns the report.
   *
   * @return lines of text
   */
  @Override
  public String toString() {
    List<String> lines = new ArrayList<>();
    lines.add(file + ": " + rows + (rows == 1 ? " row" : " rows"));
    used.forEach(line -> lines.add("used: " + line));
    ignored.forEach(line -> lines.add("ignored: " + line));
    odd.forEach(line -> lines.add("odd: " + line));
    faults.stream().limit(20).forEach(fault -> lines.add("fault: " + fault));
    if (faultCount > 20) {
      lines.add("... and " + (faultCount - 20) + " more faults");
    }
    lines.addAll(advice);
    return String.join("\n", lines);
  }

  /** Collects the report while a file is read. Mutable, for one thread. */
  static final class Draft {

    private static final int KEPT = 1000;

    final String file;
    private final Map<String, long[]> ignored = new LinkedHashMap<>();
    private final Map<String, long[]> odd = new LinkedHashMap<>();
    private final List<Fault> faults = new ArrayList<>();
    private long faultCount;

    private final Map<String, List<String>> signs = new LinkedHashMap<>();
    private final Set<String> numbered = new HashSet<>();
    private final long most;
    private List<String> headings = List.of();
    private final List<String> firstRecord = new ArrayList<>();

    /** The report of a file of which no more than some records are read. */
    Draft(String file, long most) {
      this.file = file;
      this.most = most;
    }

    long most() {
      return most;
    }

    /** A cell that could not be read, by the heading in the file. */
    void sign(String heading, String text) {
      List<String> texts = signs.computeIfAbsent(heading, key -> new ArrayList<>());
      if (texts.size() < KEPT) {
        texts.add(text);
      }
    }

    /** A column, by its heading in the file, has a number. */
    void numbered(String heading) {
      numbered.add(heading);
    }

    boolean hasNumbers(String heading) {
      return numbered.contains(heading);
    }

    Map<String, List<String>> signs() {
      return signs;
    }

    void headings(List<String> raw) {
      headings = raw;
    }

    List<String> headings() {
      return headings;
    }

    void firstRecord(String cell) {
      firstRecord.add(cell);
    }

    List<String> firstRecord() {
      return firstRecord;
    }

    boolean faulty() {
      return faultCount > 0;
    }

    void ignored(String what, long line) {
      count(ignored, what, line);
    }

    void odd(String what, long line) {
      count(odd, what, line);
    }

    private static void count(Map<String, long[]> counts, String what, long line) {
      counts.computeIfAbsent(what, key -> new long[] {0, line})[0]++;
    }

    void fault(long line, String column, String reason) {
      faultCount++;
      if (faults.size() < KEPT) {
        faults.add(new Fault(file, line, column, reason));
      }
    }

    List<Fault> faults() {
      return faults;
    }

    private List<String> lines(Map<String, long[]> counts) {
      return counts.entrySet().stream()
          .map(
              entry ->
                  entry.getKey()
                      + (entry.getValue()[0] == 1
                          ? ", in line " + entry.getValue()[1]
                          : ": "
                              + entry.getValue()[0]
                              + " times, the first in line "
                              + entry.getValue()[1]))
          .collect(Collectors.toUnmodifiableList());
    }

    ReadingReport finish(long rows, List<String> used, List<String> advice) {
      return new ReadingReport(this, rows, used, advice);
    }
  }
}
