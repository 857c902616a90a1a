package org.brewchem.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.io.InputStream;
import java.lang.reflect.InvocationTargetException;
import java.util.ArrayList;
import java.util.List;
import org.brewchem.quantity.Quantities;
import org.junit.jupiter.api.Test;

/** Values are made, read and printed where the units library is not even present. */
class UnitsLibraryTest {

  @Test
  void valuesTextAndUnitsDoWithoutTheUnitsLibrary() throws Exception {
    WithoutUnitsLibrary loader = new WithoutUnitsLibrary();
    Class<?> quantities = loader.loadClass(Quantities.class.getName());
    Object concentration = quantities.getMethod("gPerL", double.class).invoke(null, 2.8);
    assertEquals("2.8 g/L", concentration.toString());
    Object pressure = quantities.getMethod("atm", double.class).invoke(null, 1.0);
    assertEquals("101.325 kPa", pressure.toString());
    Class<?> text = loader.loadClass(Text.class.getName());
    Object read = text.getMethod("parseMassConcentration", String.class).invoke(null, "2800 mg/L");
    assertEquals(concentration, read);
    assertEquals(List.of(), loader.refused);
  }

  @Test
  void theTestWouldNoticeTheUnitsLibrary() throws Exception {
    WithoutUnitsLibrary loader = new WithoutUnitsLibrary();
    Class<?> volume = loader.loadClass("org.brewchem.quantity.Volume");
    Object litre = volume.getMethod("ofLitres", double.class).invoke(null, 1.0);
    Class<?> edge = loader.loadClass(JavaMeasure.class.getName());
    assertThrows(
        LinkageError.class,
        () -> {
          try {
            edge.getMethod("toQuantity", volume).invoke(null, litre);
          } catch (InvocationTargetException e) {
            throw e.getCause();
          }
        });
  }

  /** Defines the classes of the library again and refuses those of the units library. */
  private static final class WithoutUnitsLibrary extends ClassLoader {

    private final List<String> refused = new ArrayList<>();

    WithoutUnitsLibrary() {
      super(UnitsLibraryTest.class.getClassLoader());
    }

    @Override
    protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
      synchronized (getClassLoadingLock(name)) {
        if (name.startsWith("tech.units.")
            || name.startsWith("tech.uom.")
            || name.startsWith("javax.measure.")) {
          refused.add(name);
          throw new ClassNotFoundException(name + " is refused by this test");
        }
        if (!name.startsWith("org.brewchem.")) {
          return super.loadClass(name, resolve);
        }
        Class<?> loaded = findLoadedClass(name);
        return loaded != null ? loaded : define(name);
      }
    }

    private Class<?> define(String name) throws ClassNotFoundException {
      String file = name.replace('.', '/') + ".class";
      try (InputStream bytes = getParent().getResourceAsStream(file)) {
        if (bytes == null) {
          throw new ClassNotFoundException(name);
        }
        byte[] content = bytes.readAllBytes();
        return defineClass(name, content, 0, content.length);
      } catch (IOException e) {
        throw new ClassNotFoundException(name, e);
      }
    }
  }
}
