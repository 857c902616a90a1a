package org.brewchem.solution;

import java.util.List;
import org.brewchem.figure.Caution;

/** Something that is done to a liquid and changes what it holds. Immutable. */
public interface Treatment {

  /**
   * Applies the treatment.
   *
   * @param before what the liquid holds
   * @return what it holds afterwards, with a step that says what was done
   */
  Contents on(Contents before);

  /**
   * Returns what is done.
   *
   * @return a short text, such as "15 g/hL of calcium chloride dihydrate"
   */
  String text();

  /**
   * Returns what to mind while doing it.
   *
   * @return the cautions; empty when there is nothing to mind
   */
  List<Caution> cautions();
}
