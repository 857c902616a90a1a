package org.brewchem.figure;

/** What notices about any value say, whatever room it belongs to. */
public enum FigureCode implements Code {
  /** A value lies outside what is usual in its place: a slip of typing, or an unusual liquid. */
  UNUSUAL_VALUE(Severity.WARNING);

  private final Severity severity;

  FigureCode(Severity severity) {
    this.severity = severity;
  }

  @Override
  public Severity severity() {
    return severity;
  }
}
