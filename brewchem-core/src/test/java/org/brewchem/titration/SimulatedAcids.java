package org.brewchem.titration;

/** Titration curves of ideal acids by halving: a second algorithm, without the kernel. */
final class SimulatedAcids {

  private SimulatedAcids() {}

  /** Charge of the acids at a pH, mol/L of sample. */
  static double charge(double[] pKa, double[] molar, double at) {
    double sum = 0;
    for (int i = 0; i < pKa.length; i++) {
      sum += molar[i] / (1 + Math.pow(10, pKa[i] - at));
    }
    return sum;
  }

  /** Hydroxide less protons of water, mol/L. */
  static double water(double at) {
    return Math.pow(10, at - 14) - Math.pow(10, -at);
  }

  /**
   * The pH after volumes of titrant, all acids staying in the vessel.
   *
   * @param sample mL
   * @param molar mol/L of each acid
   * @param start the pH of the sample
   * @param base mol/L of the titrant; below 0 for an acid
   */
  static double[] curve(
      double sample,
      double[] pKa,
      double[] molar,
      double start,
      double[] millilitres,
      double base) {
    double[] read = new double[millilitres.length];
    double own = charge(pKa, molar, start) + water(start);
    for (int i = 0; i < read.length; i++) {
      double low = 1;
      double high = 13;
      for (int k = 0; k < 50; k++) {
        double middle = (low + high) / 2;
        double excess =
            sample * (charge(pKa, molar, middle) - own)
                + (sample + millilitres[i]) * water(middle)
                - base * millilitres[i];
        low = excess < 0 ? middle : low;
        high = excess < 0 ? high : middle;
      }
      read[i] = (low + high) / 2;
    }
    return read;
  }
}
