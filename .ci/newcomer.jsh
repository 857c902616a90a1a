var tap = WaterReport.reported().calcium(mgPerL(92)).magnesium(mgPerL(11)).alkalinityAsCaCO3(mgPerL(215)).build().water()
tap.residualAlkalinity()
tap.residualAlkalinity().explain()
tap.after(salt(CALCIUM_CHLORIDE_DIHYDRATE, gPerHL(15))).calcium()
var table = CsvFile.of(Path.of("brewchem-examples/brewery/water.csv")).read()
table
Waters.from(table).residualAlkalinity()
double[] x = {0, 5, 10, 15}
double[] y = Arrays.stream(x).map(g -> tap.after(salt(CALCIUM_CHLORIDE_DIHYDRATE, gPerHL(g))).residualAlkalinity().number()).toArray()
Picture.of("Calcium chloride in an invented water", "calcium chloride dihydrate [g/hL]", "residual alkalinity [mg/L as CaCO3]").upFromZero().line("residual alkalinity", x, y).save(Path.of("PICTURE"))
/exit
