package org.brewchem.buffer;

import java.util.ArrayList;
import java.util.List;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Step;
import org.brewchem.quantity.PH;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.Treatment;

/** The liquid that a buffer was measured of, which says where it is asked beyond the readings. */
final class BufferedLiquid implements Liquid {

  private final Buffer buffer;
  private final Contents contents;
  private final List<Caution> cautions;

  private BufferedLiquid(Buffer buffer, Contents contents, List<Caution> cautions) {
    this.buffer = buffer;
    this.contents = contents;
    this.cautions = List.copyOf(cautions);
  }

  /** As it was titrated, where its own pH is what the readings begin with. */
  static BufferedLiquid titrated(Buffer buffer, Contents contents) {
    return new BufferedLiquid(buffer, contents, List.of());
  }

  /** After something was done to it, with a notice if its pH is beyond the readings. */
  static BufferedLiquid changed(Buffer buffer, Contents contents, List<Caution> cautions) {
    PH pH = PH.of(contents.equilibria().pH());
    return new BufferedLiquid(
        buffer, contents.withNotices(buffer.extrapolatedAt(pH).stream().toList()), cautions);
  }

  @Override
  public Contents contents() {
    return contents;
  }

  @Override
  public BufferedLiquid after(Treatment... steps) {
    Contents treated = contents;
    List<Caution> all = new ArrayList<>(cautions);
    for (Treatment step : steps) {
      treated = step.on(treated);
      step.cautions().stream().filter(caution -> !all.contains(caution)).forEach(all::add);
    }
    return changed(buffer, treated, all);
  }

  @Override
  public Step step(Figure<?> figure) {
    return figure.rule().find(figure, this);
  }

  @Override
  public String kind() {
    return "titrated liquid";
  }

  @Override
  public List<Notice> notices() {
    return contents.notices();
  }

  @Override
  public List<Caution> cautions() {
    return cautions;
  }
}
