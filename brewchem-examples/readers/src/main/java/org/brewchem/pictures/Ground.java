package org.brewchem.pictures;

import java.awt.Color;

/** What a picture is drawn on. Every colour of a text has a contrast of 4.5 to 1 or more to it. */
public enum Ground {
  /** Dark on white. */
  LIGHT(0xFFFFFF, 0x1F2328, 0xD5D9DE, 0xDCE6F2),

  /** Light on near black. */
  DARK(0x14181D, 0xE8EAED, 0x343A41, 0x24384E),

  /** Greys alone on white, for a printer; dashes and marks tell the lines apart. */
  GREY(0xFFFFFF, 0x1A1A1A, 0xD6D6D6, 0xE4E4E4);

  private static final int[] IN_GREY = {0x111111, 0x555555, 0x333333, 0x666666, 0x222222};
  private static final int[] ON_LIGHT = {0x0B4F8A, 0xA03A00, 0x1B6B3A, 0x6A2C91, 0x5C5C5C};
  private static final int[] ON_DARK = {0x82BDFF, 0xFFB27A, 0x86DDA2, 0xD3ADFF, 0xB5B5B5};

  private final int ground;
  private final int ink;
  private final int grid;
  private final int band;

  Ground(int ground, int ink, int grid, int band) {
    this.ground = ground;
    this.ink = ink;
    this.grid = grid;
    this.band = band;
  }

  Color ground() {
    return new Color(ground);
  }

  Color ink() {
    return new Color(ink);
  }

  Color grid() {
    return new Color(grid);
  }

  Color band() {
    return new Color(band);
  }

  Color series(int index) {
    int[] colours =
        switch (this) {
          case LIGHT -> ON_LIGHT;
          case DARK -> ON_DARK;
          case GREY -> IN_GREY;
        };
    return new Color(colours[index % colours.length]);
  }
}
