package org.brewchem.substance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

/** Constants are found by name and by formula, written exactly so. */
class LookUpTest {

  private static <T extends Solute> void allAreFound(
      Class<T> type, List<T> named, Function<String, T> lookUp, Function<T, Formula> formula) {
    List<T> constants = PermissionTest.constants(type);
    assertEquals(constants, named);
    for (T constant : constants) {
      assertSame(constant, lookUp.apply(constant.name()), constant.name());
      assertSame(constant, lookUp.apply(formula.apply(constant).text()), constant.name());
    }
  }

  @Test
  void everyConstantIsFoundByNameAndFormula() {
    allAreFound(Acid.class, Acid.named(), Acid::named, acid -> acid.formula().orElseThrow());
    allAreFound(Base.class, Base.named(), Base::named, Base::formula);
    allAreFound(Salt.class, Salt.named(), Salt::named, Salt::formula);
    allAreFound(Ion.class, Ion.named(), Ion::named, Ion::formula);
    allAreFound(
        Component.class,
        Component.named(),
        Component::named,
        component -> component.formula().orElseThrow());
    for (Component component : Component.named()) {
      assertSame(component, Component.named(component.key()));
      assertSame(component, Component.of(component.key()));
    }
    assertTrue(Element.named().size() >= 18);
    for (Element element : Element.named()) {
      assertSame(element, Element.named(element.name()));
      assertSame(element, Element.named(element.symbol()));
    }
  }

  @Test
  void usualOtherNamesAreFound() {
    assertSame(Acid.LACTIC, Acid.named("lactic"));
    assertSame(Acid.CARBONIC, Acid.named("carbonic acid"));
    assertSame(Acid.CARBONIC, Acid.named("carbonic"));
    assertSame(Acid.SULFUROUS, Acid.named("H2SO3"));
    assertSame(Acid.ACETIC, Acid.named("C2H4O2"));
    assertSame(Base.CALCIUM_HYDROXIDE, Base.named("slaked lime"));
    assertSame(Base.SODIUM_BICARBONATE, Base.named("sodium hydrogencarbonate"));
    assertSame(Salt.GYPSUM, Salt.named("calcium sulfate dihydrate"));
    assertSame(Salt.GYPSUM, Salt.named("gypsum"));
    assertSame(Salt.GYPSUM, Salt.named("CaSO4·2H2O"));
    assertSame(Salt.EPSOM_SALT, Salt.named("magnesium sulfate heptahydrate"));
    assertSame(Ion.BICARBONATE, Ion.named("hydrogencarbonate"));
    assertSame(Ion.CALCIUM, Ion.named("Ca^2+"));
  }

  @Test
  void aNameThatIsNotThereIsRefusedWithNearNames() {
    assertEquals(
        "acid: \"lactik\" is not possible; near it are [lactic acid]",
        message(() -> Acid.named("lactik")));
    assertTrue(
        message(() -> Acid.named("sulphuric acid")).contains("near it are [sulfuric acid"),
        message(() -> Acid.named("sulphuric acid")));
    assertTrue(message(() -> Ion.named("calcum")).endsWith("near it are [calcium]"));
    assertTrue(message(() -> Salt.named("zzz")).contains("one of [calcium carbonate (chalk), "));
    assertTrue(message(() -> Base.named("NaOh")).startsWith("base: \"NaOh\" is not possible; "));
    for (String strange : List.of("", " ", " lactic", "Lactic", "LACTIC ACID", "(".repeat(20000))) {
      String message = message(() -> Acid.named(strange));
      assertTrue(message.length() < 1000, message);
    }
    assertThrows(IllegalArgumentException.class, () -> Element.named("unobtainium"));
    assertThrows(IllegalArgumentException.class, () -> Component.of("lactate"));
    assertThrows(IllegalArgumentException.class, () -> Element.of("calcium"));
  }

  @Test
  void theDefaultLocaleDoesNotMatter() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("tr"));
      assertSame(Acid.LACTIC, Acid.named("lactic"));
      assertTrue(message(() -> Acid.named("LACTIC")).contains("lactic"));
    } finally {
      Locale.setDefault(before);
    }
  }

  private static String message(Runnable lookUp) {
    return String.valueOf(assertThrows(IllegalArgumentException.class, lookUp::run).getMessage());
  }
}
