package org.brewchem.mash;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Caution;
import org.brewchem.figure.ClosedForm;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Step;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Component;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Use;
import org.brewchem.treatment.Dose;
import org.brewchem.treatment.Treatments;
import org.brewchem.uncertainty.Interval;
import org.brewchem.uncertainty.Traced;

/**
 * A mash: a grist in a volume of liquor, with what was added to it. It answers its pH before
 * anybody mashes in, with an interval; a treated mash is a mash.
 *
 * <p>The pH is the root of one balance: the charge of the liquor by the kernel, the charge of the
 * malts by their curves, less the acid that calcium and magnesium set free by Kolbach's term times
 * a factor. The malts' curves include their own phosphate and acids, so the kernel counts only the
 * equilibria within the liquor and what was added to it. Carbon dioxide leaves the mash unless
 * {@link #keepingCarbonDioxide()} says otherwise.
 *
 * <p>Amounts of a treatment count per volume of liquor; additions into the whole mash are {@link
 * MashAddition}. What is added as a liquid makes the liquor grow. Immutable and thread-safe.
 */
public final class Mash implements Liquid {

  /** Draws behind an interval, and where they start. */
  private static final int DRAWS = 10_000;

  private static final long SEED = 20261126;

  /** What tells how much of the liquor is still as it was poured; it takes part in nothing. */
  private static final Component POURED = Component.group("liquor as poured", 0, 0);

  private final Grist grist;
  private final Liquid liquor;
  private final Contents contents;
  private final Volume volume;
  private final boolean carbonDioxideLeaves;
  private final Optional<Traced> brew;
  private final List<Caution> cautions;

  private Mash(
      Grist grist,
      Liquid liquor,
      Contents contents,
      Volume volume,
      boolean carbonDioxideLeaves,
      Optional<Traced> brew,
      List<Caution> cautions) {
    this.grist = grist;
    this.liquor = liquor;
    this.contents = contents;
    this.volume = volume;
    this.carbonDioxideLeaves = carbonDioxideLeaves;
    this.brew = brew;
    this.cautions = List.copyOf(cautions);
  }

  /**
   * Mashes in.
   *
   * @param grist the malts and their masses
   * @param liquor the water, with whatever was done to it
   * @param volume of the liquor, above 0
   * @return the mash, from which carbon dioxide leaves
   * @throws IllegalArgumentException if the volume is 0
   */
  public static Mash of(Grist grist, Liquid liquor, Volume volume) {
    Objects.requireNonNull(grist, "grist");
    Objects.requireNonNull(liquor, "liquor");
    Objects.requireNonNull(volume, "volume");
    Checks.positive("volume of the liquor", volume.inLitres(), "L");
    return new Mash(
        grist,
        liquor,
        poured(liquor, grist),
        volume,
        true,
        grist.isLearned() ? Optional.of(Traced.of(MashValues.anotherBrew())) : Optional.empty(),
        liquor.cautions());
  }

  /** As the malts were read, for the balance is that of the cooled sample. */
  private static Contents poured(Liquid liquor, Grist grist) {
    Contents contents = liquor.contents();
    Contents at =
        contents.temperature().equals(grist.readAt()) ? contents : contents.at(grist.readAt());
    return at.withCarriedOver(POURED, Traced.exact(1));
  }

  /**
   * Returns the same mash with all of its carbon dioxide held, as in a closed vessel. Hardly any
   * mash does that; it shows what difference the escape of the gas makes.
   *
   * @return the mash
   */
  public Mash keepingCarbonDioxide() {
    return new Mash(grist, liquor, contents, volume, false, brew, cautions);
  }

  /**
   * Returns the same grist with another liquor of the same volume.
   *
   * @param other the water; what was added to the mash so far is left out
   * @return the mash
   */
  public Mash with(Liquid other) {
    Objects.requireNonNull(other, "other");
    return new Mash(
        grist, other, poured(other, grist), volume, carbonDioxideLeaves, brew, other.cautions());
  }

  /**
   * Treats the mash; amounts count per volume of its liquor.
   *
   * @param steps what is done, in this order
   * @return the mash afterwards
   * @throws IllegalArgumentException if a step adds what may not go into a mash
   */
  @Override
  public Mash after(Treatment... steps) {
    Objects.requireNonNull(steps, "steps");
    Contents after = Treatments.apply(contents, Use.MASH, steps);
    Set<Caution> all = new LinkedHashSet<>(cautions);
    for (Treatment step : steps) {
      all.addAll(step.cautions());
    }
    return new Mash(grist, liquor, after, volume, carbonDioxideLeaves, brew, List.copyOf(all));
  }

  /**
   * Adds to the whole mash.
   *
   * @param additions what is added, in this order
   * @return the mash afterwards
   * @throws IllegalArgumentException if an addition may not go into a mash
   */
  public Mash after(MashAddition... additions) {
    Objects.requireNonNull(additions, "additions");
    Mash mash = this;
    for (MashAddition addition : additions) {
      mash = mash.after(addition.into(mash.liquorVolume()));
    }
    return mash;
  }

  private Volume liquorVolume() {
    return Volume.ofLitres(litres().value());
  }

  private Traced litres() {
    Traced share = contents.carriedOver(POURED).orElse(Traced.exact(1));
    return Traced.exact(volume.inLitres()).dividedBy(share);
  }

  private MashState state() {
    if (contents.whyOpen().isEmpty()) {
      // Puts the system together once, for this mash and what is derived from it.
      contents.equilibria();
    }
    return new MashState(grist, contents, litres(), brew);
  }

  /**
   * Starts a dose into this mash: {@code mash.dose(lactic80).to(MASH_PH, pH(5.4))}.
   *
   * @param reagent an acid, a base or a salt
   * @return a request that wants its target; the dose counts per volume of liquor
   */
  public Dose.Request<Mash> dose(Reagent reagent) {
    return Dose.of(this, reagent);
  }

  /**
   * Returns the pH of a cooled sample.
   *
   * @return the pH with its uncertainty to first order, what it rests on among its notices; unknown
   *     where calcium, magnesium or the balance of the liquor is
   */
  public Answer<PH> pH() {
    return answer(MashFigures.MASH_PH);
  }

  /**
   * Returns what a calibrated electrode with temperature compensation shows in the hot mash.
   *
   * @param temperature of the mash, 20 to 78 °C
   * @return the pH, with the wide range that is printed for the difference
   * @throws IllegalArgumentException if the temperature is out of range
   */
  public Answer<PH> hotPH(Temperature temperature) {
    return answer(MashFigures.hotMashPH(temperature));
  }

  /**
   * Returns by how much the pH is higher if the carbon dioxide leaves than if it stays.
   *
   * @return the difference in pH
   */
  public Answer<Double> riseOfPHByDegassing() {
    return answer(MashFigures.RISE_OF_PH_BY_DEGASSING);
  }

  /**
   * Returns the acid that calcium and magnesium set free by Kolbach's term and its factor.
   *
   * @return mEq per litre of liquor
   */
  public Answer<Double> kolbachAcid() {
    return answer(MashFigures.KOLBACH_ACID);
  }

  /**
   * Returns the part of {@link #kolbachAcid()} that the kernel finds by itself among the species of
   * the malts. It is a part of that acid, not an addition to it: the mash pH counts Kolbach's term
   * once.
   *
   * @return mEq per litre of liquor; unknown where a malt of the grist is not given as species
   */
  public Answer<Double> kolbachAcidAmongSpecies() {
    return answer(MashFigures.KOLBACH_ACID_AMONG_SPECIES);
  }

  /**
   * Returns the rest of {@link #kolbachAcid()}: precipitation and whatever else the species do not
   * tell.
   *
   * @return mEq per litre of liquor, below 0 where the species alone set free more; unknown where a
   *     malt of the grist is not given as species
   */
  public Answer<Double> kolbachAcidBeyondSpecies() {
    return answer(MashFigures.KOLBACH_ACID_BEYOND_SPECIES);
  }

  /**
   * Finds the interval in which 95 % of the mash pH lie, by 10 000 draws of the sources: capacities
   * and the factor on Kolbach's term are lognormal, so that the interval is lopsided where {@link
   * #pH()} gives the same U to both sides. It takes some tenths of a second.
   *
   * @return the interval of the pH of the cooled sample; the same each time
   * @throws org.brewchem.figure.UnknownFigureException if the pH is unknown
   * @throws IllegalStateException if an input states no uncertainty
   */
  public Interval interval() {
    return MashDraws.interval(state(), carbonDioxideLeaves, pH().traced(), DRAWS, SEED);
  }

  /**
   * Measures the mash, with the usual uncertainty of a reading in a brewhouse.
   *
   * @param read the pH of its cooled sample
   * @return what the reading tells about this mash and about its malts
   * @throws org.brewchem.figure.UnknownFigureException if the pH of the mash is unknown
   * @throws IllegalStateException if an input that matters states no uncertainty
   */
  public Measured measured(PH read) {
    return measured(read, MashValues.value("reading of a mash pH"));
  }

  /**
   * Measures the mash.
   *
   * @param read the pH of its cooled sample
   * @param standardUncertaintyOfReading its standard uncertainty in pH, 0.001 to 0.5
   * @return what the reading tells about this mash and about its malts
   * @throws IllegalArgumentException if the uncertainty is out of range
   * @throws org.brewchem.figure.UnknownFigureException if the pH of the mash is unknown
   * @throws IllegalStateException if an input that matters states no uncertainty
   */
  public Measured measured(PH read, double standardUncertaintyOfReading) {
    Objects.requireNonNull(read, "read");
    Checks.inRange("uncertainty of the reading", standardUncertaintyOfReading, "pH", 0.001, 0.5);
    Traced found = pH().traced();
    if (!found.missing().isEmpty()) {
      throw new IllegalStateException(
          "mash pH: the uncertainty of "
              + found.missing().get(0).name()
              + " is not stated, so that a reading cannot tell it from the malts; "
              + MashState.STATE_IT);
    }
    MashLearning learning = new MashLearning(state(), carbonDioxideLeaves);
    Step expected = learning.prior().cooled(MashFigures.MASH_PH, carbonDioxideLeaves);
    MashState after = learning.after(read.value(), standardUncertaintyOfReading);
    Mash now =
        new Mash(
            after.grist(), liquor, contents, volume, carbonDioxideLeaves, after.brew(), cautions);
    return new Measured(read, standardUncertaintyOfReading, expected, now);
  }

  /**
   * A mash with the measured pH of its cooled sample: what was expected, this mash as the reading
   * leaves it, and the grist as it leaves it for the next brew. Immutable.
   */
  public static final class Measured {

    /** From so many standard uncertainties on chance hardly explains a difference; our choice. */
    private static final double SURPRISING = 3;

    private final PH read;
    private final double standardUncertaintyOfReading;
    private final Step expected;
    private final Mash now;

    private Measured(PH read, double standardUncertaintyOfReading, Step expected, Mash now) {
      this.read = read;
      this.standardUncertaintyOfReading = standardUncertaintyOfReading;
      this.expected = expected;
      this.now = now;
    }

    /**
     * Returns what was expected of this brew before its reading.
     *
     * @return the pH of the cooled sample, brew to brew scatter included
     */
    public Answer<PH> expected() {
      return Answer.of(MashFigures.MASH_PH, expected);
    }

    /**
     * Returns what was read.
     *
     * @return the pH of the cooled sample
     */
    public PH read() {
      return read;
    }

    /**
     * Returns this mash as the reading leaves it, for what is added to it now: {@code
     * measured.now().dose(lactic80).to(MASH_PH, pH(5.4))}.
     *
     * @return the mash, what this brew differs by included
     */
    public Mash now() {
      return now;
    }

    /**
     * Returns the grist with what the reading teaches about it, for the next brew: its malts and
     * the factor on Kolbach's term. A mash of it counts the scatter from brew to brew.
     *
     * @return the same masses
     */
    public Grist grist() {
      return now.grist();
    }

    /**
     * Returns what is notable: a reading further from what was expected than chance explains, malts
     * that the brews so far do not tell apart.
     *
     * @return the notices
     */
    public List<Notice> notices() {
      List<Notice> notices = new ArrayList<>();
      Traced before = expected.found().orElseThrow();
      double u = Math.hypot(standardUncertaintyOfReading, before.knownPart());
      double difference = read.value() - before.value();
      if (Math.abs(difference) > SURPRISING * u) {
        notices.add(
            Notice.of(
                MashCode.SURPRISING_READING,
                "mash pH",
                String.format(
                    Locale.ROOT,
                    "%.2f was read and %.2f expected: %.1f standard uncertainties; read again,"
                        + " and look at the electrode, the weights and the lot of the malt",
                    read.value(),
                    before.value(),
                    Math.abs(difference) / u)));
      }
      UndecidedMalts.in(grist()).ifPresent(notices::add);
      return List.copyOf(notices);
    }

    /** Returns what was expected, read and remains. */
    @Override
    public String toString() {
      return "read " + read + ", expected " + expected() + ", now " + now.pH();
    }
  }

  /**
   * Returns a work space that finds the pH of this mash again and again, for other totals of the
   * liquor, such as in a search over many doses.
   *
   * @return the work space, its liquor holding what this mash's does
   * @throws IllegalStateException if the balance of the liquor is open
   */
  public MashBalance balance() {
    return state().balance(carbonDioxideLeaves);
  }

  /**
   * Returns the grist.
   *
   * @return the malts and masses
   */
  public Grist grist() {
    return grist;
  }

  /**
   * Returns the liquor as it was poured.
   *
   * @return the liquor, without what was added to the mash
   */
  public Liquid liquor() {
    return liquor;
  }

  /**
   * Returns the volume of the liquor as it was poured.
   *
   * @return above 0
   */
  public Volume volume() {
    return volume;
  }

  /**
   * Returns what the liquor holds, with what was added to the mash, at the temperature at which the
   * malts were read. The malts are not in it.
   *
   * @return the contents of the liquor
   */
  @Override
  public Contents contents() {
    return contents;
  }

  /** {@inheritDoc} A figure of the liquor is unknown of the mash: the malts are not in it. */
  @Override
  public Step step(Figure<?> figure) {
    if (figure.rule() instanceof MashRule rule) {
      return switch (rule.quantity()) {
        case COOLED -> state().cooled(figure, carbonDioxideLeaves);
        case HOT ->
            MashState.hot(
                figure,
                state().cooled(MashFigures.MASH_PH, carbonDioxideLeaves),
                rule.at().orElseThrow());
        case CARBON_DIOXIDE -> state().riseOfPHByDegassing(figure);
        case KOLBACH -> state().kolbach();
        case AMONG_SPECIES -> state().amongSpecies(carbonDioxideLeaves);
        case BEYOND_SPECIES -> state().beyondSpecies(carbonDioxideLeaves);
      };
    }
    if (figure.rule() instanceof ClosedForm) {
      return figure.rule().find(figure, this);
    }
    return Step.of(figure.title(), figure.scale(), Step.Kind.STATED)
        .text(figure.rule().text(), "")
        .unknown(
            List.of(
                figure.title()
                    + " is known of the liquor, not of the mash; ask the liquor for it, and the"
                    + " mash for MASH_PH or hotMashPH"));
  }

  @Override
  public String kind() {
    return "mash";
  }

  @Override
  public List<Notice> notices() {
    return step(MashFigures.MASH_PH).notices();
  }

  @Override
  public List<Caution> cautions() {
    return cautions;
  }

  /** Returns grist, liquor and pH. */
  @Override
  public String toString() {
    return grist + ", in " + volume + " of liquor: " + pH();
  }
}
