package org.brewchem.mash;

import java.util.List;
import org.brewchem.internal.DataTable;

/**
 * What is printed about the way from the mash to the beer, as ranges with their sources; meant for
 * static import. Where a source prints one number with "about", the width is our choice and the
 * basis says so.
 */
public final class WortRanges {

  private static final List<DataTable.Row> ROWS =
      DataTable.read(WortRanges.class, "wort-ranges.csv");

  /** By how much the pH of the wort lies above that of the mash, both cooled. */
  public static final SourcedRange RISE_OF_PH_FROM_MASH_TO_WORT = named("wort above mash");

  /** By how much the pH falls from unhopped to hopped wort. */
  public static final SourcedRange FALL_OF_PH_ON_BOILING = named("fall on boiling");

  /** The pH of boiled wort of cask ales. */
  public static final SourcedRange KNOCK_OUT_PH_OF_CASK_ALES = named("knock-out cask ale");

  /** The pH of boiled wort of strong ales. */
  public static final SourcedRange KNOCK_OUT_PH_OF_STRONG_ALES = named("knock-out strong ale");

  /** The pH of boiled wort of weak ales. */
  public static final SourcedRange KNOCK_OUT_PH_OF_WEAK_ALES = named("knock-out weak ale");

  /** By how much the pH falls in fermentation. */
  public static final SourcedRange FALL_OF_PH_IN_FERMENTATION = named("fall in fermentation");

  /** The pH of ales. */
  public static final SourcedRange PH_OF_ALES = named("beer ale");

  /** The pH of lagers. */
  public static final SourcedRange PH_OF_LAGERS = named("beer lager");

  /** The calcium of beers. */
  public static final SourcedRange CALCIUM_OF_BEERS = named("beer calcium");

  /** The magnesium of beers. */
  public static final SourcedRange MAGNESIUM_OF_BEERS = named("beer magnesium");

  /** The potassium of beers. */
  public static final SourcedRange POTASSIUM_OF_BEERS = named("beer potassium");

  /** The sodium of beers. */
  public static final SourcedRange SODIUM_OF_BEERS = named("beer sodium");

  /** The chloride of three beers. */
  public static final SourcedRange CHLORIDE_OF_BEERS = named("beer chloride");

  /** The sulfate of three beers. */
  public static final SourcedRange SULFATE_OF_BEERS = named("beer sulfate");

  private WortRanges() {}

  static SourcedRange named(String item) {
    DataTable.Row row =
        ROWS.stream()
            .filter(candidate -> candidate.text("item").equals(item))
            .findFirst()
            .orElseThrow(
                () -> new IllegalStateException("wort-ranges.csv: there is no item " + item));
    String conditions = row.text("conditions");
    String note = row.text("note");
    return new SourcedRange(
        row.text("quantity"),
        row.number("lower"),
        row.number("upper"),
        row.text("unit"),
        List.of(
            row.text("quantity")
                + (conditions.isEmpty() ? "" : ", " + conditions)
                + ": "
                + MashValues.source(row)
                + (note.isEmpty() ? "" : "; " + note)));
  }
}
