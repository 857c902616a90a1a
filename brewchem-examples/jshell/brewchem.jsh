// Start-up for JShell, so that it reads like a lab note; docs/jshell.md says how it is called.
import java.nio.file.*;
import java.util.*;
import org.brewchem.beer.*;
import org.brewchem.buffer.*;
import org.brewchem.figure.*;
import org.brewchem.mash.*;
import org.brewchem.pictures.*;
import org.brewchem.plan.*;
import org.brewchem.quality.*;
import org.brewchem.quantity.*;
import org.brewchem.readers.*;
import org.brewchem.solution.*;
import org.brewchem.substance.*;
import org.brewchem.table.*;
import org.brewchem.titration.*;
import org.brewchem.treatment.*;
import org.brewchem.uncertainty.*;
import org.brewchem.units.*;
import org.brewchem.water.*;
import static org.brewchem.figure.Constraint.*;
import static org.brewchem.mash.MashAddition.*;
import static org.brewchem.mash.MaltKind.*;
import static org.brewchem.mash.MashFigures.*;
import static org.brewchem.mash.WortRanges.*;
import static org.brewchem.plan.WaterPortion.*;
import static org.brewchem.quantity.Quantities.*;
import static org.brewchem.solution.Figures.*;
import static org.brewchem.solution.Level.*;
import static org.brewchem.substance.Acid.*;
import static org.brewchem.substance.Base.*;
import static org.brewchem.substance.Salt.*;
import static org.brewchem.titration.Weighing.*;
import static org.brewchem.treatment.Treatments.*;
import static org.brewchem.water.WaterFigures.*;
// Ions go by their symbols: a name in capitals, such as CALCIUM, is the figure of a liquid.
Ion Ca = Ion.CALCIUM;
Ion Mg = Ion.MAGNESIUM;
Ion Na = Ion.SODIUM;
Ion K = Ion.POTASSIUM;
Ion Cl = Ion.CHLORIDE;
Ion SO4 = Ion.SULFATE;
Ion NO3 = Ion.NITRATE;

// JShell cuts what is long; this prints it whole.
void show(Object any) { System.out.println(any); }
