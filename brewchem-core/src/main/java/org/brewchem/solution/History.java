package org.brewchem.solution;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.Temperature;
import org.brewchem.substance.Component;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Handling;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Solute;

/**
 * How a solution came about: what was dissolved in it, and what treatments have to say.
 *
 * @param dissolved moles per kg of water by solute
 * @param said notices of treatments
 * @param minded cautions of treatments
 */
record History(Map<Solute, Double> dissolved, List<Notice> said, List<Caution> minded) {

  static final History NONE = new History(Map.of(), List.of(), List.of());

  History with(Solute solute, double molesPerKilogram) {
    if (!(solute instanceof Compound) || solute instanceof Ion) {
      return this;
    }
    Map<Solute, Double> sum = new LinkedHashMap<>(dissolved);
    sum.merge(solute, molesPerKilogram, Double::sum);
    return new History(Collections.unmodifiableMap(sum), said, minded);
  }

  /** The same of so many times the amount per kilogram of water. */
  History times(double factor) {
    Map<Solute, Double> changed = new LinkedHashMap<>(dissolved);
    changed.replaceAll((solute, moles) -> moles * factor);
    return new History(Collections.unmodifiableMap(changed), said, minded);
  }

  /** The history of a mixture: what came into either. */
  History plus(History other) {
    Map<Solute, Double> sum = new LinkedHashMap<>(dissolved);
    other.dissolved.forEach((solute, moles) -> sum.merge(solute, moles, Double::sum));
    Set<Notice> notices = new LinkedHashSet<>(said);
    notices.addAll(other.said);
    Set<Caution> cautions = new LinkedHashSet<>(minded);
    cautions.addAll(other.minded);
    return new History(
        Collections.unmodifiableMap(sum), List.copyOf(notices), List.copyOf(cautions));
  }

  /** The history of a solution made of treated contents, which alone would say what is plain. */
  History treated(Contents treated, Contents plain, List<Treatment> steps) {
    List<Notice> notices = new ArrayList<>(treated.notices());
    notices.removeAll(plain.notices());
    Set<Caution> all = new LinkedHashSet<>(minded);
    steps.forEach(step -> all.addAll(step.cautions()));
    return new History(dissolved, List.copyOf(notices), List.copyOf(all));
  }

  /** The contents with what is notable about how they came about. */
  Contents toldOf(Contents bare) {
    List<Notice> all = new ArrayList<>(said);
    dissolved.forEach(
        (solute, moles) ->
            Saturation.notices(bare, solute, moles).stream()
                .filter(notice -> !all.contains(notice))
                .forEach(all::add));
    return all.isEmpty() ? bare : bare.withNotices(all);
  }

  List<Caution> cautions() {
    Set<Caution> all = new LinkedHashSet<>();
    dissolved.keySet().forEach(solute -> all.addAll(Handling.cautionsOf(solute)));
    all.addAll(minded);
    return List.copyOf(all);
  }

  /** What a solution holds, in a line. */
  static String text(Temperature temperature, Map<Component, Double> totals, double inertCharge) {
    StringBuilder text = new StringBuilder(temperature.toString());
    totals.forEach(
        (component, total) ->
            text.append(
                String.format(Locale.ROOT, ", %s %.6g mmol/kg", component.name(), total * 1000)));
    if (inertCharge != 0) {
      text.append(String.format(Locale.ROOT, ", inert charge %.6g mEq/kg", inertCharge * 1000));
    }
    return text.toString();
  }
}
