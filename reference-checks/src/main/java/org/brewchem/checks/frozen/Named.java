package org.brewchem.checks.frozen;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Mineral;
import org.brewchem.substance.PrimaryBuffer;
import org.brewchem.substance.Salt;
import org.brewchem.substance.Solute;

/** What the names of substances in the input files mean. */
final class Named {

  static final Map<String, Acid> ACIDS =
      map(
          Map.entry("lactic acid", Acid.LACTIC),
          Map.entry("phosphoric acid", Acid.PHOSPHORIC),
          Map.entry("citric acid", Acid.CITRIC),
          Map.entry("citric acid monohydrate", Acid.CITRIC_MONOHYDRATE),
          Map.entry("malic acid", Acid.MALIC),
          Map.entry("tartaric acid", Acid.TARTARIC),
          Map.entry("acetic acid", Acid.ACETIC),
          Map.entry("succinic acid", Acid.SUCCINIC),
          Map.entry("pyruvic acid", Acid.PYRUVIC),
          Map.entry("carbonic acid", Acid.CARBONIC),
          Map.entry("sulfurous acid", Acid.SULFUROUS),
          Map.entry("sulfuric acid", Acid.SULFURIC),
          Map.entry("hydrochloric acid", Acid.HYDROCHLORIC),
          Map.entry("oxalic acid", Acid.OXALIC),
          Map.entry("boric acid", Acid.BORIC),
          Map.entry("phthalic acid", Acid.PHTHALIC),
          Map.entry("ammonium", Acid.AMMONIUM));

  static final Map<String, Base> BASES =
      map(
          Map.entry("sodium hydroxide", Base.SODIUM_HYDROXIDE),
          Map.entry("potassium hydroxide", Base.POTASSIUM_HYDROXIDE),
          Map.entry("calcium hydroxide", Base.CALCIUM_HYDROXIDE),
          Map.entry("sodium bicarbonate", Base.SODIUM_BICARBONATE),
          Map.entry("sodium carbonate", Base.SODIUM_CARBONATE));

  static final Map<String, Salt> SALTS =
      map(
          Map.entry("gypsum", Salt.GYPSUM),
          Map.entry("calcium chloride anhydrous", Salt.CALCIUM_CHLORIDE_ANHYDROUS),
          Map.entry("calcium chloride dihydrate", Salt.CALCIUM_CHLORIDE_DIHYDRATE),
          Map.entry("epsom salt", Salt.EPSOM_SALT),
          Map.entry("magnesium chloride hexahydrate", Salt.MAGNESIUM_CHLORIDE_HEXAHYDRATE),
          Map.entry("sodium chloride", Salt.SODIUM_CHLORIDE),
          Map.entry("potassium chloride", Salt.POTASSIUM_CHLORIDE),
          Map.entry("chalk", Salt.CHALK),
          Map.entry("potassium hydrogen phthalate", Salt.POTASSIUM_HYDROGEN_PHTHALATE),
          Map.entry("potassium hydrogen tartrate", Salt.POTASSIUM_HYDROGEN_TARTRATE),
          Map.entry("potassium dihydrogen phosphate", Salt.POTASSIUM_DIHYDROGEN_PHOSPHATE),
          Map.entry("sodium dihydrogen phosphate", Salt.SODIUM_DIHYDROGEN_PHOSPHATE),
          Map.entry("disodium hydrogen phosphate", Salt.DISODIUM_HYDROGEN_PHOSPHATE),
          Map.entry("sodium acetate trihydrate", Salt.SODIUM_ACETATE_TRIHYDRATE),
          Map.entry("borax", Salt.BORAX));

  static final Map<String, Ion> IONS =
      map(
          Map.entry("sodium", Ion.SODIUM),
          Map.entry("potassium", Ion.POTASSIUM),
          Map.entry("calcium", Ion.CALCIUM),
          Map.entry("magnesium", Ion.MAGNESIUM),
          Map.entry("ammonium ion", Ion.AMMONIUM),
          Map.entry("chloride", Ion.CHLORIDE),
          Map.entry("nitrate", Ion.NITRATE),
          Map.entry("sulfate", Ion.SULFATE),
          Map.entry("bicarbonate", Ion.BICARBONATE),
          Map.entry("carbonate", Ion.CARBONATE),
          Map.entry("phosphate", Ion.PHOSPHATE));

  static final Map<String, Mineral> MINERALS =
      map(
          Map.entry("calcite", Mineral.CALCITE),
          Map.entry("aragonite", Mineral.ARAGONITE),
          Map.entry("vaterite", Mineral.VATERITE),
          Map.entry("gypsum", Mineral.GYPSUM),
          Map.entry("hydroxyapatite", Mineral.HYDROXYAPATITE),
          Map.entry("dicalcium phosphate dihydrate", Mineral.DICALCIUM_PHOSPHATE_DIHYDRATE),
          Map.entry("dicalcium phosphate anhydrous", Mineral.DICALCIUM_PHOSPHATE_ANHYDROUS));

  static final Map<String, PrimaryBuffer> PRIMARY_BUFFERS =
      map(
          Map.entry("phthalate", PrimaryBuffer.PHTHALATE),
          Map.entry("phosphate", PrimaryBuffer.PHOSPHATE),
          Map.entry("carbonate", PrimaryBuffer.CARBONATE),
          Map.entry("tartrate", PrimaryBuffer.TARTRATE),
          Map.entry("tetraoxalate", PrimaryBuffer.TETRAOXALATE));

  private static final Map<String, Component> COMPONENTS =
      map(
          Map.entry("glutamate", Component.GLUTAMATE),
          Map.entry("histidinate", Component.HISTIDINATE));

  private Named() {}

  @SafeVarargs
  @SuppressWarnings("varargs") // the entries are only read
  private static <T> Map<String, T> map(Map.Entry<String, T>... entries) {
    Map<String, T> map = new LinkedHashMap<>();
    Arrays.stream(entries).forEach(entry -> map.put(entry.getKey(), entry.getValue()));
    return map;
  }

  static Acid acid(String name) {
    return found(name, ACIDS);
  }

  static Base base(String name) {
    return found(name, BASES);
  }

  static Salt salt(String name) {
    return found(name, SALTS);
  }

  static Compound reagentCompound(String name) {
    return found(name, ACIDS, BASES);
  }

  static PrimaryBuffer primaryBuffer(String name) {
    return found(name, PRIMARY_BUFFERS);
  }

  static Solute solute(String name) {
    return found(name, ACIDS, BASES, SALTS, IONS, COMPONENTS);
  }

  @SafeVarargs
  private static <T> T found(String name, Map<String, ? extends T>... maps) {
    for (Map<String, ? extends T> map : maps) {
      T value = map.get(name);
      if (value != null) {
        return value;
      }
    }
    throw new IllegalStateException("\"" + name + "\" is no substance of the input files");
  }
}
