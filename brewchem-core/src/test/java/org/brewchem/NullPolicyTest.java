package org.brewchem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.Array;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.Field;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.Parameter;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import javax.measure.Quantity;
import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.PH;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Compound;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.Formula;
import org.brewchem.substance.HowKnown;
import org.brewchem.substance.PairSet;
import org.brewchem.substance.Provenance;
import org.brewchem.substance.Salt;
import org.brewchem.substance.Solute;
import org.brewchem.uncertainty.Budget;
import org.brewchem.uncertainty.Distribution;
import org.brewchem.uncertainty.Input;
import org.brewchem.uncertainty.MeasurementModel;
import org.brewchem.uncertainty.MonteCarlo;
import org.brewchem.units.ColumnHeader;
import org.brewchem.units.EndPointUnits;
import org.brewchem.units.LabUnit;
import org.brewchem.units.LabUnits;
import org.brewchem.units.UnitSet;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tech.units.indriya.quantity.Quantities;
import tech.units.indriya.unit.Units;

/** Null for any argument of the API is refused, and the message names the argument. */
class NullPolicyTest {

  private static final List<String> PACKAGES =
      List.of("quantity", "units", "uncertainty", "substance");

  private static final MeasurementModel MODEL =
      MeasurementModel.of("mass", "g")
          .with(Input.normal("reading", 5, 0.1, "g"))
          .calculatedBy(values -> values[0]);

  /** Values for the types that cannot be found through a constant or a factory with numbers. */
  private static final Map<Class<?>, Object> SAMPLES =
      Map.ofEntries(
          Map.entry(String.class, "H2O"),
          Map.entry(Object.class, "any"),
          Map.entry(Collection.class, List.of(Acid.LACTIC)),
          Map.entry(List.class, List.of()),
          Map.entry(Map.class, Map.of(Component.CALCIUM, 1.0)),
          Map.entry(Optional.class, Optional.empty()),
          Map.entry(AcidBasis.class, Acid.LACTIC),
          Map.entry(Provenance.class, new Provenance("perry", "not recorded", HowKnown.SEEN, "")),
          Map.entry(Compound.class, Salt.GYPSUM),
          Map.entry(Solute.class, Salt.GYPSUM),
          Map.entry(PH.class, PH.of(8.2)),
          Map.entry(Formula.class, Formula.parse("H2O")),
          Map.entry(EquilibriumConstant.class, EquilibriumConstant.ofLog10(-4.5)),
          Map.entry(Quantity.class, Quantities.getQuantity(2, Units.LITRE)),
          Map.entry(ToDoubleFunction.class, (ToDoubleFunction<double[]>) values -> values[0]),
          Map.entry(DoubleFunction.class, (DoubleFunction<Object>) number -> number),
          Map.entry(UnaryOperator.class, UnaryOperator.identity()),
          Map.entry(MeasurementModel.class, MODEL),
          Map.entry(MeasurementModel.Builder.class, MeasurementModel.of("mass", "g")),
          Map.entry(Budget.class, MODEL.linear()),
          Map.entry(MonteCarlo.class, MODEL.monteCarlo(1000, 1)),
          Map.entry(Distribution.class, Distribution.NORMAL),
          Map.entry(PairSet.class, PairSet.standard()),
          Map.entry(ColumnHeader.class, ColumnHeader.parse("calcium [mg/L]")),
          Map.entry(UnitSet.class, LabUnits.VOLUME),
          Map.entry(LabUnit.class, LabUnits.VOLUME.named("L")),
          Map.entry(EndPointUnits.class, LabUnits.TITRATION_ALKALINITY));

  static Stream<Class<?>> publicClasses() {
    return PACKAGES.stream()
        .map("org.brewchem."::concat)
        .flatMap(
            name ->
                new ClassFileImporter()
                        .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                        .importPackages(name)
                        .stream())
        .map(JavaClass::reflect)
        .filter(type -> Modifier.isPublic(type.getModifiers()) && !type.isInterface())
        .map(type -> (Class<?>) type);
  }

  @ParameterizedTest
  @MethodSource("publicClasses")
  void nullIsRefusedByName(Class<?> type) throws ReflectiveOperationException {
    List<String> faults = new ArrayList<>();
    List<Executable> entries = new ArrayList<>(List.of(type.getConstructors()));
    for (Method method : type.getMethods()) {
      if (method.getDeclaringClass().getName().startsWith("org.brewchem")
          && !method.isBridge()
          && !method.getName().equals("equals")) {
        entries.add(method);
      }
    }
    for (Executable entry : entries) {
      Parameter[] parameters = entry.getParameters();
      for (int i = 0; i < parameters.length; i++) {
        if (!parameters[i].getType().isPrimitive() && !mayBeNull(parameters[i])) {
          check(type, entry, i).ifPresent(faults::add);
        }
      }
    }
    assertEquals(List.of(), faults);
  }

  private static boolean mayBeNull(Parameter parameter) {
    return parameter.getAnnotatedType().isAnnotationPresent(Nullable.class);
  }

  private static Optional<String> check(Class<?> type, Executable entry, int index)
      throws ReflectiveOperationException {
    Parameter parameter = entry.getParameters()[index];
    assertTrue(parameter.isNamePresent(), "compile with -parameters");
    String place = entry + ", " + parameter.getName() + ": ";
    Object[] arguments = new Object[entry.getParameterCount()];
    for (int i = 0; i < arguments.length; i++) {
      arguments[i] = i == index ? null : sample(entry.getParameterTypes()[i]);
    }
    try {
      if (entry instanceof Method method) {
        method.setAccessible(true); // compareTo is public in a class that is not
        method.invoke(Modifier.isStatic(method.getModifiers()) ? null : sample(type), arguments);
      } else {
        ((Constructor<?>) entry).newInstance(arguments);
      }
      return Optional.of(place + "accepted");
    } catch (InvocationTargetException e) {
      Throwable cause = e.getCause();
      boolean named =
          cause instanceof NullPointerException
              && letters(String.valueOf(cause.getMessage())).contains(letters(parameter.getName()));
      return named ? Optional.empty() : Optional.of(place + cause);
    }
  }

  /** "end point" is endPoint. */
  private static String letters(String text) {
    return text.replace(" ", "").toLowerCase(Locale.ROOT);
  }

  private static boolean takesOnlyNumbers(Method factory) {
    return Stream.of(factory.getParameterTypes()).allMatch(Class::isPrimitive);
  }

  private static Object sample(Class<?> type) throws ReflectiveOperationException {
    if (SAMPLES.containsKey(type)) {
      return SAMPLES.get(type);
    }
    if (type == int.class) {
      return 1;
    }
    if (type == long.class) {
      return 1L;
    }
    if (type == double.class) {
      return 1.0;
    }
    if (type.isArray()) {
      Object array = Array.newInstance(type.getComponentType(), 1);
      Array.set(array, 0, sample(type.getComponentType()));
      return array;
    }
    for (Field field : type.getFields()) {
      if (field.getType() == type) {
        return field.get(null);
      }
    }
    List<Method> factories = new ArrayList<>(List.of(type.getMethods()));
    factories.sort(Comparator.comparing(NullPolicyTest::takesOnlyNumbers).reversed());
    for (Method method : factories) {
      if (Modifier.isStatic(method.getModifiers())
          && method.getReturnType() == type
          && Stream.of(method.getParameterTypes()).noneMatch(type::equals)) {
        try {
          Object[] arguments = new Object[method.getParameterCount()];
          for (int i = 0; i < arguments.length; i++) {
            arguments[i] = sample(method.getParameterTypes()[i]);
          }
          return method.invoke(null, arguments);
        } catch (InvocationTargetException | IllegalStateException e) {
          // another factory may take the samples
          continue;
        }
      }
    }
    throw new IllegalStateException("no sample of " + type + "; add one to SAMPLES");
  }
}
