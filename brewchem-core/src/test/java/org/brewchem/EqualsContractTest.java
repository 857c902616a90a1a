package org.brewchem;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Field;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import nl.jqno.equalsverifier.EqualsVerifier;
import nl.jqno.equalsverifier.Warning;
import nl.jqno.equalsverifier.api.SingleTypeEqualsVerifierApi;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Step;
import org.brewchem.plan.ShelfItem;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.ConstantSet;
import org.brewchem.substance.Element;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.Formula;
import org.brewchem.substance.Ion;
import org.brewchem.substance.IonPair;
import org.brewchem.substance.Mineral;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.uncertainty.Traced;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;

/**
 * Equality, hash codes and order of the public values keep their contracts. The classes are found
 * by reflection; each field that equality or a hash code leaves out is listed with its reason.
 */
class EqualsContractTest {

  /** Fields without a part in equality. */
  private record Outside(String reason, String... fields) {}

  private static final Map<Class<?>, Outside> OUTSIDE_EQUALITY =
      Map.ofEntries(
          Map.entry(Acid.class, new Outside("follow from formula and component", "protons")),
          Map.entry(Base.class, new Outside("follow from formula", "protonsTakenUp")),
          Map.entry(
              Component.class,
              new Outside(
                  "the key names the component, and a group's own key holds its constants",
                  "name",
                  "chargeWithoutProtons",
                  "forms",
                  "formula",
                  "ownConstants")),
          Map.entry(ConstantSet.class, new Outside("words about the same set", "description")),
          Map.entry(
              Element.class,
              new Outside(
                  "the symbol names the element, and there is one object for each",
                  "name",
                  "weight",
                  "uncertaintyGramsPerMole",
                  "provenance")),
          Map.entry(
              EquilibriumConstant.class,
              new Outside(
                  "constants are equal when they give the same values; these say how far to trust"
                      + " them",
                  "minimumKelvin",
                  "maximumKelvin",
                  "isRangeComplete",
                  "uncertainty",
                  "provenance")),
          Map.entry(
              Figure.class,
              new Outside(
                  "name and parameters say what is asked for; a figure in another unit asks for the"
                      + " same",
                  "own",
                  "shown",
                  "rule")),
          Map.entry(Formula.class, new Outside("another spelling of the same atoms", "text")),
          Map.entry(Ion.class, new Outside("the formula names the ion", "name")),
          Map.entry(Mineral.class, new Outside("follows from the components", "stoichiometry")),
          Map.entry(
              Solution.class,
              new Outside("how it was made, and what the kernel keeps", "history", "compiled")),
          Map.entry(
              WaterReport.class, new Outside("follow from the readings", "contents", "water")));

  /** Classes whose hash code takes fewer fields than equality: equal objects still share it. */
  private static final Map<Class<?>, String> SHORTER_HASH =
      Map.of(
          Acid.class, "formulas and uses seldom differ under one name",
          Base.class, "name and formula nearly always settle the components",
          Ion.class, "the formula nearly always settles the components",
          IonPair.class, "the product settles metal and ligand in nearly all sets",
          Mineral.class, "name and constant settle the formula of the library's own",
          Reagent.class, "what it leaves out is seldom stated",
          Salt.class, "name and formula nearly always settle the components",
          ShelfItem.class, "the name nearly always settles what stands behind it",
          Traced.class, "value and slopes settle the sources in nearly all cases");

  private static Step step(double value) {
    return Step.of("pH", Figures.PH_VALUE.scale(), Step.Kind.STATED).found(Traced.exact(value));
  }

  private static List<Class<?>> valueClasses() {
    return ApiWalk.publicClasses().stream()
        .filter(type -> !type.isRecord() && !type.isEnum())
        .filter(
            type -> {
              try {
                return type.getMethod("equals", Object.class).getDeclaringClass() != Object.class;
              } catch (NoSuchMethodException e) {
                throw new IllegalStateException(e);
              }
            })
        .toList();
  }

  private static <T> void verify(Class<T> type) {
    // A step holds steps: the verifier cannot make one by itself.
    SingleTypeEqualsVerifierApi<T> verifier =
        EqualsVerifier.forClass(type).withPrefabValues(Step.class, step(4), step(5));
    if (type.getSuperclass() != Object.class) {
      verifier = verifier.withRedefinedSuperclass().usingGetClass();
    }
    Outside outside = OUTSIDE_EQUALITY.get(type);
    if (outside != null) {
      verifier = verifier.withIgnoredFields(outside.fields());
    }
    if (SHORTER_HASH.containsKey(type)) {
      verifier = verifier.suppress(Warning.STRICT_HASHCODE);
    }
    verifier.verify();
  }

  @Test
  void equalityAndHashCodes() {
    List<Class<?>> classes = valueClasses();
    assertEquals(53, classes.size(), classes.toString());
    assertTrue(classes.containsAll(OUTSIDE_EQUALITY.keySet()));
    assertTrue(classes.containsAll(SHORTER_HASH.keySet()));
    assertAll(classes.stream().map(type -> () -> verify(type)));
  }

  @Test
  void valuesAreFinalAndMadeByTheirFactories() {
    for (Class<?> type : valueClasses()) {
      assertTrue(Modifier.isFinal(type.getModifiers()), type.getName());
      assertEquals(0, type.getConstructors().length, type.getName());
      for (Class<?> part = type; part != Object.class; part = part.getSuperclass()) {
        for (Field field : part.getDeclaredFields()) {
          assertTrue(
              Modifier.isFinal(field.getModifiers()) || Modifier.isVolatile(field.getModifiers()),
              field.toString());
        }
      }
    }
  }

  /** The compiler writes the equality of a record; an array would be compared by identity. */
  @Test
  void recordsHoldNoArrays() {
    for (Class<?> type : ApiWalk.publicClasses()) {
      if (type.isRecord()) {
        for (RecordComponent component : type.getRecordComponents()) {
          assertFalse(component.getType().isArray(), type + ", " + component);
        }
      }
    }
  }

  /** Values of the class from each of its factories that takes one number. */
  private static <T> List<T> values(Class<T> type) throws IllegalAccessException {
    List<T> values = new ArrayList<>();
    for (Method factory : type.getMethods()) {
      if (Modifier.isStatic(factory.getModifiers())
          && factory.getReturnType() == type
          && Arrays.equals(factory.getParameterTypes(), new Class<?>[] {double.class})) {
        for (double number : new double[] {-1, -0.0, 0, Double.MIN_VALUE, 0.5, 1, 1.2, 7, 7}) {
          try {
            values.add(type.cast(factory.invoke(null, number)));
          } catch (InvocationTargetException e) {
            assertInstanceOf(IllegalArgumentException.class, e.getCause());
          }
        }
      }
    }
    return values;
  }

  private static <T extends Comparable<T>> void consistent(List<T> values) {
    for (T one : values) {
      for (T other : values) {
        int order = one.compareTo(other);
        assertEquals(one.equals(other), order == 0, one + ", " + other);
        assertEquals(Integer.signum(order), -Integer.signum(other.compareTo(one)));
        for (T third : values) {
          if (order <= 0 && other.compareTo(third) <= 0) {
            assertTrue(one.compareTo(third) <= 0, one + ", " + other + ", " + third);
          }
        }
      }
      assertThrows(NullPointerException.class, () -> one.compareTo(null));
    }
  }

  @Test
  @SuppressWarnings({"unchecked", "rawtypes"})
  void orderIsConsistentWithEquality() throws IllegalAccessException {
    Set<Class<?>> other = new HashSet<>();
    int compared = 0;
    for (Class<?> type : ApiWalk.publicClasses()) {
      if (Comparable.class.isAssignableFrom(type) && !type.isEnum()) {
        List values = values((Class) type);
        if (values.isEmpty()) {
          other.add(type);
        } else {
          assertTrue(values.size() >= 4, type.getName());
          consistent(values);
          compared++;
        }
      }
    }
    assertEquals(23, compared);
    assertEquals(Set.of(TitratableAcidity.class, TitrationAlkalinity.class), other);
  }

  /** Of titrations only those to one end point have an order. */
  @Test
  void titrationsAreOrderedWithinOneEndPoint() {
    List<TitratableAcidity> acidities = new ArrayList<>();
    List<TitrationAlkalinity> alkalinities = new ArrayList<>();
    for (double number : new double[] {-0.0, 0, 0.5, 2, 2}) {
      acidities.add(TitratableAcidity.ofMilliequivalentsPerLitre(number, PH.of(8.2)));
      alkalinities.add(TitrationAlkalinity.ofMilliequivalentsPerLitre(number, PH.of(4.3)));
    }
    consistent(acidities);
    consistent(alkalinities);
  }
}
