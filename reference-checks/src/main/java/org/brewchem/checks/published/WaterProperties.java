package org.brewchem.checks.published;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.Mixture;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.ActivityRule;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Equilibria;
import org.brewchem.solution.Level;
import org.brewchem.solution.Solution;
import org.brewchem.solution.Species;
import org.brewchem.substance.Component;

/** Ion product, density and Debye-Hückel slope of water, as the kernel uses them. */
public final class WaterProperties {

  private static final double ZERO_CELSIUS = 273.15;
  private static final double SALT = 0.1;

  private static final String DENSITY = "water density";
  private static final double VOLUMES_CELSIUS = 20;
  private static final String SLOPE = "Debye-Huckel A (log10, molal)";

  private WaterProperties() {}

  /** Returns the checks. */
  public static List<ReferenceCheck> all() {
    return List.of(
        check(
            "iapws-r11-07",
            Suite.IDENTITY,
            "Ion product of water, 0 to 100 °C",
            "pKw",
            new Source(
                "iapws-r11-07",
                "IAPWS R11-07(2019) Release on the Ionization Constant of H2O (Bandura & Lvov,"
                    + " JPCRD 35 (2006) 15)"),
            "pKw of the default chemistry, beside another evaluation of the same expression",
            Tolerance.absolute(
                1e-4,
                "",
                "half the last printed digit, and as much for the density, which the library takes"
                    + " from another formulation"),
            10,
            WaterProperties::ionProduct,
            "the verification value at 300 K and a density of exactly 1000 kg/m3: the density is"
                + " not an input of the public interface"),
        check(
            "iapws-r11-24",
            Suite.PUBLISHED,
            "Ion product of water, revision of 2024",
            "pKw (R11-24)",
            new Source("iapws-r11-24", "IAPWS R11-24 (2024 revision of the ionization release)"),
            "pKw of the default chemistry, which follows R11-07",
            Tolerance.absolute(
                0.0021, "", "the two releases differ by up to 0.002, and 1e-4 as for R11-07"),
            10,
            WaterProperties::ionProduct,
            ""),
        check(
            "marshall-franck",
            Suite.PUBLISHED,
            "Ion product of water, saturated vapour row",
            "pKw",
            new Source(
                "marshall-franck-1981",
                "Marshall & Franck, J. Phys. Chem. Ref. Data 10 (1981) 295, saturated-vapour row"),
            "pKw of the default chemistry, which is a later formulation",
            Tolerance.absolute(
                0.02, "", "as much as the certified buffers allow for, in an alkaline liquid"),
            4,
            WaterProperties::ionProduct,
            ""),
        check(
            "harned-owen",
            Suite.PUBLISHED,
            "Ion product of water by cells",
            "pKw",
            new Source(
                "harned-owen-1958",
                "Harned & Owen, Physical Chemistry of Electrolytic Solutions 3rd ed. 1958 (molal)"),
            "pKw of the default chemistry, which is a later formulation",
            Tolerance.absolute(
                0.02, "", "as much as the certified buffers allow for, in an alkaline liquid"),
            6,
            WaterProperties::ionProduct,
            ""),
        check(
            "openstax-pkw",
            Suite.PUBLISHED,
            "Ion product of water as a textbook prints it",
            "pKw",
            new Source(
                "flowers",
                "Flowers et al., Chemistry 2e (OpenStax, CC BY), appendix Water Properties"),
            "pKw of the default chemistry",
            Tolerance.absolute(
                0.02, "", "as much as the certified buffers allow for, in an alkaline liquid"),
            9,
            WaterProperties::ionProduct,
            ""),
        check(
            "iapws-density",
            Suite.PUBLISHED,
            "Density of water at 20 °C",
            DENSITY,
            new Source("iapws-r6-95", "IAPWS R6-95(2018) (IAPWS-95)"),
            "density that converts mol/L to mol/kg",
            Tolerance.absolute(
                0.02, "kg/m3", "2e-5 of a concentration, far below any other error of it"),
            1,
            WaterProperties::density,
            "other temperatures: volumes are read at 20 °C"),
        check(
            "cipm-density",
            Suite.PUBLISHED,
            "Density of water at 20 °C, metrological formula",
            DENSITY,
            new Source(
                "tanaka-2001",
                "CIPM formula, Tanaka et al., Metrologia 38 (2001) 301 (air-free, 101325 Pa)"),
            "density that converts mol/L to mol/kg",
            Tolerance.absolute(
                0.02, "kg/m3", "2e-5 of a concentration, far below any other error of it"),
            1,
            WaterProperties::density,
            "other temperatures: volumes are read at 20 °C"),
        check(
            "debye-hueckel",
            Suite.PUBLISHED,
            "Debye-Hückel slope, 0 to 100 °C",
            SLOPE,
            new Source(
                "iapws-r8-97",
                "from IAPWS rho and eps: A=(2 pi NA rho)^0.5 (e^2/(4 pi eps0 eps k T))^1.5/ln10"),
            "slope that the activity coefficient of sodium in 0.1 mol/kg of sodium chloride shows"
                + " by the Davies equation",
            Tolerance.absolute(
                0.0015,
                "kg^0.5 mol^-0.5",
                "moves the pH of the phosphate standard by less than 0.001"),
            10,
            WaterProperties::slope,
            "relative permittivity by itself (IAPWS R8-97), which enters through the slope"));
  }

  private static ReferenceCheck check(
      String id,
      Suite suite,
      String title,
      String quantity,
      Source source,
      String computation,
      Tolerance tolerance,
      int expectedRows,
      DoubleUnaryOperator property,
      String notCovered) {
    return new ReferenceCheck(
        id,
        suite,
        title,
        source,
        computation,
        tolerance,
        notCovered,
        expectedRows,
        () -> rows(quantity, source.text(), property));
  }

  private static List<Row> rows(String quantity, String source, DoubleUnaryOperator property) {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row :
        CsvTable.read("water-properties.csv", 78).where("quantity", quantity)) {
      boolean read = !quantity.equals(DENSITY) || row.number("t_C") == VOLUMES_CELSIUS;
      if (read && row.text("source").equals(source)) {
        rows.add(
            Row.of(
                row.text("t_C") + " °C",
                row.number("value"),
                property.applyAsDouble(row.number("t_C")),
                row.howKnown()));
      }
    }
    return rows;
  }

  private static double ionProduct(double celsius) {
    return -Chemistry.standard().log10IonProduct(celsius + ZERO_CELSIUS);
  }

  private static double density(double celsius) {
    return 1000 * Solution.at(Temperature.ofCelsius(celsius)).kilogramsPerLitre();
  }

  private static double slope(double celsius) {
    Equilibria salt =
        Mixture.of(
            Map.of(Component.SODIUM, SALT, Component.CHLORIDE, SALT),
            celsius,
            Chemistry.of(Level.ACTIVITY).withActivityRule(ActivityRule.davies()));
    salt.pH();
    Species sodium =
        salt.species().stream()
            .filter(species -> species.name().equals("Na+"))
            .findFirst()
            .orElseThrow();
    double root = Math.sqrt(salt.ionicStrength());
    double log10Gamma = Math.log10(sodium.activity() / sodium.molality().inMolesPerKilogram());
    return -log10Gamma / (root / (1 + root) - 0.3 * salt.ionicStrength());
  }
}
