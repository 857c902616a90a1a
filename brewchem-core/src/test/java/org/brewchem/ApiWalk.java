package org.brewchem;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.Array;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.Field;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Code;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;
import org.brewchem.figure.FigureCode;
import org.brewchem.figure.UsualRange;
import org.brewchem.mash.Grist;
import org.brewchem.mash.Malt;
import org.brewchem.mash.MaltKind;
import org.brewchem.mash.Mash;
import org.brewchem.mash.MashBalance;
import org.brewchem.mash.SourcedRange;
import org.brewchem.mash.WortRanges;
import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Quantities;
import org.brewchem.solution.CarbonateBalance;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Equilibria;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.solution.TitratedMixture;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.substance.Solute;
import org.brewchem.table.Acidities;
import org.brewchem.table.Column;
import org.brewchem.table.Table;
import org.brewchem.table.Waters;
import org.brewchem.titration.SampleTitration;
import org.brewchem.titration.Titrant;
import org.brewchem.treatment.BenchTrial;
import org.brewchem.treatment.GlassDose;
import org.brewchem.treatment.Treatments;
import org.brewchem.uncertainty.Budget;
import org.brewchem.uncertainty.Input;
import org.brewchem.uncertainty.MeasurementModel;
import org.brewchem.uncertainty.MonteCarlo;
import org.brewchem.units.LabUnit;
import org.brewchem.units.LabUnits;
import org.brewchem.water.WaterReport;
import org.jspecify.annotations.Nullable;

/**
 * The public methods of the core outside {@code internal}, and objects and arguments that they take
 * without complaint, found by reflection from constants and factories.
 */
final class ApiWalk {

  private static final double[] PLAUSIBLE = {1, 0.5, 5, 20, 100};
  private static final int DEPTH = 4;

  private final Map<Class<?>, Optional<Object>> samples = new HashMap<>();
  private final Set<Class<?>> busy = new HashSet<>();

  ApiWalk() {
    ApiSamples.all().forEach(this::put);
    put(String.class, "H2O");
    put(
        Solution.class,
        Solution.at(Quantities.celsius(20)).with(Acid.LACTIC, Quantities.mmolPerL(10)));
    put(Liquid.class, samples.get(Solution.class).orElseThrow());
    put(Figure.class, Figures.PH_VALUE);
    put(Treatment.class, Treatments.acid(Acid.LACTIC, Quantities.mgPerL(10)));
    put(Compound.class, Salt.GYPSUM);
    put(Solute.class, Acid.LACTIC);
    put(Collection.class, List.of(Component.CARBONATE));
    put(Optional.class, Optional.empty());
    put(OptionalDouble.class, OptionalDouble.empty());
    put(OptionalInt.class, OptionalInt.empty());
    put(LocalDate.class, LocalDate.of(2026, 3, 9));
    put(LocalDateTime.class, LocalDateTime.of(2026, 3, 9, 14, 30));
    put(AcidBasis.class, Acid.LACTIC);
    put(PH.class, PH.of(8.2));
    put(
        Beer.class,
        Beer.of(PH.of(4.4), Quantities.acidity(Quantities.gPerL(2), Acid.LACTIC, PH.of(8.2))));
    Table waters =
        Table.of(
            Column.of("calcium [mg/L]", 92, 40),
            Column.of("magnesium [mg/L]", 11, 4),
            Column.of("alkalinity [mEq/L]", 4.3, 2),
            Column.of("pH", 7.6, 7.9));
    put(Table.class, waters.withTexts("H2O", List.of("north", "south")));
    put(Waters.class, Waters.from(waters));
    put(
        Acidities.class,
        Acidities.from(
            Table.of(
                Column.of("volume [mL]", 14.6),
                Column.of("sample [mL]", 50),
                Column.of("titrant [mol/L]", 0.1)),
            PH.of(8.2)));
    put(UsualRange.class, UsualRange.named("pH of a beer"));
    put(Constraint.class, Constraint.atMost(Figures.PH_VALUE, PH.of(4)));
    put(LabUnit.class, LabUnits.PH.named("pH"));
    put(SourcedRange.class, WortRanges.FALL_OF_PH_ON_BOILING);
    put(
        SampleTitration.class,
        Titrant.sodiumHydroxide().of(Quantities.molPerL(0.1)).titrate(Quantities.mL(50)));
    MeasurementModel model =
        MeasurementModel.of("mass", "g")
            .with(Input.normal("reading", 5, 0.1, "g"))
            .calculatedBy(values -> values[0]);
    put(MeasurementModel.class, model);
    put(MonteCarlo.class, model.monteCarlo(1000, 1));
    put(Budget.class, model.linear());
    Equilibria equilibria =
        Equilibria.of(
            Set.of(Component.LACTATE, Component.CARBONATE),
            Quantities.celsius(20),
            Chemistry.standard());
    put(Equilibria.class, equilibria);
    put(
        TitratedMixture.class,
        SimulatedTitration.of(
                Solution.at(Quantities.celsius(20)).with(Acid.LACTIC, Quantities.mmolPerKg(3)),
                Titrant.sodiumHydroxide()
                    .of(Quantities.molPerL(0.1))
                    .solution(Quantities.celsius(20)),
                Quantities.mL(50))
            .mixture());
    put(CarbonateBalance.class, CarbonateBalance.of(equilibria));
    put(
        MashBalance.class,
        Mash.of(
                Grist.of(Quantities.kg(200), Malt.assumed(MaltKind.PALE)),
                WaterReport.reported()
                    .calcium(Quantities.mgPerL(92))
                    .magnesium(Quantities.mgPerL(11))
                    .alkalinityAsCaCO3(Quantities.mgPerL(215))
                    .pH(PH.of(7.6))
                    .build()
                    .water(),
                Quantities.hL(8))
            .balance());
    BenchTrial<Beer> trial =
        BenchTrial.of(
                Beer.of(
                    PH.of(4.36),
                    Quantities.acidity(Quantities.gPerL(1.8), Acid.LACTIC, PH.of(8.2))),
                Reagent.of(Acid.LACTIC, Quantities.massPercent(80)))
            .upTo(Quantities.gPerL(0.6));
    put(BenchTrial.class, trial);
    put(GlassDose.class, trial.glass(3));
    put(Code.class, FigureCode.UNUSUAL_VALUE);
    put(ToDoubleFunction.class, (ToDoubleFunction<Object>) any -> 1);
    put(DoubleFunction.class, (DoubleFunction<Object>) number -> number);
  }

  private void put(Class<?> type, Object sample) {
    samples.put(type, Optional.of(sample));
  }

  static List<Class<?>> publicClasses() {
    List<Class<?>> all = new ArrayList<>();
    for (JavaClass each :
        new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.brewchem")) {
      if (each.getPackageName().endsWith(".internal")) {
        continue;
      }
      Class<?> type = each.reflect();
      boolean isPublic = Modifier.isPublic(type.getModifiers());
      for (Class<?> outer = type.getEnclosingClass();
          outer != null;
          outer = outer.getEnclosingClass()) {
        isPublic &= Modifier.isPublic(outer.getModifiers());
      }
      if (isPublic && !type.isInterface() && !Throwable.class.isAssignableFrom(type)) {
        all.add(type);
      }
    }
    all.sort(Comparator.comparing(Class::getName));
    return all;
  }

  /** The language's own, with the language's own message. */
  private static boolean isValueOfEnum(Method method) {
    return method.getDeclaringClass().isEnum() && method.getName().equals("valueOf");
  }

  static List<Executable> entries(Class<?> type) {
    List<Executable> entries = new ArrayList<>(List.of(type.getConstructors()));
    for (Method method : type.getMethods()) {
      if (method.getDeclaringClass().getName().startsWith("org.brewchem")
          && !method.isBridge()
          && !isValueOfEnum(method)) {
        entries.add(method);
      }
    }
    entries.sort(Comparator.comparing(Executable::toGenericString));
    return entries;
  }

  static String name(Executable entry) {
    return entry.getDeclaringClass().getSimpleName()
        + "."
        + (entry instanceof Method ? entry.getName() : "new")
        + Arrays.stream(entry.getParameterTypes()).map(Class::getSimpleName).toList();
  }

  static @Nullable Object invoke(Executable entry, Object target, Object[] arguments)
      throws ReflectiveOperationException {
    return entry instanceof Constructor<?> constructor
        ? constructor.newInstance(arguments)
        : ((Method) entry).invoke(target, arguments);
  }

  /** Arguments that a method takes without complaint, if it can be found. */
  Optional<Object[]> arguments(Executable entry, int depth) {
    Class<?>[] parameters = entry.getParameterTypes();
    Object[] arguments = new Object[parameters.length];
    for (int i = 0; i < parameters.length; i++) {
      if (parameters[i] == double.class) {
        arguments[i] = PLAUSIBLE[0];
      } else if (parameters[i] == double[].class) {
        arguments[i] = new double[] {1, 2, 3};
      } else if (parameters[i] == int.class) {
        arguments[i] = 1;
      } else if (parameters[i] == long.class) {
        arguments[i] = 1L;
      } else if (parameters[i] == boolean.class) {
        arguments[i] = false;
      } else if (entry.getGenericParameterTypes()[i].getTypeName().contains("AcidBasis>")) {
        arguments[i] = List.of(Acid.LACTIC);
      } else {
        Optional<Object> sample = sample(parameters[i], depth + 1);
        if (sample.isEmpty()) {
          return Optional.empty();
        }
        arguments[i] = sample.get();
      }
    }
    return Optional.of(arguments);
  }

  Optional<Object> sample(Class<?> type, int depth) {
    Optional<Object> known = samples.get(type);
    if (known != null) {
      return known;
    }
    if (depth > DEPTH || !busy.add(type)) {
      return Optional.empty();
    }
    try {
      Optional<Object> found = find(type, depth);
      if (found.isPresent() || depth == 0) {
        samples.put(type, found);
      }
      return found;
    } finally {
      busy.remove(type);
    }
  }

  private Optional<Object> find(Class<?> type, int depth) {
    if (type.isEnum()) {
      return Optional.of(type.getEnumConstants()[0]);
    }
    if (type == List.class) {
      return Optional.of(List.of());
    }
    if (type == Map.class) {
      return Optional.of(Map.of());
    }
    if (type.isArray()) {
      return sample(type.getComponentType(), depth + 1)
          .map(
              element -> {
                Object array = Array.newInstance(type.getComponentType(), 1);
                Array.set(array, 0, element);
                return array;
              });
    }
    if (!type.getName().startsWith("org.brewchem")) {
      return Optional.empty();
    }
    for (Field field : type.getFields()) {
      if (Modifier.isStatic(field.getModifiers()) && type.isAssignableFrom(field.getType())) {
        try {
          return Optional.of(field.get(null));
        } catch (IllegalAccessException e) {
          throw new IllegalStateException(e);
        }
      }
    }
    Set<Executable> makers = new LinkedHashSet<>(List.of(type.getConstructors()));
    List<Class<?>> holders = new ArrayList<>(List.of(type));
    if (type.getEnclosingClass() != null) {
      holders.add(type.getEnclosingClass());
    }
    for (Class<?> holder : holders) {
      for (Method method : holder.getMethods()) {
        if (Modifier.isStatic(method.getModifiers())
            && type.isAssignableFrom(method.getReturnType())) {
          makers.add(method);
        }
      }
    }
    List<Executable> ordered = new ArrayList<>(makers);
    ordered.sort(
        Comparator.comparingInt(Executable::getParameterCount)
            .thenComparing(Executable::toGenericString));
    for (Executable maker : ordered) {
      Optional<Object[]> arguments = arguments(maker, depth);
      for (int k = 0; arguments.isPresent() && k < PLAUSIBLE.length; k++) {
        Object[] all = arguments.get().clone();
        for (int i = 0; i < all.length; i++) {
          all[i] = all[i] instanceof Double ? PLAUSIBLE[k] : all[i];
        }
        try {
          Object made = invoke(maker, type, all);
          if (made != null) {
            return Optional.of(made);
          }
        } catch (ReflectiveOperationException e) {
          // Not with these; others are tried.
        }
      }
    }
    return Optional.empty();
  }
}
