// Start-up for JShell, so that it reads like a lab note:
//   jshell --class-path brewchem-examples/programs/target/brewchem-all.jar brewchem-examples/jshell/brewchem.jsh
import org.brewchem.beer.*;
import org.brewchem.buffer.*;
import org.brewchem.figure.*;
import org.brewchem.quantity.*;
import org.brewchem.solution.*;
import org.brewchem.substance.*;
import org.brewchem.table.*;
import org.brewchem.titration.*;
import org.brewchem.treatment.*;
import org.brewchem.uncertainty.*;
import org.brewchem.units.*;
import org.brewchem.water.*;
import static org.brewchem.figure.Constraint.*;
import static org.brewchem.quantity.Quantities.*;
import static org.brewchem.solution.Figures.*;
import static org.brewchem.solution.Level.*;
import static org.brewchem.substance.Acid.*;
import static org.brewchem.substance.Salt.*;
import static org.brewchem.titration.Weighing.*;
import static org.brewchem.treatment.Treatments.*;
import static org.brewchem.water.WaterFigures.*;
