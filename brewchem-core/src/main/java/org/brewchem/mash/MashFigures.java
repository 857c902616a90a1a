package org.brewchem.mash;

import java.util.Map;
import java.util.Optional;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Scale;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;

/**
 * The figures of a mash, meant for static import. Each pH says which one it is: of the cooled
 * sample, the convention of the trade, or of the hot mash.
 */
public final class MashFigures {

  static final double COOLED = 20;
  static final double HOTTEST = 78;

  /**
   * The pH of a cooled sample of the mash: the root of the balance of liquor, malts and Kolbach's
   * term.
   */
  public static final Figure<PH> MASH_PH =
      Figure.of(
          "mash pH",
          Map.of("of the", "cooled sample"),
          Scale.beforeTheNumber("pH of the cooled mash", PH::value, PH::of, 2),
          new MashRule(
              MashRule.Quantity.COOLED,
              Optional.empty(),
              "charge of the liquor + charge of the malts - acid set free by calcium and magnesium ="
                  + " 0"));

  /** By how much the mash pH is higher if the carbon dioxide leaves than if it stays. */
  public static final Figure<Double> RISE_OF_PH_BY_DEGASSING =
      Figure.of(
          "rise of pH by degassing",
          Map.of(),
          Scale.number("in mash pH", 3),
          new MashRule(
              MashRule.Quantity.CARBON_DIOXIDE,
              Optional.empty(),
              "mash pH without carbonate - mash pH with all of it"));

  /** The acid that calcium and magnesium set free in the mash, by Kolbach's term and its factor. */
  public static final Figure<Double> KOLBACH_ACID =
      Figure.of(
          "acid set free by calcium and magnesium",
          Map.of(),
          Scale.number("mEq/L", 3),
          new MashRule(
              MashRule.Quantity.KOLBACH,
              Optional.empty(),
              "factor x (calcium / 3.5 + magnesium / 7), in mEq per litre of liquor"));

  /**
   * The part of that acid which the kernel finds by itself where the malts are given as species:
   * what calcium and magnesium of the liquor take from phosphate and other ligands of the malts, at
   * the mash pH, against as many equivalents of sodium.
   */
  public static final Figure<Double> KOLBACH_ACID_AMONG_SPECIES =
      Figure.of(
          "acid set free among the species of the malts",
          Map.of(),
          Scale.number("mEq/L", 3),
          new MashRule(
              MashRule.Quantity.AMONG_SPECIES,
              Optional.empty(),
              "charge of liquor and species with sodium for calcium and magnesium - charge with"
                  + " calcium and magnesium, less the same of the liquor alone"));

  /** The rest of that acid: precipitation and whatever else the species do not tell. */
  public static final Figure<Double> KOLBACH_ACID_BEYOND_SPECIES =
      Figure.of(
          "acid set free beyond the species of the malts",
          Map.of(),
          Scale.number("mEq/L", 3),
          new MashRule(
              MashRule.Quantity.BEYOND_SPECIES,
              Optional.empty(),
              "acid set free by calcium and magnesium - acid set free among the species of the"
                  + " malts"));

  private MashFigures() {}

  /**
   * Returns the pH that a calibrated electrode with temperature compensation shows in the hot mash,
   * by the difference from the cooled sample that is printed for 65 and 78 °C.
   *
   * @param temperature of the mash, 20 to 78 °C; between the printed temperatures the difference is
   *     interpolated, from none at 20 °C
   * @return the figure
   * @throws IllegalArgumentException if the temperature is out of range
   */
  public static Figure<PH> hotMashPH(Temperature temperature) {
    Checks.inRange("temperature of the mash", temperature.inCelsius(), "°C", COOLED, HOTTEST);
    return Figure.of(
        "mash pH",
        Map.of("in the mash at", temperature.toString()),
        Scale.beforeTheNumber("pH in the mash at " + temperature, PH::value, PH::of, 2),
        new MashRule(
            MashRule.Quantity.HOT,
            Optional.of(temperature),
            "pH of the cooled sample + difference of the hot mash"));
  }
}
