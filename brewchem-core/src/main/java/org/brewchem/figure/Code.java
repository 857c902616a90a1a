package org.brewchem.figure;

/** What kind of thing a notice says: a constant of an enum, one enum to each room. */
public interface Code {

  /**
   * Returns the name of the code, the same in every version.
   *
   * @return the name, such as COUNTED_AS_ABSENT
   */
  String name();

  /**
   * Returns how much notices of this code matter.
   *
   * @return the severity
   */
  Severity severity();
}
