package org.brewchem.solution;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Step;
import org.brewchem.quantity.Temperature;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Traced;
import org.jspecify.annotations.Nullable;

/** Contents being put together: pure water until something is changed. */
final class ContentsDraft {
  Temperature temperature;
  Chemistry chemistry;
  final double kilogramsPerLitre;
  Map<Component, Traced> totals = new LinkedHashMap<>();
  Map<Component, Traced> unknown = new LinkedHashMap<>();
  Optional<Traced> inert = Optional.of(Traced.exact(0));
  List<String> whyOpen = List.of();
  Carried carried = Carried.NOTHING;
  List<Step> basis = List.of();
  List<Notice> notices = List.of();
  @Nullable CompiledMixture compiled;

  ContentsDraft(Temperature temperature, Chemistry chemistry, double kilogramsPerLitre) {
    this.temperature = temperature;
    this.chemistry = Objects.requireNonNull(chemistry, "chemistry");
    this.kilogramsPerLitre = kilogramsPerLitre;
  }

  Set<Component> inBalance() {
    return inBalance(totals, unknown);
  }

  /** The components that count in the balance: those known, and of the others what was added. */
  static Set<Component> inBalance(Map<Component, Traced> totals, Map<Component, Traced> unknown) {
    Set<Component> all = new LinkedHashSet<>(totals.keySet());
    unknown.forEach(
        (component, added) -> {
          if (added.value() > 0) {
            all.add(component);
          }
        });
    return all;
  }
}
