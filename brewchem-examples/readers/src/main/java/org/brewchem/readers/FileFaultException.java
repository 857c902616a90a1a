package org.brewchem.readers;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The failure to read a file: all its faults, each with line and column, and what may have to be
 * declared.
 */
public final class FileFaultException extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;

  /** How many faults the message lists. */
  private static final int LISTED = 20;

  private final transient List<Fault> faults;
  private final transient List<String> advice;

  /**
   * Collects faults.
   *
   * @param faults one or more
   * @param advice what may have to be declared, a sentence each without its full stop
   */
  public FileFaultException(List<Fault> faults, List<String> advice) {
    super(message(faults, advice));
    this.faults = List.copyOf(faults);
    this.advice = List.copyOf(advice);
  }

  /**
   * Reports one fault.
   *
   * @param fault the fault
   */
  public FileFaultException(Fault fault) {
    this(List.of(fault), List.of());
  }

  /**
   * Reports one fault and what caused it.
   *
   * @param fault the fault
   * @param cause the cause
   */
  public FileFaultException(Fault fault, Throwable cause) {
    this(fault);
    initCause(cause);
  }

  private static String message(List<Fault> faults, List<String> advice) {
    String rest =
        faults.size() > LISTED ? "... and " + (faults.size() - LISTED) + " more faults" : "";
    return Stream.of(
            faults.stream().limit(LISTED).map(Fault::toString),
            Stream.of(rest).filter(text -> !text.isEmpty()),
            advice.stream())
        .flatMap(lines -> lines)
        .collect(Collectors.joining("\n"));
  }

  /**
   * Returns the faults.
   *
   * @return an unmodifiable list in the order of the file
   */
  public List<Fault> faults() {
    return faults;
  }

  /**
   * Returns what may have to be declared.
   *
   * @return an unmodifiable list of sentences, empty if nothing comes to mind
   */
  public List<String> advice() {
    return advice;
  }
}
