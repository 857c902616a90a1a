package org.brewchem.solution;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BinaryOperator;
import org.brewchem.uncertainty.Traced;

/**
 * What mixes and dilutes with a liquid and is in no balance, per kg of water: by the end point of a
 * titration, or by the component of which it is known.
 */
record Carried(Map<Object, Traced> perKilogram) {

  static final Carried NOTHING = new Carried(Map.of());

  Carried with(Object key, Traced amount) {
    Map<Object, Traced> all = new LinkedHashMap<>(perKilogram);
    all.put(key, amount);
    return new Carried(all);
  }

  Optional<Traced> get(Object key) {
    return Optional.ofNullable(perKilogram.get(key));
  }

  Carried mixed(Carried other, BinaryOperator<Traced> mix) {
    Set<Object> keys = new LinkedHashSet<>(perKilogram.keySet());
    keys.addAll(other.perKilogram.keySet());
    Map<Object, Traced> both = new LinkedHashMap<>();
    Traced none = Traced.exact(0);
    keys.forEach(
        key -> both.put(key, mix.apply(get(key).orElse(none), other.get(key).orElse(none))));
    return new Carried(both);
  }

  Carried without(Set<?> keys) {
    Map<Object, Traced> fewer = new LinkedHashMap<>(perKilogram);
    fewer.keySet().removeAll(keys);
    return new Carried(fewer);
  }
}
