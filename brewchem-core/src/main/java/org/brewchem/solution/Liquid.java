package org.brewchem.solution;

import java.util.List;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;

/**
 * A liquid: a water, a wort, a beer, any solution. It answers figures and can be treated, and a
 * treated liquid is a liquid of the same kind. Implementations are immutable.
 */
public interface Liquid extends Answering {

  /**
   * Returns what the liquid holds.
   *
   * @return the contents
   */
  Contents contents();

  /**
   * Treats the liquid.
   *
   * @param steps what is done, in this order
   * @return the liquid afterwards
   */
  Liquid after(Treatment... steps);

  /**
   * Answers a figure.
   *
   * @param figure the figure
   * @param <Q> the meaning of its value
   * @return the answer; unknown, with why, when the figure does not apply or something is missing
   */
  default <Q> Answer<Q> answer(Figure<Q> figure) {
    return Answer.of(figure, this);
  }

  /**
   * Returns what is notable about the liquid.
   *
   * @return the notices
   */
  List<Notice> notices();

  /**
   * Returns what to mind in the treatments that made the liquid.
   *
   * @return the cautions, without repetition
   */
  List<Caution> cautions();
}
