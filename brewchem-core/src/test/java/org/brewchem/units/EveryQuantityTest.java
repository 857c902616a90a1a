package org.brewchem.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.Field;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import javax.measure.Quantity;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.PH;
import org.brewchem.substance.Acid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every class of values is read, printed to the last bit, named in a column heading, and converted
 * to and from JSR-385. The classes are found by reflection, so that a new one cannot be forgotten.
 */
class EveryQuantityTest {

  private static final int VALUES = 300;
  private static final List<Acid> BASES = List.of(Acid.LACTIC);

  /** A value is a class that compares with its own kind. Always in the same order, for reports. */
  static Stream<Class<?>> quantities() {
    return new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.brewchem.quantity")
            .stream()
            .map(JavaClass::reflect)
            .filter(type -> Modifier.isPublic(type.getModifiers()))
            .filter(type -> Comparable.class.isAssignableFrom(type))
            .sorted(Comparator.comparing(Class::getName))
            .map(type -> (Class<?>) type);
  }

  @Test
  void allOfThemAreFound() {
    assertEquals(25, quantities().count());
  }

  @ParameterizedTest
  @MethodSource("quantities")
  void isReadAndPrintedToTheLastBit(Class<?> type) throws ReflectiveOperationException {
    Method reader = reader(type);
    Method exact = Text.class.getMethod("exact", type);
    for (Object value : values(type)) {
      String text = (String) exact.invoke(null, value);
      assertEquals(value, read(reader, text), text);
    }
  }

  @ParameterizedTest
  @MethodSource("quantities")
  void printsFewDigitsThatReadBackAsPrinted(Class<?> type) throws ReflectiveOperationException {
    Method reader = reader(type);
    for (Object value : values(type)) {
      String text = value.toString();
      assertEquals(text, read(reader, text).toString());
      String digits = text.replaceAll("( |E).*", "").replaceAll("^(-?0\\.0*)|\\D", "");
      assertTrue(digits.replaceAll("0+$", "").length() <= 6, text);
    }
  }

  @ParameterizedTest
  @MethodSource("quantities")
  void hasUnitsForAColumn(Class<?> type) throws ReflectiveOperationException {
    Object units = units(type);
    if (units instanceof UnitSet<?> set) {
      assertColumn(set);
    } else {
      EndPointUnits<?> toEndPoint = (EndPointUnits<?>) units;
      PH endPoint = PH.of(8.215);
      for (LabUnit<?> unit : toEndPoint.to(endPoint).units()) {
        ColumnHeader header = ColumnHeader.parse("sample [" + unit.symbol() + "]");
        assertEquals(unit.symbol(), header.unitOf(toEndPoint).symbol());
      }
    }
  }

  private static <Q> void assertColumn(UnitSet<Q> set) {
    assertFalse(set.units().isEmpty());
    for (LabUnit<Q> unit : set.units()) {
      assertEquals(unit, ColumnHeader.parse("sample [" + unit.symbol() + "]").unitOf(set));
    }
  }

  @ParameterizedTest
  @MethodSource("quantities")
  void goesToJavaMeasureAndBack(Class<?> type) throws ReflectiveOperationException {
    List<Method> out = new ArrayList<>();
    List<Method> in = new ArrayList<>();
    for (Class<?> edge : List.of(JavaMeasure.class, JavaLabMeasure.class)) {
      for (Method method : edge.getDeclaredMethods()) {
        if (method.getName().equals("toQuantity") && method.getParameterTypes()[0] == type) {
          out.add(method);
        } else if (method.getReturnType() == type) {
          in.add(method);
        }
      }
    }
    assertEquals(1, out.size(), "ways out");
    assertEquals(1, in.size(), "ways in");
    for (Object value : values(type)) {
      Quantity<?> quantity = (Quantity<?>) out.get(0).invoke(null, value);
      Object back =
          in.get(0).getParameterCount() == 1
              ? in.get(0).invoke(null, quantity)
              : in.get(0).invoke(null, quantity, type.getMethod("endPoint").invoke(value));
      assertEquals(value.toString(), back.toString(), () -> quantity.toString());
    }
  }

  private static Object read(Method reader, String text) throws ReflectiveOperationException {
    return reader.getParameterCount() == 1
        ? reader.invoke(null, text)
        : reader.invoke(null, text, BASES);
  }

  private static Method reader(Class<?> type) {
    List<Method> readers =
        Stream.of(Text.class.getMethods()).filter(m -> m.getReturnType() == type).toList();
    assertEquals(1, readers.size(), "readers of " + type);
    return readers.get(0);
  }

  private static Object units(Class<?> type) throws ReflectiveOperationException {
    for (Field field : LabUnits.class.getFields()) {
      if (((ParameterizedType) field.getGenericType()).getActualTypeArguments()[0] == type) {
        return field.get(null);
      }
    }
    for (Method method : LabUnits.class.getMethods()) {
      if (method.getGenericReturnType() instanceof ParameterizedType units
          && units.getActualTypeArguments()[0] == type) {
        return LabUnits.class.getMethod("acidity", Collection.class).invoke(null, BASES);
      }
    }
    throw new AssertionError("no units of " + type);
  }

  /** Values with full mantissas, made through every factory that takes numbers. */
  private static List<Object> values(Class<?> type) throws ReflectiveOperationException {
    List<Method> factories =
        Stream.of(type.getMethods())
            .filter(m -> Modifier.isStatic(m.getModifiers()) && m.getReturnType() == type)
            .filter(m -> m.getParameterCount() > 0 && m.getParameterTypes()[0] == double.class)
            .filter(m -> m.getParameterCount() == 1 || endsWithEndPoint(m))
            .toList();
    assertFalse(factories.isEmpty(), () -> type + " has no factory of a number");
    Random random = new Random(20261126);
    List<Object> values = new ArrayList<>();
    for (Method factory : factories) {
      for (int i = 0; i < VALUES; i++) {
        double number = random.nextDouble() * size(type, random);
        values.add(
            factory.getParameterCount() == 1
                ? factory.invoke(null, number)
                : factory.invoke(null, number, PH.of(4 + 5 * random.nextDouble())));
      }
    }
    assertNotEquals(values.get(0), values.get(1));
    return values;
  }

  private static boolean endsWithEndPoint(Method factory) {
    return factory.getParameterCount() == 2 && factory.getParameterTypes()[1] == PH.class;
  }

  private static double size(Class<?> type, Random random) {
    if (type == PH.class) {
      return 14;
    }
    return type == MassFraction.class ? 1 : Math.pow(10, random.nextInt(9) - 3);
  }
}
