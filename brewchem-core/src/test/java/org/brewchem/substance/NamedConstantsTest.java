package org.brewchem.substance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Solution;
import org.junit.jupiter.api.Test;

/**
 * Everything that this room offers as a public constant is complete. The constants are found by
 * walking the classes, not by asking the registry, which is what has to be checked.
 */
class NamedConstantsTest {

  /** Acids whose first proton is strong by convention, and so is no step of their component. */
  private static final Set<Acid> FIRST_PROTON_STRONG =
      Set.of(Acid.SULFURIC, Acid.HYDROCHLORIC, Acid.NITRIC);

  private static final Map<String, Solute> CONSTANTS = constants();

  /** What is incomplete about a component. */
  private static List<String> gaps(
      String name, Component component, List<Component> registry, ConstantSet set) {
    List<String> gaps = new ArrayList<>();
    if (registry.stream().noneMatch(registered -> registered == component)) {
      gaps.add(name + ": not in the registry of named components");
    }
    if (component.formula().isEmpty()) {
      gaps.add(name + ": no formula");
    }
    if (!component.ownConstants().isEmpty()) {
      gaps.add(name + ": constants of its own instead of rows of a set");
    }
    for (int step = 1; step <= component.protons(); step++) {
      if (set.step(component, step).isEmpty()) {
        gaps.add(name + ": no pKa " + step + " in set " + set);
      }
    }
    return gaps;
  }

  /** What is incomplete about an acid, besides its component. */
  private static List<String> gaps(String name, Acid acid, Set<Acid> firstProtonStrong) {
    List<String> gaps = new ArrayList<>();
    if (acid.formula().isEmpty()) {
      gaps.add(name + ": no formula");
    }
    int steps = acid.component().protons() + (firstProtonStrong.contains(acid) ? 1 : 0);
    if (acid.protonsByDefinition() < 1 || acid.protonsByDefinition() != steps) {
      gaps.add(
          name
              + ": "
              + acid.protonsByDefinition()
              + " protons by definition, but its component has "
              + steps
              + " steps");
    }
    return gaps;
  }

  @Test
  void everyConstantIsComplete() {
    List<String> gaps = new ArrayList<>();
    CONSTANTS.forEach(
        (name, solute) -> {
          solute
              .components()
              .keySet()
              .forEach(
                  component ->
                      gaps.addAll(
                          gaps(name, component, Component.named(), ConstantSet.standard())));
          if (solute instanceof Acid acid) {
            gaps.addAll(gaps(name, acid, FIRST_PROTON_STRONG));
          }
        });
    assertEquals(List.of(), gaps);
  }

  /** A pH, at the default chemistry, is what a caller first asks of an acid. */
  @Test
  void everyConstantHasAPH() {
    CONSTANTS.forEach(
        (name, solute) -> {
          double pH =
              Solution.at(Temperature.ofCelsius(25))
                  .under(Chemistry.standard())
                  .with(solute, AmountConcentration.ofMillimolesPerLitre(1))
                  .pH()
                  .value();
          assertTrue(pH > 1 && pH < 13, name + ": pH " + pH);
          if (solute instanceof Acid && !solute.equals(Acid.AMMONIUM)) {
            assertTrue(pH < 7, name + ": pH " + pH);
          }
          if (solute instanceof Base) {
            assertTrue(pH > 7, name + ": pH " + pH);
          }
        });
  }

  @Test
  void theRegistryHoldsTheConstantsAndNoMore() {
    List<Solute> components =
        CONSTANTS.values().stream().filter(Component.class::isInstance).toList();
    assertEquals(Set.copyOf(components), Set.copyOf(Component.named()));
    assertEquals(components.size(), Component.named().size(), "two constants have one key");
    Component.named().forEach(component -> assertEquals(component, Component.of(component.key())));
  }

  @Test
  void noTwoConstantsOfAKindAreTheSame() {
    Map<String, String> seen = new LinkedHashMap<>();
    CONSTANTS.forEach(
        (name, solute) -> {
          String other = seen.put(solute.getClass().getSimpleName() + " " + solute.name(), name);
          assertEquals(null, other, name + " has the name of " + other);
        });
  }

  /** The walk itself: if it found nothing, nothing would be checked. */
  @Test
  void theWalkFindsWhatIsThere() {
    for (String known :
        List.of(
            "Acid.LACTIC",
            "Acid.AMMONIUM",
            "Base.SODIUM_HYDROXIDE",
            "Component.TRIS",
            "Ion.BICARBONATE",
            "Mineral.CALCITE",
            "Salt.GYPSUM")) {
      assertTrue(CONSTANTS.containsKey(known), known);
    }
  }

  @Test
  void anIncompleteComponentIsFound() {
    assertEquals(
        List.of("new: no pKa 1 in set goldberg-2002"),
        gaps("new", Component.LACTATE, Component.named(), ConstantSet.named("goldberg-2002")));
    assertEquals(
        List.of("new: not in the registry of named components"),
        gaps("new", Component.LACTATE, List.of(Component.CITRATE), ConstantSet.standard()));
    assertEquals(
        List.of(
            "new: not in the registry of named components",
            "new: no formula",
            "new: constants of its own instead of rows of a set",
            "new: no pKa 1 in set standard"),
        gaps("new", Component.group("site", -1, 4.7), Component.named(), ConstantSet.standard()));
  }

  @Test
  void anIncompleteAcidIsFound() {
    assertEquals(List.of("new: no formula"), gaps("new", Acid.ofKa("own", 1e-4), Set.of()));
    assertEquals(
        List.of("new: 2 protons by definition, but its component has 1 steps"),
        gaps("new", Acid.SULFURIC, Set.of()));
    assertEquals(
        List.of("new: 1 protons by definition, but its component has 2 steps"),
        gaps("new", Acid.LACTIC, Set.of(Acid.LACTIC)));
    assertEquals(List.of(), gaps("new", Acid.LACTIC, Set.of()));
  }

  private static Map<String, Solute> constants() {
    Map<String, Solute> constants = new LinkedHashMap<>();
    for (JavaClass found :
        new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages(Solute.class.getPackageName())) {
      for (Field field : found.reflect().getFields()) {
        boolean own = field.getDeclaringClass().getName().equals(found.getName());
        if (own
            && Modifier.isStatic(field.getModifiers())
            && Solute.class.isAssignableFrom(field.getType())) {
          constants.put(found.getSimpleName() + "." + field.getName(), value(field));
        }
      }
    }
    return constants;
  }

  private static Solute value(Field field) {
    try {
      return (Solute) field.get(null);
    } catch (IllegalAccessException e) {
      throw new AssertionError(e);
    }
  }
}
